import type { Bus, Component, Condition, Contact, Device } from "../../records/types";
import { Memory } from "../remember";
import { derive, derived, type Input, known, type Operand, type Value, written } from "../value";
import type { LoadPath } from "./circuit";
import type { ElectricalBasis } from "./index";
import { drawIn } from "./network";

/** Current of each component in each condition in which it runs, by component id. */
export type LoadCurrents = ReadonlyMap<string, ReadonlyMap<Condition, Value>>;

/** Voltage at each component in each condition in which it runs, by component id. */
export type LoadVoltages = ReadonlyMap<string, ReadonlyMap<Condition, Value>>;

const voltages = new Memory<Component, Condition, Value | undefined>();
const currents = new Memory<Component, Condition, Value | undefined>();

/** Voltage between each component's two ends, by the solved network. */
export function deriveLoadVoltages(basis: ElectricalBasis): LoadVoltages {
  const ofBuses = busVoltages(basis);
  return byLoad(basis, (path, condition) => {
    const volts = basis.states.get(condition)?.voltageAt(path.id);
    const buses = path.buses.flatMap((bus) => ofBuses.get(bus)?.get(condition) ?? []);
    const rests = [volts, ...buses, ...path.feed, ...path.returns, ...holdersOn(path, basis)];
    return voltages.recall(path.component, condition, rests, basis.keep, (keep) =>
      keep(loadVoltage(path, condition, volts, buses, basis)),
    );
  });
}

/** Voltage of each bus in each condition, by the same solution, and all that stands ahead of it. */
function busVoltages(basis: ElectricalBasis): Map<string, Map<Condition, Value>> {
  const { electrical } = basis.project.airframe ?? {};
  const voltagesOf = (bus: Bus, id: string) =>
    basis.conditions.flatMap((condition): [Condition, Value][] => {
      const volts = basis.states.get(condition)?.potentialOf(id);
      const value = ofBus.recall(bus, condition, [volts, electrical], basis.keep, (keep) =>
        keep(busVoltage(id, condition, volts, basis)),
      );
      return value ? [[condition, value]] : [];
    });
  return new Map(
    (electrical?.buses ?? []).flatMap((bus): [string, Map<Condition, Value>][] =>
      bus.id ? [[bus.id.value, new Map(voltagesOf(bus, bus.id.value))]] : [],
    ),
  );
}

const ofBus = new Memory<Bus, Condition, Value | undefined>();

/**
 * What each component draws. A constant current is as written; a power or a resistance takes the voltage that
 * the solved network leaves at the component.
 */
export function deriveLoadCurrents(basis: ElectricalBasis, atLoads: LoadVoltages): LoadCurrents {
  return byLoad(basis, (path, condition) => {
    const voltage = atLoads.get(path.id)?.get(condition);
    return currents.recall(path.component, condition, [voltage], basis.keep, (keep) =>
      keep(loadCurrent(path, condition, voltage)),
    );
  });
}

function byLoad(
  { circuit, conditions }: ElectricalBasis,
  make: (path: LoadPath, condition: Condition) => Value | undefined,
): Map<string, Map<Condition, Value>> {
  return new Map(
    circuit.paths.map((path) => {
      const running = conditions.filter((condition) => drawIn(path.component, condition));
      const values = running.flatMap((condition): [Condition, Value][] => {
        const value = make(path, condition);
        return value ? [[condition, value]] : [];
      });
      return [path.id, new Map(values)];
    }),
  );
}

function loadCurrent(path: LoadPath, condition: Condition, voltage: Value | undefined): Value | undefined {
  const draw = drawIn(path.component, condition);
  if (!draw) return undefined;
  const common = {
    subject: { kind: "component", id: path.id },
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

function loadVoltage(
  path: LoadPath,
  condition: Condition,
  volts: number | undefined,
  buses: readonly Value[],
  basis: ElectricalBasis,
): Value | undefined {
  return known({
    subject: { kind: "component", id: path.id },
    quantity: "load-voltage",
    condition: condition.id?.value,
    unit: "V",
    method: "solution of the whole network: Kirchhoff's laws, with wires at their temperature",
    value: volts,
    operands: () => ({
      ...Object.fromEntries(
        buses.map((bus) => [bus.subject.id, derived(`voltage of ${bus.subject.id}`, bus)]),
      ),
      ...runOperands(path, condition, basis),
      ...throughOperands(path, basis),
    }),
  });
}

function busVoltage(
  id: string,
  condition: Condition,
  volts: number | undefined,
  basis: ElectricalBasis,
): Value | undefined {
  return known({
    subject: { kind: "bus", id },
    quantity: "bus-voltage",
    condition: condition.id?.value,
    unit: "V",
    method: "solution of the whole network",
    value: volts,
    operands: () => aheadOperands(condition, basis),
  });
}

/** Sources that are on, and the feeders between them and the buses. */
function aheadOperands(condition: Condition, { project }: ElectricalBasis): Record<string, Operand> {
  const { nominal, sources = [], feeders = [] } = project.airframe?.electrical ?? {};
  if (sources.length === 0) return { nominal: written("nominal voltage", nominal, "V") };
  const off = new Set(condition.failed?.map((failed) => failed.value));
  const on = sources.filter(({ id }) => id && !off.has(id.value));
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
function throughOperands(path: LoadPath, basis: ElectricalBasis): Record<string, Operand> {
  const holders = holdersOn(path, basis);
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

/** Resistances of the wires on a path as the solution left them, with the places that decide them. */
function runOperands(path: LoadPath, condition: Condition, basis: ElectricalBasis): Record<string, Operand> {
  const operands: Record<string, Operand> = {};
  for (const wire of [...path.feed, ...path.returns]) {
    const ohms = basis.states.get(condition)?.resistanceOf(wire);
    if (ohms === undefined || !Number.isFinite(ohms) || !wire.id) continue;
    const places = [wire.gauge, wire.length, wire.rating].flatMap((one) => (one ? [one.place] : []));
    const input: Omit<Input, "symbol"> = {
      name: `run ${wire.id.value}`,
      value: ohms,
      unit: "ohm",
      places,
      notes: [],
    };
    operands[wire.id.value] = input;
  }
  return operands;
}
