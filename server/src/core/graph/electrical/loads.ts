import { wireMethods } from "../../methods/wires";
import { none } from "../../none";
import type { Condition, Electrical, Wire } from "../../records/types";
import { voltageDropLimit } from "../../tables/voltage-drop-limits";
import { derive, derived, type KeepOne, known, tabled, type Value } from "../value";
import type { ElectricalBasis } from "./basis";
import type { LoadPath } from "./circuit";
import type { DeviceResult } from "./devices";
import type { BusVoltages, LoadCurrents, LoadVoltages } from "./load-currents";
import { RecurringStates, type StatesOf } from "./recurring-states";
import type { WireResult } from "./wires";

export interface LoadResult {
  readonly path: LoadPath;
  readonly states: readonly LoadState[];
}

/** One component in a condition in which it runs. */
export interface LoadState {
  readonly condition: Condition;
  readonly current: Value;
  readonly voltage: Value | undefined;
  readonly drop: Value | undefined;
  readonly limit: Value | undefined;
  /** The wires of the path, the one that drops most first. */
  readonly worst: readonly WireResult[];
}

/** Up to this long a current counts as intermittent. AC 43.13-1B par. 11-66; the time itself is from memory. */
const intermittentUpToSeconds = 120;

/** What the voltages at the loads are made of. */
interface Found {
  readonly currents: LoadCurrents;
  readonly voltages: LoadVoltages;
  readonly ofBuses: BusVoltages;
  readonly wires: ReadonlyMap<Wire, WireResult>;
  readonly devices: readonly DeviceResult[];
}

/** A path with what lies on it. */
interface FoundOnPath {
  readonly path: LoadPath;
  readonly position: number;
  readonly wires: readonly WireResult[];
  readonly devices: readonly DeviceResult[];
}

/** What a drop is made of in one condition. */
interface Drops {
  readonly voltage: Value | undefined;
  /** Of the path's wires, in their order. */
  readonly inWires: readonly (Value | undefined)[];
  readonly inDevices: readonly Value[];
  /** Voltages of the buses ahead, where the current has several ways. */
  readonly ofBuses: readonly Value[];
}

/** What is lost in one condition; all but what only the newest results of wires tell. */
interface Lost extends Pick<LoadState, "drop" | "limit"> {
  /** Positions of the path's wires, the one that drops most first. */
  readonly order: readonly number[];
}

/**
 * Voltage at each load, and what is lost on the way there and back. A result is the same object while all that
 * it rests on is.
 */
export function deriveLoads(basis: ElectricalBasis, found: Found): readonly LoadResult[] {
  const { conditions, circuit, keep } = basis;
  const { currents, voltages, ofBuses } = found;
  const nominal = basis.project.airframe?.electrical?.nominal;
  const devices = new Map(found.devices.map((device) => [device.id, device]));
  const dropsIn = ({ path, position, wires, devices: passed }: FoundOnPath, index: number): Drops => {
    const condition = conditions[index]!;
    return {
      voltage: voltages[position]![index],
      inWires: wires.map((wire) => wire.states[index]?.drop),
      inDevices: passed.flatMap((device) => dropInDevice(device, condition) ?? []),
      ofBuses: path.isSingle ? none : path.buses.flatMap((bus) => ofBuses.get(bus)?.[index] ?? []),
    };
  };
  const runs = ({ position }: FoundOnPath, index: number) => currents[position]![index] !== undefined;
  const how: StatesOf<FoundOnPath, Lost | undefined, LoadResult> = {
    things: circuit.paths.map((path, position) => ({
      path,
      position,
      wires: [...path.feed, ...path.returns].flatMap((wire) => found.wires.get(wire) ?? []),
      devices: path.through.flatMap(({ id }) => devices.get(id) ?? []),
    })),
    entryOf: ({ path }) => path.component,
    conditions,
    grounds: basis.grounds,
    rests: ({ path, position, wires, devices: passed }) => {
      const rests: unknown[] = [path, nominal, currents[position], voltages[position], ...wires];
      if (!path.isSingle) for (const bus of path.buses) rests.push(ofBuses.get(bus));
      for (const device of passed) for (const { drop } of device.currents) rests.push(drop);
      return rests;
    },
    restsIn: (of, index) => {
      const { voltage, inWires, inDevices, ofBuses: buses } = dropsIn(of, index);
      return [of.path, nominal, runs(of, index), voltage, ...inWires, ...inDevices, ...buses];
    },
    stateIn: (of, index, own) =>
      runs(of, index) ? lostIn(of, conditions[index]!, nominal, dropsIn(of, index), own) : undefined,
    whole: ({ path, position, wires }, lost) => {
      const states: LoadState[] = [];
      for (let index = 0; index < conditions.length; index++) {
        const current = currents[position]![index];
        const { drop, limit, order = none } = lost[index] ?? {};
        if (!current) continue;
        const voltage = voltages[position]![index];
        const worst = order.map((at) => wires[at]!);
        states.push({ condition: conditions[index]!, current, voltage, drop, limit, worst });
      }
      return { path, states };
    },
  };
  return results.recall(how, keep);
}

