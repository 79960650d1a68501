import type {
  Bus,
  Component,
  Condition,
  Contact,
  Device,
  Electrical,
  Source,
  Wire,
} from "../../records/types";
import { recalled } from "../recall";
import { Recurring } from "../remember";
import { derive, derived, known, type Operand, type Value, written } from "../value";
import type { ElectricalBasis } from "./basis";
import type { FedLoad, LoadPath } from "./circuit";
import type { NetworkState } from "./network";
import { drawIn, undrawnIn } from "./running";

/** Current of each component in each condition in which it runs, by component id. */
export type LoadCurrents = ReadonlyMap<string, ReadonlyMap<Condition, Value>>;

/** Voltage at each component in each condition in which it runs, by component id. */
export type LoadVoltages = ReadonlyMap<string, ReadonlyMap<Condition, Value>>;

/** Voltage of each bus in each condition, by bus id. */
export type BusVoltages = ReadonlyMap<string, ReadonlyMap<Condition, Value>>;

type ByCondition = ReadonlyMap<Condition, Value>;

/** Of each component in all conditions: the same object while what it rests on is the same. */
const voltagesOf = new Recurring<Component, ByCondition>();
const currentsOf = new Recurring<Component, ByCondition>();

/** In one condition, for when another has changed. */
const voltages = new Recurring<Condition, Value | undefined>();
const currents = new Recurring<Condition, Value | undefined>();

/** Voltage between each component's two ends, by the solved network. */
export function deriveLoadVoltages(basis: ElectricalBasis, ofBuses: BusVoltages): LoadVoltages {
  const { conditions } = basis;
  const left = leftOut(basis.project);
  const states = conditions.map((condition) => basis.states.get(condition));
  return byLoad(basis.circuit.paths, (path) => {
    const holders = holdersOn(path, basis);
    const busesOfPath = path.buses.map((bus) => ofBuses.get(bus));
    const voltsIn = states.map((state) => state?.voltageAt(path.id));
    // As many buses and holders as the path has, and as many volts as there are conditions.
    const rests = [path, conditions, left, ...holders, ...busesOfPath, ...voltsIn];
    return voltagesOf.recall(path.component, rests, basis.keep, (keep) =>
      whereRunning(path, conditions, (condition, index) => {
        const volts = voltsIn[index];
        const buses = busesOfPath.flatMap((bus) => bus?.get(condition) ?? []);
        const without = left.get(condition);
        const basisOfOne = [path, volts, without, ...buses, ...holders];
        return voltages.recall(condition, basisOfOne, keep, (own) =>
          own(
            loadVoltage(
              path,
              condition,
              { volts, without },
              { buses, holders, runs: runsOf(path, states[index]) },
            ),
          ),
        );
      }),
    );
  });
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
        inConditions(conditions, (condition, index) => {
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
  const components = new Map((kit?.components ?? []).map((one) => [one.id?.value ?? "", one]));
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
  return byLoad(basis.fed, (load) => {
    // A constant current takes none, and stays what it is while the voltage moves.
    const atLoad = takesVoltage(load.component) ? atLoads.get(load.id) : undefined;
    const rests = [atLoad, basis.conditions];
    return currentsOf.recall(load.component, rests, basis.keep, (keep) =>
      whereRunning(load, basis.conditions, (condition) => {
        const voltage = atLoad?.get(condition);
        return currents.recall(condition, [voltage], keep, (own) =>
          own(loadCurrent(load, condition, voltage)),
        );
      }),
    );
  });
}

function takesVoltage({ draws = [] }: Component): boolean {
  return draws.some(({ current }) => !current);
}

function byLoad<L extends FedLoad>(
  loads: readonly L[],
  make: (load: L) => ByCondition,
): Map<string, ByCondition> {
  return new Map(loads.map((load) => [load.id, make(load)]));
}

function whereRunning(
  { component }: FedLoad,
  conditions: readonly Condition[],
  make: (condition: Condition, index: number) => Value | undefined,
): ByCondition {
  return inConditions(conditions, (condition, index) =>
    drawIn(component, condition) ? make(condition, index) : undefined,
  );
}

function inConditions(
  conditions: readonly Condition[],
  make: (condition: Condition, index: number) => Value | undefined,
): ByCondition {
  const values = new Map<Condition, Value>();
  for (const [index, condition] of conditions.entries()) {
    const value = make(condition, index);
    if (value) values.set(condition, value);
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
  readonly holders: ReturnType<typeof holdersOn>;
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

/** What records the resistance of each device and contact on the way: the contact itself, or the kit's device. */
export function holdersOn(
  { through }: LoadPath,
  { project }: ElectricalBasis,
): readonly (Contact | Device | undefined)[] {
  const devices = project.kit?.devices;
  return through.map(({ kind, record }) =>
    kind === "contact" ? record : devices?.find(({ id }) => id?.value === record.device?.value),
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
