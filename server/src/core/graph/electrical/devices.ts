import { wireMethods } from "../../methods/wires";
import type { Condition, Device, Protection, Wire } from "../../records/types";
import { wireChartBreaker, wireChartFuse } from "../../tables/wire-chart";
import { Memory } from "../remember";
import { derive, derived, type Keep, sumOf, tabled, type Value, written } from "../value";
import type { Inline, LoadPath } from "./circuit";
import type { ElectricalBasis } from "./index";
import type { LoadCurrents } from "./load-currents";
import { type Gap, gapOf } from "./wire-ratings";
import type { WireResult } from "./wires";

/** A wire that a breaker or fuse guards. */
export interface GuardedWire {
  readonly result: WireResult;
  /** Largest rating that the wire chart gives for it. */
  readonly chart: Value | undefined;
  /** Why the chart gives none. */
  readonly gap: Gap | undefined;
}

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
  /** The wires that it guards, each with what the wire chart gives for it. */
  readonly wires: readonly GuardedWire[];
  /** Components behind it. */
  readonly components: readonly string[];
}

/** Ratings and currents of everything that current runs through, and the wires that each breaker or fuse guards. */
export function deriveDevices(
  basis: ElectricalBasis,
  currents: LoadCurrents,
  wires: ReadonlyMap<Wire, WireResult>,
): DeviceResult[] {
  const { circuit, project } = basis;
  const devices = new Map((project.kit?.devices ?? []).map((device) => [device.id?.value, device]));
  const guarded = guardedWires(circuit.protecting, wires);
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
    const wiresOf = inline.kind === "protection" && device ? (guarded.get(inline.record) ?? []) : [];
    const isWhole = paths.every((path) => path.isSingle);
    const solved = (condition: Condition) =>
      isWhole || basis.states.get(condition)?.currentThrough(inline.id);
    const rests = [
      device,
      ...paths.flatMap((path) => [path, currents.get(path.id)]),
      ...wiresOf,
      ...basis.conditions.flatMap((condition) => [condition, solved(condition)]),
    ];
    return results.recall(inline.record, device ?? inline.record, rests, basis.keep, (keep) => ({
      inline,
      id: inline.id,
      device,
      rating: ratings.recall(inline.record, device ?? inline.record, [], keep, (own) =>
        own(ratingOf(inline, device)),
      ),
      currents: basis.conditions.flatMap((condition) => {
        const loads = paths.flatMap((path) => currents.get(path.id)?.get(condition) ?? []);
        const rests = [device, solved(condition), ...loads];
        return statesOf.recall(inline.record, condition, rests, keep, (own) => {
          const current = own(currentThrough(inline, condition, loads, isWhole, basis));
          return current ? [{ condition, current, drop: own(dropIn(inline, device, current)) }] : [];
        });
      }),
      wires: device ? wiresOf.map((result) => guardedWire(result, device, keep)) : [],
      components: paths.map((path) => path.id),
    }));
  });
}

const results = new Memory<Inline["record"], Device | Inline["record"], DeviceResult>();
const ratings = new Memory<Inline["record"], Device | Inline["record"], Value | undefined>();
const statesOf = new Memory<Inline["record"], Condition, readonly DeviceState[]>();
const chartRatings = new Memory<Wire, Device, Pick<GuardedWire, "chart" | "gap">>();

function guardedWires(
  protecting: ReadonlyMap<Wire, ReadonlySet<Protection>>,
  wires: ReadonlyMap<Wire, WireResult>,
): Map<Protection, WireResult[]> {
  const guarded = new Map<Protection, WireResult[]>();
  for (const [wire, devices] of protecting) {
    const result = wires.get(wire);
    if (!result) continue;
    for (const device of devices) {
      const known = guarded.get(device);
      if (known) known.push(result);
      else guarded.set(device, [result]);
    }
  }
  return guarded;
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
  basis: ElectricalBasis,
): Value | undefined {
  if (loads.length === 0) return undefined;
  const common = {
    subject: { kind: inline.kind, id: inline.id },
    quantity: "device-current",
    condition: condition.id?.value,
    unit: "A",
  } as const;
  const solved = basis.states.get(condition)?.currentThrough(inline.id);
  if (isWhole) {
    return derive({
      ...common,
      formula: "sum(I)",
      operands: { I: loads.map((load) => derived(`current of ${load.subject.id}`, load)) },
      compute: ({ I }) => sumOf(I),
    });
  }
  if (solved === undefined) return undefined;
  return derive({
    ...common,
    method: "solution of the whole network: the current has more than one way",
    operands: { loads: { name: "loads behind it", value: loads.length, unit: "1", places: [], notes: [] } },
    compute: () => Math.abs(solved),
  });
}

function dropIn(inline: Inline, device: Device | undefined, current: Value): Value | undefined {
  const resistance = inline.kind === "contact" ? inline.record.resistance : device?.resistance;
  return derive({
    subject: current.subject,
    quantity: "device-drop",
    condition: current.condition,
    unit: "V",
    formula: "I * R",
    operands: {
      I: derived("current", current),
      R: written(`resistance of ${inline.id}`, resistance, "ohm"),
    },
    compute: ({ I, R }) => I * R,
    sources: [wireMethods.voltageDrop.source],
  });
}

function guardedWire(result: WireResult, device: Device, keep: Keep): GuardedWire {
  const { wire } = result;
  const found = chartRatings.recall(wire, device, [], keep, (own) => chartRating(wire, device, own));
  return { result, ...found };
}

function chartRating(wire: Wire, device: Device, keep: Keep): Pick<GuardedWire, "chart" | "gap"> {
  if (!wire.gauge || !device.kind || wire.material?.value === "aluminium") {
    return { chart: undefined, gap: undefined };
  }
  const kind = device.kind.value;
  const lookup = (kind === "fuse" ? wireChartFuse : wireChartBreaker)(wire.gauge.value.si);
  const chart = keep(
    derive({
      subject: { kind: "wire", id: wire.id!.value },
      quantity: "chart-rating",
      unit: "A",
      formula: "I_chart",
      operands: { I_chart: tabled(`largest ${kind} for this gauge`, lookup, "A", [wire.gauge.place]) },
      compute: ({ I_chart }) => I_chart,
      sources: [lookup.source],
    }),
  );
  return { chart, gap: gapOf(`${kind} in the wire chart`, lookup) };
}
