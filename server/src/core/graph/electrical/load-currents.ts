import { none } from "../../none";
import { inUnit } from "../../quantities";
import type { Bus, Component, Condition, Electrical, Source, Wire } from "../../records/types";
import { recalled } from "../recall";
import { Memory, Recurring } from "../remember";
import { derived, known, noValues, type Operand, type Value, written } from "../value";
import type { ElectricalBasis } from "./basis";
import type { FedLoad, LoadPath } from "./circuit";
import { holderOf } from "./layout";
import type { NetworkState } from "./network";
import { RecurringStates, type StatesOf } from "./recurring-states";
import { drawIn, undrawnIn } from "./running";

/** By the position of the condition; undefined where there is none, as of a component that does not run. */
export type ByCondition = readonly (Value | undefined)[];

/** Current of each component that a bus feeds, in the order of the circuit's paths. */
export type LoadCurrents = readonly ByCondition[];

/** Voltage at each of them, in the same order. */
export type LoadVoltages = readonly ByCondition[];

/** Voltage of each bus, by its id. */
export type BusVoltages = ReadonlyMap<string, ByCondition>;

const voltagesOf = new RecurringStates<Value | undefined, ByCondition>();
const currentsOf = new RecurringStates<Value | undefined, ByCondition>();

/** Voltage between each component's two ends, by the solved network. */
export function deriveLoadVoltages(basis: ElectricalBasis, ofBuses: BusVoltages): LoadVoltages {
  const { conditions, keep } = basis;
  const left = leftOut(basis.project);
  const states = conditions.map((condition) => basis.states.get(condition));
  const how: StatesOf<LoadOnPath, Value | undefined, ByCondition> = {
    things: basis.circuit.paths.map((path) => ({
      path,
      holders: path.through.map((inline) => holderOf(inline, basis.project)),
    })),
    entryOf: ({ path }) => path.component,
    conditions,
    grounds: basis.grounds,
    rests: ({ path, holders }) => {
      const rests: unknown[] = [path, left, ...holders];
      for (const bus of path.buses) rests.push(ofBuses.get(bus));
      for (const state of states) rests.push(state?.voltageAt(path.id));
      return rests;
    },
    restsIn: ({ path, holders }, index) => {
      const volts = states[index]?.voltageAt(path.id);
      const buses = path.buses.map((bus) => ofBuses.get(bus)?.[index]);
      return [path, volts, left.get(conditions[index]!), ...holders, ...buses];
    },
    stateIn: ({ path, holders }, index, own) => {
      const condition = conditions[index]!;
      if (!drawIn(path.component, condition)) return undefined;
      const state = states[index];
      const buses = path.buses.flatMap((bus) => ofBuses.get(bus)?.[index] ?? []);
      return own(
        loadVoltage(
          path,
          condition,
          { volts: state?.voltageAt(path.id), without: left.get(condition) },
          { buses, holders, runs: runsOf(path, state) },
        ),
      );
    },
    whole: (_, values) => values,
  };
  return voltagesOf.recall(how, keep);
}

/** What records the resistance of each device and contact on a way, in their order. */
type Holders = readonly ReturnType<typeof holderOf>[];

/** A load with what is on its path. */
interface LoadOnPath {
  readonly path: LoadPath;
  readonly holders: Holders;
}

/** Voltage of each bus in each condition, by the same solution, and all that stands ahead of it. */
export function deriveBusVoltages(basis: ElectricalBasis): BusVoltages {
  const { conditions } = basis;
  const left = leftOut(basis.project);
  const { electrical } = basis.project.airframe ?? {};
  const states = conditions.map((condition) => basis.states.get(condition));
  return new Map(
    (electrical?.buses ?? []).flatMap((bus): [string, ByCondition][] => {
      if (!bus.id) return [];
      const id = bus.id.value;
      const voltsIn = states.map((state) => state?.potentialOf(id));
      const rests = [electrical, conditions, left, ...voltsIn];
      const ofAll = ofBuses.recall(bus, rests, basis.keep, (keep) =>
        conditions.map((condition, index) => {
          const volts = voltsIn[index];
          const without = left.get(condition);
          return ofBus.recall(condition, [volts, electrical, without], keep, (own) =>
            own(busVoltage(id, condition, { volts, without }, aheadOf(condition, basis))),
          );
        }),
      );
      return [[id, ofAll]];
    }),
  );
}

