import type { Device, Protection, Wire } from "../../records/types";
import { wireChartBreaker, wireChartFuse } from "../../tables/wire-chart";
import { groupBy } from "../group-by";
import { Recurring } from "../remember";
import { derive, type Keep, tabled, type Value } from "../value";
import type { Circuit } from "./circuit";
import type { DeviceResult } from "./devices";
import type { RatedDevice } from "./rated";
import { type Gap, gapOf } from "./wire-ratings";
import type { WireResult } from "./wires";

/** A breaker or fuse that the kit describes, with the wires that it guards; the same object while they are. */
export interface GuardResult {
  readonly device: DeviceResult;
  readonly wires: readonly GuardedWire[];
}

export interface GuardedWire extends Pick<ChartResult, "chart"> {
  readonly result: WireResult;
}

/** What the wire chart gives for one of those wires: nothing that depends on a condition. */
export interface ChartResult {
  readonly wire: Wire;
  readonly guard: Protection;
  /** Largest rating that the chart gives for the wire. */
  readonly chart: Value | undefined;
  /** Why it gives none. */
  readonly gap: Gap | undefined;
}

/** What the wire chart gives for each wire that a breaker or fuse guards. */
export function deriveCharts(
  devices: readonly RatedDevice[],
  { protecting }: Circuit,
  keepAll: Keep,
): ChartResult[] {
  const guarded = guardedWires(protecting);
  return devices.flatMap(({ inline, device }) => {
    if (inline.kind !== "protection" || !device) return [];
    const guard = inline.record;
    const named = (guarded.get(guard) ?? []).filter(({ id }) => id);
    return named.map((wire) =>
      charts.recall(wire, [guard, device], keepAll, (keep) => ({
        wire,
        guard,
        ...chartRating(wire, device, keep),
      })),
    );
  });
}

/** The wires that each breaker or fuse guards. */
export function deriveGuards(
  devices: readonly DeviceResult[],
  charts: readonly ChartResult[],
  wires: ReadonlyMap<Wire, WireResult>,
  keep: Keep,
): GuardResult[] {
  const guarded = groupBy(charts, ({ guard }) => guard);
  return devices.flatMap((result) => {
    const { inline, device } = result;
    if (inline.kind !== "protection" || !device) return [];
    const inside: GuardedWire[] = [];
    const rests: unknown[] = [result];
    for (const { wire, chart } of guarded.get(inline.record) ?? []) {
      const found = wires.get(wire);
      if (!found) continue;
      inside.push({ result: found, chart });
      rests.push(found, chart);
    }
    return [guards.recall(inline.record, rests, keep, () => ({ device: result, wires: inside }))];
  });
}

const guards = new Recurring<Protection, GuardResult>();
const charts = new Recurring<Wire, ChartResult>();

function guardedWires(protecting: ReadonlyMap<Wire, ReadonlySet<Protection>>): Map<Protection, Wire[]> {
  const guarded = new Map<Protection, Wire[]>();
  for (const [wire, devices] of protecting) {
    for (const device of devices) {
      const known = guarded.get(device);
      if (known) known.push(wire);
      else guarded.set(device, [wire]);
    }
  }
  return guarded;
}

function chartRating(wire: Wire, device: Device, keep: Keep): Pick<ChartResult, "chart" | "gap"> {
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
