import {
  type Coordination,
  coordination,
  type OpeningDevice,
  openingMethods,
  openingTime,
} from "../../../methods/opening-time";
import { isBelow } from "../../../rounding";
import { Memory } from "../../remember";
import type { Keep, Operand, Value } from "../../value";
import type { Inline } from "../layout";
import type { RatedDevice } from "../rated";
import type { Faults } from "./faults";
import { type BandedDevice, type BandLookup, bandOf, drawnOn, openingValue } from "./opening";
import type { Ways } from "./ways";

/** Two breakers or fuses in series, none between them. */
export interface OrderResult {
  readonly upstream: RatedDevice;
  readonly downstream: RatedDevice;
  readonly bands: { readonly upstream: BandLookup; readonly downstream: BandLookup };
  /** Largest current of a fault behind the downstream device; undefined where no resistance bounds it. */
  readonly largest: Value | undefined;
  /** Undefined without points of both, or where no fault passes more than both ratings. */
  readonly compared: ComparedOrder | undefined;
}

export interface ComparedOrder {
  readonly coordination: Coordination;
  /** Where the downstream device takes the largest share of the upstream one's time. */
  readonly worst: { readonly amps: number; readonly latest: Value; readonly earliest: Value } | undefined;
}

/** Compares every pair over the currents that a fault behind the downstream device can draw. */
export function deriveOrders(
  devices: readonly RatedDevice[],
  ways: Ways,
  faults: Faults,
  keep: Keep,
): OrderResult[] {
  const byId = new Map(devices.map((device) => [device.id, device]));
  return devices.flatMap((downstream) => {
    if (downstream.inline.kind !== "protection") return [];
    return ways.guardsAhead(downstream.id).flatMap((id): OrderResult[] => {
      const upstream = byId.get(id);
      if (!upstream?.device || !downstream.device) return [];
      const bands = { upstream: bandOf(upstream), downstream: bandOf(downstream) };
      const largest = faults.behind(downstream);
      const order =
        bands.upstream.kind === "band" && bands.downstream.kind === "band"
          ? compareOnce(upstream, downstream, largest, keep)
          : undefined;
      return [{ upstream, downstream, bands, largest, compared: order }];
    });
  });
}

const compared = new Memory<Inline["record"], Inline["record"], ComparedOrder | undefined>();

/** Two devices compare alike while they, their points and the largest fault current are the same. */
function compareOnce(
  upstream: RatedDevice,
  downstream: RatedDevice,
  largest: Value | undefined,
  keepAll: Keep,
): ComparedOrder | undefined {
  const rests = [upstream.device, downstream.device, largest?.value];
  return compared.recall(upstream.inline.record, downstream.inline.record, rests, keepAll, (keep) => {
    const [above, below] = [bandOf(upstream), bandOf(downstream)];
    if (above.kind !== "band" || below.kind !== "band") return undefined;
    return compare(above.band, below.band, largest, keep);
  });
}

function compare(
  upstream: BandedDevice,
  downstream: BandedDevice,
  largest: Value | undefined,
  keep: Keep,
): ComparedOrder | undefined {
  // Up to its own rating the upstream device holds, whatever the other does.
  const fromAmps = Math.max(upstream.rating.value, downstream.rating.value);
  const toAmps = largest?.value ?? upstream.points.at(-1)!.multiple * upstream.rating.value;
  if (!(toAmps > fromAmps)) return undefined;
  const above = deviceOf(upstream, drawnOn(upstream, "earliest", fromAmps / upstream.rating.value));
  const below = deviceOf(downstream, drawnOn(downstream, "latest", toAmps / downstream.rating.value));
  const result = provenBy(
    coordination(above, below, { fromAmps, toAmps }),
    coordination(deviceOf(upstream, upstream.points), deviceOf(downstream, downstream.points), {
      fromAmps,
      toAmps,
    }),
  );
  const amps = result.clashes[0]?.worst.amps ?? nearest(above, below, result);
  if (amps === undefined) return { coordination: result, worst: undefined };

  const current: Operand = {
    name: "current at which the two come nearest",
    value: amps,
    unit: "A",
    places: [],
    notes: [
      "Compared at the same current in both: what else the upstream device carries is not counted. " +
        openingMethods.coordination.source.note,
    ],
  };
  const subject = { kind: "protection", id: downstream.id } as const;
  const latest = keep(
    openingValue(downstream, "latest", current, { subject, quantity: "latest-opening-time" }),
  );
  const earliest = keep(
    openingValue(upstream, "earliest", current, {
      subject: { kind: "protection", id: upstream.id },
      quantity: "earliest-opening-time",
    }),
  );
  return { coordination: result, worst: latest && earliest && { amps, latest, earliest } };
}

/**
 * Bands that are drawn on by their bounds can show that two devices open in order. Where they don't, and the
 * points themselves say nothing, the order is not known.
 */
function provenBy(drawn: Coordination, written: Coordination): Coordination {
  const { compared } = written;
  const unknown = drawn.clashes.flatMap(({ fromAmps, toAmps }) =>
    compared
      ? [
          { fromAmps, toAmps: Math.min(toAmps, compared.fromAmps) },
          { fromAmps: Math.max(fromAmps, compared.toAmps), toAmps },
        ]
      : [{ fromAmps, toAmps }],
  );
  const open = [...drawn.notCovered, ...unknown.filter(({ fromAmps, toAmps }) => isBelow(fromAmps, toAmps))];
  return {
    isCoordinated: drawn.isCoordinated,
    compared: drawn.compared,
    clashes: written.clashes,
    notCovered: open.sort((a, b) => a.fromAmps - b.fromAmps),
  };
}

function deviceOf(band: BandedDevice, points: OpeningDevice["points"]): OpeningDevice {
  return { ratingAmps: band.rating.value, points };
}

/**
 * Where no clash is found, the current with the least time between: both times are straight lines on log-log
 * paper between points, so it is at a point or at an end.
 */
function nearest(above: OpeningDevice, below: OpeningDevice, result: Coordination): number | undefined {
  const { compared } = result;
  if (!compared) return undefined;
  const knots = [above, below].flatMap(({ points, ratingAmps }) =>
    points.map(({ multiple }) => multiple * ratingAmps),
  );
  const { fromAmps, toAmps } = compared;
  let worst: { amps: number; lag: number } | undefined;
  for (const amps of [fromAmps, ...knots.filter((at) => at > fromAmps && at < toAmps), toAmps]) {
    const source = openingMethods.openingTime.source;
    const up = openingTime(above.points, amps / above.ratingAmps, source);
    const down = openingTime(below.points, amps / below.ratingAmps, source);
    if (!up.covered || !down.covered) continue;
    if (result.notCovered.some((gap) => amps >= gap.fromAmps && amps <= gap.toAmps)) continue;
    const lag = down.value.latestSeconds / up.value.earliestSeconds;
    if (!worst || lag > worst.lag) worst = { amps, lag };
  }
  return worst?.amps;
}
