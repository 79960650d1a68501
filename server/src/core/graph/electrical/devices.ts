import { wireMethods } from "../../methods/wires";
import { none } from "../../none";
import { inUnit } from "../../quantities";
import type { Condition } from "../../records/types";
import { derived, known, sumOf, type Value, written } from "../value";
import type { ElectricalBasis } from "./basis";
import type { Circuit } from "./circuit";
import type { Inline } from "./layout";
import type { LoadCurrents } from "./load-currents";
import type { RatedDevice } from "./rated";
import { RecurringStates, type StatesOf } from "./recurring-states";

/** A condition in which something behind it runs. */
export interface DeviceState {
  readonly condition: Condition;
  readonly current: Value;
  /** Undefined where no resistance is recorded. */
  readonly drop: Value | undefined;
}

/** A breaker or fuse in its place, or a contact; the same object while all that it rests on is. */
export interface DeviceResult extends RatedDevice {
  readonly currents: readonly DeviceState[];
  /** Components behind it. */
  readonly components: readonly string[];
}

/** Currents of everything that current runs through. */
export function deriveDevices(
  basis: ElectricalBasis,
  rated: readonly RatedDevice[],
  currents: LoadCurrents,
): readonly DeviceResult[] {
  const { circuit, conditions, states, keep } = basis;
  const behind = pathsBehind(circuit);
  const solutions = conditions.map((condition) => states.get(condition));
  const how: StatesOf<Passed, DeviceState | undefined, DeviceResult> = {
    things: rated.map((device) => {
      const paths = behind.get(device.id) ?? none;
      return { device, paths, isWhole: paths.every((position) => circuit.paths[position]!.isSingle) };
    }),
    entryOf: ({ device }) => device.inline.record,
    conditions,
    grounds: basis.grounds,
    rests: ({ device, paths, isWhole }) => {
      const rests: unknown[] = [device, isWhole];
      if (!isWhole) for (const state of solutions) rests.push(state?.currentThrough(device.id));
      for (const position of paths) rests.push(circuit.paths[position]!.id, currents[position]);
      return rests;
    },
    restsIn: ({ device, paths, isWhole }, index) => {
      const solved = !isWhole && solutions[index]?.currentThrough(device.id);
      const loads = paths.map((position) => currents[position]![index]);
      return [device, isWhole, solved, ...loads];
    },
    stateIn: ({ device, paths, isWhole }, index, own) => {
      const condition = conditions[index]!;
      const loads = paths.flatMap((position) => currents[position]![index] ?? []);
      const solved = solutions[index]?.currentThrough(device.id);
      const current = own(currentThrough(device.inline, condition, loads, isWhole, solved));
      return current && { condition, current, drop: own(dropIn(device, current)) };
    },
    whole: ({ device: { inline, id, device, rating }, paths }, inThem) => ({
      inline,
      id,
      device,
      rating,
      currents: inThem.filter((state) => state !== undefined),
      components: paths.map((position) => circuit.paths[position]!.id),
    }),
  };
  return results.recall(how, keep);
}

const results = new RecurringStates<DeviceState | undefined, DeviceResult>();

/** A device in its place, with what its states are made of. */
interface Passed {
  readonly device: RatedDevice;
  /** To the components behind it, by their position. */
  readonly paths: readonly number[];
  /** No other way exists for any of them. */
  readonly isWhole: boolean;
}

/** By device, the positions of the paths that lead through it. */
function pathsBehind({ paths }: Circuit): Map<string, number[]> {
  const behind = new Map<string, number[]>();
  paths.forEach(({ through }, position) => {
    for (const { id } of through) {
      const known = behind.get(id);
      if (known) known.push(position);
      else behind.set(id, [position]);
    }
  });
  return behind;
}

function currentThrough(
  inline: Inline,
  condition: Condition,
  loads: readonly Value[],
  isWhole: boolean,
  solved: number | undefined,
): Value | undefined {
  if (loads.length === 0) return undefined;
  const common = () =>
    ({
      subject: { kind: inline.kind, id: inline.id },
      quantity: "device-current",
      condition: condition.id?.value,
    }) as const;
  if (isWhole) {
    return known(sumOf(loads.map(({ value }) => value)), "A", () => ({
      ...common(),
      formula: "sum(I)",
      operands: { I: loads.map((load) => derived(`current of ${load.subject.id}`, load)) },
    }));
  }
  return known(solved === undefined ? undefined : Math.abs(solved), "A", () => ({
    ...common(),
    method: "solution of the whole network: the current has more than one way",
    operands: { loads: { name: "loads behind it", value: loads.length, unit: "1", places: [], notes: [] } },
  }));
}

function dropIn({ inline, device }: RatedDevice, current: Value): Value | undefined {
  const resistance = inline.kind === "contact" ? inline.record.resistance : device?.resistance;
  const ohms = resistance && inUnit(resistance.value, "ohm");
  return known(ohms === undefined ? undefined : current.value * ohms, "V", () => ({
    subject: current.subject,
    quantity: "device-drop",
    condition: current.condition,
    formula: "I * R",
    operands: {
      I: derived("current", current),
      R: written(`resistance of ${inline.id}`, resistance, "ohm"),
    },
    sources: [wireMethods.voltageDrop.source],
  }));
}
