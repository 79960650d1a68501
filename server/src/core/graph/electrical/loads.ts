import { wireMethods } from "../../methods/wires";
import type { Component, Condition, Electrical, Wire } from "../../records/types";
import { voltageDropLimit } from "../../tables/voltage-drop-limits";
import { Recurring } from "../remember";
import { derive, derived, type Keep, known, sumOf, tabled, type Value } from "../value";
import type { ElectricalBasis } from "./basis";
import type { LoadPath } from "./circuit";
import type { DeviceResult } from "./devices";
import type { BusVoltages, LoadCurrents, LoadVoltages } from "./load-currents";
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

/** The same of one path. */
interface FoundOnPath {
  readonly voltages: ReadonlyMap<Condition, Value> | undefined;
  readonly buses: readonly (ReadonlyMap<Condition, Value> | undefined)[];
  readonly wires: readonly WireResult[];
  readonly devices: readonly DeviceResult[];
}

/**
 * Voltage at each load, and what is lost on the way there and back. A result is the same object while all that
 * it rests on is.
 */
export function deriveLoads(basis: ElectricalBasis, found: Found): LoadResult[] {
  const devices = new Map(found.devices.map((device) => [device.id, device]));
  const { conditions, circuit, keep: keepAll } = basis;
  const nominal = basis.project.airframe?.electrical?.nominal;
  return circuit.paths.map((path) => {
    const currents = found.currents.get(path.id);
    const onPath: FoundOnPath = {
      voltages: found.voltages.get(path.id),
      buses: path.isSingle ? [] : path.buses.map((bus) => found.ofBuses.get(bus)),
      wires: [...path.feed, ...path.returns].flatMap((wire) => found.wires.get(wire) ?? []),
      devices: path.through.flatMap(({ id }) => devices.get(id) ?? []),
    };
    const rests: unknown[] = [path, nominal, currents, onPath.voltages, ...onPath.buses, ...onPath.wires];
    for (const device of onPath.devices) for (const { drop } of device.currents) rests.push(drop);
    return results.recall(path.component, rests, keepAll, (keep) => ({
      path,
      states: [...(currents ?? [])].map(([condition, current]) =>
        loadState({ path, condition, index: conditions.indexOf(condition), current, nominal }, onPath, keep),
      ),
    }));
  });
}

const results = new Recurring<Component, LoadResult>();

interface RunningLoad {
  readonly path: LoadPath;
  readonly condition: Condition;
  /** Of the condition, among all of them. */
  readonly index: number;
  readonly current: Value;
  readonly nominal: Nominal;
}

type Nominal = Electrical["nominal"];

function loadState(
  { path, condition, index, current, nominal }: RunningLoad,
  found: FoundOnPath,
  keepAll: Keep,
): LoadState {
  const drops = found.wires.map((result) => ({ result, drop: result.states[index]?.drop }));
  const worst = drops
    .toSorted((a, b) => (b.drop?.value ?? 0) - (a.drop?.value ?? 0))
    .map(({ result }) => result);
  const voltage = found.voltages?.get(condition);
  const inDevices = found.devices.flatMap(
    ({ currents }) => currents.find((state) => state.condition === condition)?.drop ?? [],
  );
  const ofBuses = found.buses.flatMap((bus) => bus?.get(condition) ?? []);
  const rests = [nominal, voltage, ...drops.map(({ drop }) => drop), ...inDevices, ...ofBuses];
  const { drop, limit } = remembered.recall(condition, rests, keepAll, (keep) => ({
    drop: path.isSingle
      ? keep(sumOfDrops(path, condition, drops, inDevices))
      : keep(differenceOfVoltages(path, condition, voltage, ofBuses)),
    limit: keep(dropLimit(path, condition, nominal)),
  }));
  return { condition, current, voltage, drop, limit, worst };
}

const remembered = new Recurring<Condition, Pick<LoadState, "drop" | "limit">>();

const throughStructure =
  "Returns through the structure: its drop counts as none where the bond is 0.005 ohm or less (AC 43.13-1B par. 11-66).";

/** Where the current has one way only, what each wire and each device on it drops. */
function sumOfDrops(
  path: LoadPath,
  condition: Condition,
  drops: readonly { readonly result: WireResult; readonly drop: Value | undefined }[],
  inDevices: readonly Value[],
): Value | undefined {
  if (drops.length + inDevices.length === 0) return undefined;
  if (drops.some(({ drop }) => !drop)) return undefined;
  const volts = sumOf([...drops.map(({ drop }) => drop!.value), ...inDevices.map(({ value }) => value)]);
  return known(volts, "V", () => ({
    ...about(path, condition),
    quantity: "path-drop",
    formula: "sum(V)",
    operands: {
      V: [
        ...drops.map(({ result, drop }) => derived(`drop of wire ${result.id}`, drop)),
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