/** By condition, in words, the loads that its solution leaves out; none where nothing is. */
const leftOut = recalled(({ install, kit }): ReadonlyMap<Condition, string> => {
  const components = kit?.components ?? none;
  const left = new Map<Condition, string>();
  for (const condition of install.conditions ?? []) {
    const ids = leftOutIn.recall(condition, condition, [components], noValues, () =>
      undrawnIn(condition, components),
    );
    if (ids.length > 0) left.set(condition, ids.join(", "));
  }
  return left;
});

const leftOutIn = new Memory<Condition, Condition, readonly string[]>();

/** What the network's solution gives for one thing, and which loads it leaves out. */
interface FoundVolts {
  readonly volts: number | undefined;
  readonly without: string | undefined;
}

function leftOutNotes({ without }: FoundVolts): string[] {
  return without === undefined
    ? []
    : [`It is not known what ${without} draws in this condition: as if that were nothing.`];
}

const ofBuses = new Recurring<Bus, ByCondition>();
const ofBus = new Recurring<Condition, Value | undefined>();

/**
 * What each component draws. A constant current is as written; a power or a resistance takes the voltage that
 * the solved network leaves at the component.
 */
export function deriveLoadCurrents(basis: ElectricalBasis, atLoads: LoadVoltages): LoadCurrents {
  const { conditions, fed, keep } = basis;
  const atLoad = ({ load, position }: PlacedLoad, index: number): Value | undefined =>
    takesVoltage(load.component) ? atLoads[position]![index] : undefined;
  const how: StatesOf<PlacedLoad, Value | undefined, ByCondition> = {
    things: fed.map((load, position) => ({ load, position })),
    entryOf: ({ load }) => load.component,
    conditions,
    grounds: basis.grounds,
    rests: ({ load, position }) => [takesVoltage(load.component) ? atLoads[position] : undefined],
    restsIn: (of, index) => [atLoad(of, index)],
    stateIn: (of, index, own) => own(loadCurrent(of.load, conditions[index]!, atLoad(of, index))),
    whole: (_, values) => values,
  };
  return currentsOf.recall(how, keep);
}

/** A load by the position of its path. */
interface PlacedLoad {
  readonly load: FedLoad;
  readonly position: number;
}

/** A constant current is computed from no voltage, and stays while that moves. */
function takesVoltage({ draws = [] }: Component): boolean {
  return draws.some(({ current }) => !current);
}

function loadCurrent(
  { component, id }: FedLoad,
  condition: Condition,
  voltage: Value | undefined,
): Value | undefined {
  const draw = drawIn(component, condition);
  if (!draw) return undefined;
  const { mode, current, power, resistance } = draw;
  const common = () =>
    ({
      subject: { kind: "component", id },
      quantity: "load-current",
      condition: condition.id?.value,
    }) as const;
  if (current) {
    return known(inUnit(current.value, "A"), "A", () => ({
      ...common(),
      formula: "I",
      operands: { I: written(`current in mode ${mode?.value}`, current, "A") },
    }));
  }
  if (!voltage) return undefined;
  const V = () => derived("voltage at the load", voltage);
  if (power) {
    return known(inUnit(power.value, "W") / voltage.value, "A", () => ({
      ...common(),
      formula: "P / V",
      operands: { P: written(`power in mode ${mode?.value}`, power, "W"), V: V() },
    }));
  }
  return known(resistance && voltage.value / inUnit(resistance.value, "ohm"), "A", () => ({
    ...common(),
    formula: "V / R",
    operands: { V: V(), R: written(`resistance in mode ${mode?.value}`, resistance, "ohm") },
  }));
}

