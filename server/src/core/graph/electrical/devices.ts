import { wireMethods } from "../../methods/wires";
import { inUnit } from "../../quantities";
import type { Condition, Device } from "../../records/types";
import { Recurring } from "../remember";
import { derive, derived, known, sumOf, type Value, written } from "../value";
import type { ElectricalBasis } from "./basis";
import type { LoadPath } from "./circuit";
import type { Inline } from "./layout";
import type { LoadCurrents } from "./load-currents";

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
export function deriveDevices(basis: ElectricalBasis, currents: LoadCurrents): DeviceResult[] {
  const { circuit, conditions, project, states, keep: keepAll } = basis;
  const devices = new Map((project.kit?.devices ?? []).map((device) => [device.id?.value, device]));
  const behind = new Map<string, LoadPath[]>();
  for (const path of circuit.paths) {
    for (const { id } of path.through) {
      const known = behind.get(id);
      if (known) known.push(path);
      else behind.set(id, [path]);
    }
  }
  return [...circuit.inlines.values()].map((inline): DeviceResult => {
    const device = inline.kind === "protection" ? devices.get(inline.record.device?.value) : undefined;
    const paths = behind.get(inline.id) ?? [];
    const isWhole = paths.every((path) => path.isSingle);
    const solved = (condition: Condition) => isWhole || states.get(condition)?.currentThrough(inline.id);
    const rests: unknown[] = [device, conditions];
    for (const condition of conditions) rests.push(solved(condition));
    for (const { id, isSingle } of paths) rests.push(id, isSingle, currents.get(id));
    return results.recall(inline.record, rests, keepAll, (keep) => ({
      inline,
      id: inline.id,
      device,
      rating: ratings.recall(inline.record, [device], keep, (own) => own(ratingOf(inline, device))),
      currents: conditions.flatMap((condition) => {
        const loads = paths.flatMap((path) => currents.get(path.id)?.get(condition) ?? []);
        const rests = [device, solved(condition), ...loads];
        return statesOf.recall(condition, rests, keep, (own) => {
          const current = own(currentThrough(inline, condition, loads, isWhole, states));
          return current ? [{ condition, current, drop: own(dropIn(inline, device, current)) }] : [];
        });
      }),
      components: paths.map((path) => path.id),
    }));
  });
}

const results = new Recurring<Inline["record"], DeviceResult>();
const ratings = new Recurring<Inline["record"], Value | undefined>();
const statesOf = new Recurring<Condition, readonly DeviceState[]>();

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
  states: ElectricalBasis["states"],
): Value | undefined {
  if (loads.length === 0) return undefined;
  const common = () =>
    ({
      subject: { kind: inline.kind, id: inline.id },
      quantity: "device-current",
      condition: condition.id?.value,
    }) as const;
  const solved = states.get(condition)?.currentThrough(inline.id);
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
