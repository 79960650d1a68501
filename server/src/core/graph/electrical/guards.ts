import type { Device, Protection, Wire } from "../../records/types";
import { wireChartBreaker, wireChartFuse } from "../../tables/wire-chart";
import { Memory } from "../remember";
import { derive, type Keep, tabled, type Value } from "../value";
import type { Circuit } from "./circuit";
import type { DeviceResult } from "./devices";
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

/** A breaker or fuse that the kit describes, with the wires that it guards; the same object while they are. */
export interface GuardResult {
  readonly device: DeviceResult;
  readonly wires: readonly GuardedWire[];
}

/** The wires that each breaker or fuse guards, each with what the wire chart gives for it. */
export function deriveGuards(
  devices: readonly DeviceResult[],
  { protecting }: Circuit,
  wires: ReadonlyMap<Wire, WireResult>,
  keepAll: Keep,
): GuardResult[] {
  const guarded = guardedWires(protecting, wires);
  return devices.flatMap((result) => {
    const { inline, device } = result;
    if (inline.kind !== "protection" || !device) return [];
    const inside = guarded.get(inline.record) ?? [];
    return [
      results.recall(inline.record, device, [result, ...inside], keepAll, (keep) => ({
        device: result,
        wires: inside.map((wire) => guardedWire(wire, device, keep)),
      })),
    ];
  });
}

const results = new Memory<Protection, Device, GuardResult>();
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