/** What stands ahead of a load. The voltage's operands are made of this alone, so that they keep no more alive. */
interface AheadOfLoad {
  readonly buses: readonly Value[];
  readonly holders: Holders;
  readonly runs: readonly Run[];
}

/** A wire and its resistance in ohm as a solution left it. */
interface Run {
  readonly wire: Wire;
  readonly ohms: number;
}

function loadVoltage(
  path: LoadPath,
  condition: Condition,
  found: FoundVolts,
  { buses, holders, runs }: AheadOfLoad,
): Value | undefined {
  return known(found.volts, "V", () => ({
    subject: { kind: "component", id: path.id },
    quantity: "load-voltage",
    condition: condition.id?.value,
    method: "solution of the whole network: Kirchhoff's laws, with wires at their temperature",
    notes: leftOutNotes(found),
    operands: {
      ...Object.fromEntries(
        buses.map((bus) => [bus.subject.id, derived(`voltage of ${bus.subject.id}`, bus)]),
      ),
      ...Object.fromEntries(runs.map(runOperand)),
      ...throughOperands(path, holders),
    },
  }));
}

function busVoltage(
  id: string,
  condition: Condition,
  found: FoundVolts,
  ahead: AheadOfBuses,
): Value | undefined {
  return known(found.volts, "V", () => ({
    subject: { kind: "bus", id },
    quantity: "bus-voltage",
    condition: condition.id?.value,
    method: "solution of the whole network",
    notes: leftOutNotes(found),
    operands: aheadOperands(ahead),
  }));
}

/** What feeds the buses in a condition. */
interface AheadOfBuses {
  readonly electrical: Electrical | undefined;
  /** Sources that run; undefined where the airframe records none, and the buses are held at the nominal voltage. */
  readonly on: readonly Source[] | undefined;
}

function aheadOf(condition: Condition, { project, network, outputs }: ElectricalBasis): AheadOfBuses {
  return {
    electrical: project.airframe?.electrical,
    on: network.hasSources ? outputs.running(condition) : undefined,
  };
}

/** Sources that run, and the feeders between them and the buses. */
function aheadOperands({ electrical, on }: AheadOfBuses): Record<string, Operand> {
  const { nominal, feeders = [] } = electrical ?? {};
  if (!on) return { nominal: written("nominal voltage", nominal, "V") };
  return Object.fromEntries([
    ...on.map(({ id, voltage }) => [id!.value, written(`voltage of ${id!.value}`, voltage, "V")]),
    ...on.map(({ id, resistance }) => [
      `${id!.value} inside`,
      written(`resistance of ${id!.value}`, resistance, "ohm"),
    ]),
    ...feeders.map(({ id, resistance }) => [id?.value, written(`feeder ${id?.value}`, resistance, "ohm")]),
  ]);
}

/** Resistances of the devices and contacts on the way. */
function throughOperands(path: LoadPath, holders: AheadOfLoad["holders"]): Record<string, Operand> {
  return Object.fromEntries(
    path.through.map(({ id }, index) => [
      id,
      written(`resistance of ${id}`, holders[index]?.resistance, "ohm"),
    ]),
  );
}

/** The wires on a path whose resistance the solution tells. */
function runsOf({ feed, returns }: LoadPath, state: NetworkState | undefined): Run[] {
  const runs: Run[] = [];
  for (const wires of [feed, returns]) {
    for (const wire of wires) {
      const ohms = state?.resistanceOf(wire);
      if (ohms !== undefined && Number.isFinite(ohms) && wire.id) runs.push({ wire, ohms });
    }
  }
  return runs;
}

/** With the places that decide it. */
function runOperand({ wire, ohms }: Run): [string, Operand] {
  const id = wire.id!.value;
  const places = [wire.gauge, wire.length, wire.rating].flatMap((one) => (one ? [one.place] : []));
  return [id, { name: `run ${id}`, value: ohms, unit: "ohm", places, notes: [] }];
}