const results = new RecurringStates<Lost | undefined, LoadResult>();

type Nominal = Electrical["nominal"];

function dropInDevice({ currents }: DeviceResult, condition: Condition): Value | undefined {
  return currents.find((state) => state.condition === condition)?.drop;
}

function lostIn(
  { path, wires }: FoundOnPath,
  condition: Condition,
  nominal: Nominal,
  drops: Drops,
  keep: KeepOne,
): Lost {
  const { voltage, inWires, inDevices, ofBuses } = drops;
  const ids = wires.map(({ id }) => id);
  return {
    drop: path.isSingle
      ? keep(sumOfDrops(path, condition, ids, inWires, inDevices))
      : keep(differenceOfVoltages(path, condition, voltage, ofBuses)),
    limit: keep(dropLimit(path, condition, nominal)),
    order: inWires
      .map((_, position) => position)
      .sort((a, b) => (inWires[b]?.value ?? 0) - (inWires[a]?.value ?? 0)),
  };
}

const throughStructure =
  "Returns through the structure: its drop counts as none where the bond is 0.005 ohm or less (AC 43.13-1B par. 11-66).";

/** Where the current has one way only, what each wire and each device on it drops. */
function sumOfDrops(
  path: LoadPath,
  condition: Condition,
  wires: readonly string[],
  inWires: readonly (Value | undefined)[],
  inDevices: readonly Value[],
): Value | undefined {
  if (inWires.length + inDevices.length === 0) return undefined;
  let volts = 0;
  for (const drop of inWires) {
    if (!drop) return undefined;
    volts += drop.value;
  }
  for (const drop of inDevices) volts += drop.value;
  return known(volts, "V", () => ({
    ...about(path, condition),
    quantity: "path-drop",
    formula: "sum(V)",
    operands: {
      V: [
        ...inWires.map((drop, position) => derived(`drop of wire ${wires[position]}`, drop)),
        ...inDevices.map((drop) => derived(`drop in ${drop.subject.id}`, drop)),
      ],
    },
    sources: [wireMethods.voltageDrop.source],
    notes: path.returns.length > 0 ? [] : [throughStructure],
  }));
}

/** Where it has several, from the highest of the buses that feed it. */
function differenceOfVoltages(
  path: LoadPath,
  condition: Condition,
  voltage: Value | undefined,
  ofBuses: readonly Value[],
): Value | undefined {
  if (ofBuses.length === 0) return undefined;
  const names = ofBuses.map((_, index) => (ofBuses.length === 1 ? "V_bus" : `V_${index + 1}`));
  return derive({
    ...about(path, condition),
    quantity: "path-drop",
    unit: "V",
    formula: ofBuses.length === 1 ? "V_bus - V_load" : `max(${names.join(", ")}) - V_load`,
    operands: {
      ...Object.fromEntries(
        ofBuses.map((bus, index) => [names[index]!, derived(`voltage of ${bus.subject.id}`, bus)]),
      ),
      V_load: derived("voltage at the load", voltage),
    },
    compute: () => Math.max(...ofBuses.map(({ value }) => value)) - voltage!.value,
    sources: [wireMethods.voltageDrop.source],
  });
}

function dropLimit(path: LoadPath, condition: Condition, nominal: Nominal): Value | undefined {
  if (!nominal) return undefined;
  const isShort = condition.duration !== undefined && condition.duration.value.si <= intermittentUpToSeconds;
  const lookup = voltageDropLimit(nominal.value.si, isShort ? "intermittent" : "continuous");
  return known(lookup.covered ? lookup.value : undefined, "V", () => ({
    ...about(path, condition),
    quantity: "drop-limit",
    formula: "V_allowed",
    operands: {
      V_allowed: tabled(isShort ? "allowed, intermittent" : "allowed, continuous", lookup, "V", [
        nominal.place,
        condition.duration?.place,
      ]),
    },
    sources: [lookup.source],
  }));
}

function about(path: LoadPath, condition: Condition) {
  return { subject: { kind: "component", id: path.id }, condition: condition.id?.value } as const;
}
