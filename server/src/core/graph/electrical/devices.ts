import { wireMethods } from "../../methods/wires";
import { none } from "../../none";
import { inUnit } from "../../quantities";
import type { Condition, Device } from "../../records/types";
import { Recurring } from "../remember";
import { derive, derived, known, sumOf, type Value, written } from "../value";
import type { ElectricalBasis } from "./basis";
import type { Inline } from "./layout";
import type { LoadCurrents } from "./load-currents";
import { RecurringStates, type StatesOf } from "./recurring-states";

/** A condition in which something behind it runs. */
export interface DeviceState {
  readonly condition: Condition;
  readonly current: Value;
  /** Undefined where no resistance is recorded. */
  readonly drop: Value | undefined;
}

/** A breaker or fuse in its place, or a contact; the same object while all that it rests on is. */
export interface DeviceResult {
  readonly inline: Inline;
  readonly id: string;
  /** The kit's device; undefined for a contact. */
  readonly device: Device | undefined;
  readonly rating: Value | undefined;
  readonly currents: readonly DeviceState[];
  /** Components behind it. */
  readonly components: readonly string[];
}

/** Ratings and currents of everything that current runs through. */
export function deriveDevices(basis: ElectricalBasis, currents: LoadCurrents): readonly DeviceResult[] {
  const { circuit, conditions, states, keep } = basis;
  const solutions = conditions.map((condition) => states.get(condition));
  const how: StatesOf<Passed, DeviceState | undefined, DeviceResult> = {
    things: passedDevices(basis),
    entryOf: ({ inline }) => inline.record,
    grounds: basis.grounds,
    rests: ({ inline, device, rating, paths, isWhole }, rests) => {
      rests.push(device, rating, conditions, isWhole);
      if (!isWhole) for (const state of solutions) rests.push(state?.currentThrough(inline.id));
      for (const position of paths) rests.push(circuit.paths[position]!.id, currents[position]);
    },
    restsIn: ({ inline, device, paths, isWhole }, index) => {
      const solved = !isWhole && solutions[index]?.currentThrough(inline.id);
      const loads = paths.map((position) => currents[position]![index]);
      return [conditions[index], device, isWhole, solved, ...loads];
    },
    stateIn: ({ inline, device, paths, isWhole }, index, own) => {
      const condition = conditions[index]!;
      const loads = paths.flatMap((position) => currents[position]![index] ?? []);
      const solved = solutions[index]?.currentThrough(inline.id);
      const current = own(currentThrough(inline, condition, loads, isWhole, solved));
      return current && { condition, current, drop: own(dropIn(inline, device, current)) };
    },
    whole: ({ inline, device, rating, paths }, inThem) => ({
      inline,
      id: inline.id,
      device,
      rating,
      currents: inThem.filter((state) => state !== undefined),
      components: paths.map((position) => circuit.paths[position]!.id),
    }),
  };
  return results.recall(how, keep);
}

/** Everything that current runs through, with what lies behind it. */
function passedDevices({ circuit, project, keep }: ElectricalBasis): Passed[] {
  const devices = new Map((project.kit?.devices ?? []).map((device) => [device.id?.value, device]));
  const behind = new Map<string, number[]>();
  circuit.paths.forEach(({ through }, position) => {
    for (const { id } of through) {
      const known = behind.get(id);
      if (known) known.push(position);
      else behind.set(id, [position]);
    }
  });
  return [...circuit.inlines.values()].map((inline) => {
    const device = inline.kind === "protection" ? devices.get(inline.record.device?.value) : undefined;
    const paths = behind.get(inline.id) ?? none;
    return {
      inline,
      device,
      rating: ratings.recall(inline.record, [device], keep, (own) => own(ratingOf(inline, device))),
      paths,
      isWhole: paths.every((position) => circuit.paths[position]!.isSingle),
    };
  });
}

const ratings = new Recurring<Inline["record"], Value | undefined>();
const results = new RecurringStates<DeviceState | undefined, DeviceResult>();

/** A device in its place, with what its states are made of. */
interface Passed extends Pick<DeviceResult, "inline" | "device" | "rating"> {
  /** To the components behind it, by their position. */
  readonly paths: readonly number[];
  /** No other way exists for any of them. */
  readonly isWhole: boolean;
}

function ratingOf(inline: Inline, device: Device | undefined): Value | undefined {
  const [name, rating, place] =
    inline.kind === "contact"
      ? ["rating of the contact", inline.record.rating, undefined]
      : [`rating of ${device?.id?.value}`, device?.rating, inline.record.device?.place];
  const operand = written(name, rating, "A");
  return derive({
    subject: { kind: inline.kind, id: inline.id },
    quantity: "device-rating",
    unit: "A",
    formula: "I_rated",
    operands: {
      I_rated: operand && { ...operand, places: [...operand.places, ...(place ? [place] : [])] },
    },
    compute: ({ I_rated }) => I_rated,
    sources: [
      {
        document: device?.data?.value ?? `${name}, ${device ? "kit" : "install"} record`,
        standing: "record",
      },
    ],
  });
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

function dropIn(inline: Inline, device: Device | undefined, current: Value): Value | undefined {
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
