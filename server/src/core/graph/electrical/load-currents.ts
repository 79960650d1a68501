import type { Bus, Component, Condition, Electrical, Source, Wire } from "../../records/types";
import { byIdOf } from "../by-id";
import { recalled } from "../recall";
import { Recurring } from "../remember";
import { derive, derived, known, type Operand, type Value, written } from "../value";
import type { ElectricalBasis } from "./basis";
import type { FedLoad, LoadPath } from "./circuit";
import { holderOf } from "./layout";
import type { NetworkState } from "./network";
import { RecurringStates, type StatesOf } from "./recurring-states";
import { drawIn, undrawnIn } from "./running";

/** Current of each component in each condition in which it runs, by component id. */
export type LoadCurrents = ReadonlyMap<string, ReadonlyMap<Condition, Value>>;

/** Voltage at each component in each condition in which it runs, by component id. */
export type LoadVoltages = ReadonlyMap<string, ReadonlyMap<Condition, Value>>;

/** Voltage of each bus in each condition, by bus id. */
export type BusVoltages = ReadonlyMap<string, ReadonlyMap<Condition, Value>>;

type ByCondition = ReadonlyMap<Condition, Value>;

const voltagesOf = new RecurringStates<Value | undefined, ByCondition>();
const currentsOf = new RecurringStates<Value | undefined, ByCondition>();

/** Voltage between each component's two ends, by the solved network. */
export function deriveLoadVoltages(basis: ElectricalBasis, ofBuses: BusVoltages): LoadVoltages {
  const { conditions, keep } = basis;
  const left = leftOut(basis.project);
  const states = conditions.map((condition) => basis.states.get(condition));
  const how: StatesOf<LoadOnPath, Value | undefined, ByCondition> = {
    conditions,
    grounds: basis.grounds,
    rests: ({ path, holders }) => {
      const rests: unknown[] = [path, conditions, left, ...holders];
      for (const bus of path.buses) rests.push(ofBuses.get(bus));
      for (const state of states) rests.push(state?.voltageAt(path.id));
      return rests;
    },
    restsIn: ({ path, holders }, index) => {
      const condition = conditions[index]!;
      const volts = states[index]?.voltageAt(path.id);
      return [
        path,
        condition,
        volts,
        left.get(condition),
        ...holders,
        ...busesAhead(path, condition, ofBuses),
      ];
    },
    stateIn: ({ path, holders }, index, own) => {
      const condition = conditions[index]!;
      if (!drawIn(path.component, condition)) return undefined;
      const state = states[index];
      return own(
        loadVoltage(
          path,
          condition,
          { volts: state?.voltageAt(path.id), without: left.get(condition) },
          { buses: busesAhead(path, condition, ofBuses), holders, runs: runsOf(path, state) },
        ),
      );
    },
    whole: (_, values) => byCondition(conditions, values),
  };
  const found = new Map<string, ByCondition>();
  for (const path of basis.circuit.paths) {
    const of = { path, holders: path.through.map((inline) => holderOf(inline, basis.project)) };
    found.set(path.id, voltagesOf.recall(path.component, of, how, keep));
  }
  return found;
}

/** What records the resistance of each device and contact on a way, in their order. */
type Holders = readonly ReturnType<typeof holderOf>[];

/** A load with what is on its path. */
interface LoadOnPath {
  readonly path: LoadPath;
  readonly holders: Holders;
}

/** Voltages of the buses that feed a path. */
function busesAhead({ buses }: LoadPath, condition: Condition, ofBuses: BusVoltages): Value[] {
  return buses.flatMap((bus) => ofBuses.get(bus)?.get(condition) ?? []);
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
      const ofAll = ofBuses.recall(bus, rests, basis.keep, (keep) => {
        const values = conditions.map((condition, index) => {
          const volts = voltsIn[index];
          const without = left.get(condition);
          return ofBus.recall(condition, [volts, electrical, without], keep, (own) =>
            own(busVoltage(id, condition, { volts, without }, aheadOf(condition, basis))),
          );
        });
        return byCondition(conditions, values);
      });
      return [[id, ofAll]];
    }),
  );
}

/** By condition, in words, the loads that its solution leaves out; none where nothing is. */
const leftOut = recalled(({ install, kit }): ReadonlyMap<Condition, string> => {
  const components = byIdOf(kit?.components);
  return new Map(
    (install.conditions ?? []).flatMap((condition): [Condition, string][] => {
      const ids = undrawnIn(condition, components);
      return ids.length === 0 ? [] : [[condition, ids.join(", ")]];
    }),
  );
});

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
  const how: StatesOf<FedLoad, Value | undefined, ByCondition> = {
    conditions,
    grounds: basis.grounds,
    rests: ({ component, id }) => [conditions, takesVoltage(component) ? atLoads.get(id) : undefined],
    restsIn: (load, index) => [conditions[index], atLoad(load, conditions[index]!, atLoads)],
    stateIn: (load, index, own) => {
      const condition = conditions[index]!;
      return own(loadCurrent(load, condition, atLoad(load, condition, atLoads)));
    },
    whole: (_, values) => byCondition(conditions, values),
  };
  return new Map(fed.map((load) => [load.id, currentsOf.recall(load.component, load, how, keep)]));
}

/** The voltage that a load's current is computed from: a constant one takes none, and stays while that moves. */
function atLoad({ component, id }: FedLoad, condition: Condition, atLoads: LoadVoltages): Value | undefined {
  return takesVoltage(component) ? atLoads.get(id)?.get(condition) : undefined;
}

function takesVoltage({ draws = [] }: Component): boolean {
  return draws.some(({ current }) => !current);
}

function byCondition(conditions: readonly Condition[], inThem: readonly (Value | undefined)[]): ByCondition {
  const values = new Map<Condition, Value>();
  for (let index = 0; index < conditions.length; index++) {
    const value = inThem[index];
    if (value) values.set(conditions[index]!, value);
  }
  return values;
}

function loadCurrent(
  { component, id }: FedLoad,
  condition: Condition,
  voltage: Value | undefined,
): Value | undefined {
  const draw = drawIn(component, condition);
  if (!draw) return undefined;
  const common = {
    subject: { kind: "component", id },
    quantity: "load-current",
    condition: condition.id?.value,
    unit: "A",
  } as const;
  if (draw.current) {
    return derive({
      ...common,
      formula: "I",
      operands: { I: written(`current in mode ${draw.mode?.value}`, draw.current, "A") },
      compute: ({ I }) => I,
    });
  }
  const V = derived("voltage at the load", voltage);
  if (draw.power) {
    return derive({
      ...common,
      formula: "P / V",
      operands: { P: written(`power in mode ${draw.mode?.value}`, draw.power, "W"), V },
      compute: (numbers) => numbers.P / numbers.V,
    });
  }
  return derive({
    ...common,
    formula: "V / R",
    operands: { V, R: written(`resistance in mode ${draw.mode?.value}`, draw.resistance, "ohm") },
    compute: (numbers) => numbers.V / numbers.R,
  });
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
  return [...feed, ...returns].flatMap((wire) => {
    const ohms = state?.resistanceOf(wire);
    return ohms !== undefined && Number.isFinite(ohms) && wire.id ? [{ wire, ohms }] : [];
  });
}

/** With the places that decide it. */
function runOperand({ wire, ohms }: Run): [string, Operand] {
  const id = wire.id!.value;
  const places = [wire.gauge, wire.length, wire.rating].flatMap((one) => (one ? [one.place] : []));
  return [id, { name: `run ${id}`, value: ohms, unit: "ohm", places, notes: [] }];
}
