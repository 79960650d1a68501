import { isBelow, sameWithinRounding } from "../rounding";
import type { Source } from "../source";
import { covered, type Lookup, list, notCovered, range } from "../tables/lookup";
import type { MethodCard } from "./wires";

/**
 * Time-current bands of breakers and fuses, from points that the record gives: multiples of the rating, and the
 * earliest and latest time in s after which the device opens.
 *
 * Between points both times are straight lines on log-log paper. More current never opens a device later: where
 * the points say otherwise the band is widened until it is monotone, the earliest time down and the latest up.
 * `Infinity` says "holds for ever" as an earliest time and "may never open" as a latest one; 0 as an earliest
 * time says "at once". No line leads there: up to the next point only what monotony leaves is known.
 */
export const openingMethods = {
  openingTime: {
    formula: "log t = log t1 + (log t2 − log t1) × (log m − log m1) / (log m2 − log m1)",
    source: {
      document: "Straight line on log-log paper between the points of the device",
      standing: "derived",
      note: "band widened to be monotone",
    },
  },
  coordination: {
    formula: "t latest downstream < t earliest upstream",
    source: {
      document: "Definition of selective opening",
      standing: "derived",
      note: "bands at the points' own temperature, without preload",
    },
  },
} as const satisfies Record<string, MethodCard>;

export interface OpeningPoint {
  /** Current over rating, above zero. */
  readonly multiple: number;
  /** Zero or more. */
  readonly earliestSeconds: number;
  /** Above zero, and no less than the earliest. */
  readonly latestSeconds: number;
}

export type OpeningTimes = Omit<OpeningPoint, "multiple">;

/** Why a point can't belong to a band; `index` is its place in the list. */
export interface OpeningPointFault {
  readonly index: number;
  readonly fault: "multiple-not-positive" | "time-not-positive" | "earliest-after-latest";
}

/** Every point that makes the band unusable; a band with any covers nothing. */
export function faultsOfPoints(points: readonly OpeningPoint[]): readonly OpeningPointFault[] {
  return points.flatMap((point, index) => {
    const fault = faultOf(point);
    return fault ? [{ index, fault }] : [];
  });
}

function faultOf(point: OpeningPoint): OpeningPointFault["fault"] | undefined {
  const { multiple, earliestSeconds, latestSeconds } = point;
  if (!(multiple > 0 && multiple < Number.POSITIVE_INFINITY)) return "multiple-not-positive";
  if (!(earliestSeconds >= 0 && latestSeconds > 0)) return "time-not-positive";
  return earliestSeconds > latestSeconds ? "earliest-after-latest" : undefined;
}

/**
 * When a device opens at a current. Not covered below the lowest and above the highest point.
 *
 * @param points in any order; several at one multiple widen the band
 * @param source who gives the points; it is the source of the answer
 */
export function openingTime(
  points: readonly OpeningPoint[],
  multiple: number,
  source: Source,
): Lookup<OpeningTimes> {
  const band = bandOf(points, 1);
  const times = timesAt(band, multiple);
  if (times === undefined) {
    const [first, last] = [band[0], band.at(-1)];
    const covers = first && last ? range(first.at, last.at) : list([]);
    return notCovered(
      { quantity: "current in multiples of the rating", asked: multiple, unit: "", covers },
      source,
    );
  }
  return covered(times, source, isOneCurve(points) ? [] : [widenedNote]);
}

const widenedNote =
  "Points contradict each other (opening later at more current, or several at one): the band was widened to hold them all.";

function isOneCurve(points: readonly OpeningPoint[]): boolean {
  const sorted = points.toSorted((a, b) => a.multiple - b.multiple);
  return sorted.every((point, index) => {
    const next = sorted[index + 1];
    return (
      next === undefined ||
      (next.multiple > point.multiple &&
        next.earliestSeconds <= point.earliestSeconds &&
        next.latestSeconds <= point.latestSeconds)
    );
  });
}

/** A breaker or fuse with its band. */
export interface OpeningDevice {
  readonly ratingAmps: number;
  readonly points: readonly OpeningPoint[];
}

/** Both ends in A, included, rising. */
export interface CurrentRange {
  readonly fromAmps: number;
  readonly toAmps: number;
}

/** Currents at which the upstream device may open before the downstream one has. */
export interface OpeningClash extends CurrentRange {
  /** Where the downstream device is slowest against the upstream one. */
  readonly worst: {
    readonly amps: number;
    readonly downstreamLatestSeconds: number;
    readonly upstreamEarliestSeconds: number;
  };
}

export interface Coordination {
  /** True when every current asked is compared and none clashes. */
  readonly isCoordinated: boolean;
  /** Currents asked that both bands cover; undefined where there are none. */
  readonly compared: CurrentRange | undefined;
  /** Rising, apart from each other. */
  readonly clashes: readonly OpeningClash[];
  /** Currents asked that a band does not cover: nothing is known there. */
  readonly notCovered: readonly CurrentRange[];
}

/**
 * Whether the downstream device has always opened before the upstream one can. Exact on the lines of both bands,
 * not sampled: each crossing is solved for. An upstream device that holds for ever is never ahead.
 *
 * @param asked left out: all currents that both bands cover
 */
export function coordination(
  upstream: OpeningDevice,
  downstream: OpeningDevice,
  asked?: CurrentRange,
): Coordination {
  const above = bandOf(upstream.points, upstream.ratingAmps);
  const below = bandOf(downstream.points, downstream.ratingAmps);
  const compared = sharedRange(above, below, asked);
  const notCovered = asked ? leftOver(asked, compared) : [];
  if (compared === undefined) return { isCoordinated: false, compared, clashes: [], notCovered };

  const clashes = joined(clashingStretches(above, below, compared));
  return {
    isCoordinated: clashes.length === 0 && notCovered.length === 0,
    compared,
    clashes,
    notCovered,
  };
}

/** A point of a band that was made monotone; `at` is a multiple or a current. */
interface Knot {
  readonly at: number;
  readonly earliest: number;
  readonly latest: number;
}

/** Rising in `at`, times never rising. Empty when a point or the scale is at fault. */
type Band = readonly Knot[];

function bandOf(points: readonly OpeningPoint[], scale: number): Band {
  if (!(scale > 0 && scale < Number.POSITIVE_INFINITY) || faultsOfPoints(points).length > 0) return [];
  const rising = points.toSorted((a, b) => a.multiple - b.multiple);
  let earliest = Number.POSITIVE_INFINITY;
  const lowered = rising.map((point) => {
    earliest = Math.min(earliest, point.earliestSeconds);
    return { at: point.multiple * scale, earliest, latest: point.latestSeconds };
  });
  let latest = 0;
  const widened = lowered.reverse().map((knot) => {
    latest = Math.max(latest, knot.latest);
    return { ...knot, latest };
  });
  return oneEach(widened.reverse());
}

/** Of knots at one place, the widest: the lowest earliest time is the last one's, the highest latest the first's. */
function oneEach(knots: readonly Knot[]): Band {
  const band: Knot[] = [];
  for (const knot of knots) {
    const before = band.at(-1);
    if (before && sameWithinRounding(before.at, knot.at)) {
      band[band.length - 1] = { ...before, earliest: knot.earliest };
    } else band.push(knot);
  }
  return band;
}

function timesAt(band: Band, at: number): OpeningTimes | undefined {
  const knot = band.find((knot) => sameWithinRounding(knot.at, at));
  if (knot) return { earliestSeconds: knot.earliest, latestSeconds: knot.latest };
  const next = band.findIndex((knot) => knot.at > at);
  const [from, to] = [band[next - 1], band[next]];
  return (
    from &&
    to && { earliestSeconds: earliestBetween(from, to, at), latestSeconds: latestBetween(from, to, at) }
  );
}

/** No earlier than at the next knot, where no line leads there. */
function earliestBetween(from: Knot, to: Knot, at: number): number {
  return hasLog(from.earliest) && hasLog(to.earliest)
    ? onLine(from.at, from.earliest, to.at, to.earliest, at)
    : to.earliest;
}

/** No later than at the knot before, where no line comes from there. */
function latestBetween(from: Knot, to: Knot, at: number): number {
  return hasLog(from.latest) && hasLog(to.latest)
    ? onLine(from.at, from.latest, to.at, to.latest, at)
    : from.latest;
}

function hasLog(time: number): boolean {
  return time > 0 && time < Number.POSITIVE_INFINITY;
}

/** Straight on log-log paper. */
function onLine(x1: number, y1: number, x2: number, y2: number, x: number): number {
  if (y1 === y2) return y1;
  return y1 * (y2 / y1) ** (Math.log(x / x1) / Math.log(x2 / x1));
}

function sharedRange(above: Band, below: Band, asked?: CurrentRange): CurrentRange | undefined {
  const [firstAbove, lastAbove] = [above[0], above.at(-1)];
  const [firstBelow, lastBelow] = [below[0], below.at(-1)];
  if (!firstAbove || !lastAbove || !firstBelow || !lastBelow) return undefined;
  const fromAmps = Math.max(firstAbove.at, firstBelow.at, asked?.fromAmps ?? 0);
  const toAmps = Math.min(lastAbove.at, lastBelow.at, asked?.toAmps ?? Number.POSITIVE_INFINITY);
  return fromAmps <= toAmps || sameWithinRounding(fromAmps, toAmps) ? { fromAmps, toAmps } : undefined;
}

function leftOver(asked: CurrentRange, compared: CurrentRange | undefined): CurrentRange[] {
  if (compared === undefined) return [asked];
  return [
    { fromAmps: asked.fromAmps, toAmps: compared.fromAmps },
    { fromAmps: compared.toAmps, toAmps: asked.toAmps },
  ].filter(({ fromAmps, toAmps }) => isBelow(fromAmps, toAmps));
}

/** The times that are compared, at one current. */
interface Race {
  readonly amps: number;
  readonly downstream: number;
  readonly upstream: number;
}

function isClash({ downstream, upstream }: Race): boolean {
  return upstream !== Number.POSITIVE_INFINITY && !isBelow(downstream, upstream);
}

/** Clashes at single knots and between neighbouring knots, in rising order, each with its two ends. */
function clashingStretches(above: Band, below: Band, { fromAmps, toAmps }: CurrentRange): [Race, Race][] {
  const inside = [...above, ...below].map(({ at }) => at).filter((at) => at > fromAmps && at < toAmps);
  const currents = [...new Set([fromAmps, ...inside, toAmps])].sort((a, b) => a - b);
  const stretches: [Race, Race][] = [];
  for (const [index, amps] of currents.entries()) {
    // At a knot itself a time may jump, so the stretches beside it don't tell what holds there.
    const times = { downstream: timesAt(below, amps), upstream: timesAt(above, amps) };
    if (times.downstream && times.upstream) {
      const { latestSeconds } = times.downstream;
      const race = { amps, downstream: latestSeconds, upstream: times.upstream.earliestSeconds };
      if (isClash(race)) stretches.push([race, race]);
    }
    const next = currents[index + 1];
    if (next === undefined || sameWithinRounding(amps, next)) continue;
    const stretch = clashBetween(above, below, amps, next);
    if (stretch) stretches.push(stretch);
  }
  return stretches;
}

/** No knot lies between the two currents, so both times are straight lines there, and they cross at most once. */
function clashBetween(above: Band, below: Band, start: number, end: number): [Race, Race] | undefined {
  const middle = Math.sqrt(start * end);
  const [up, down] = [sideOf(above, middle), sideOf(below, middle)];
  if (!up || !down) return undefined;
  const raceAt = (amps: number): Race => ({
    amps,
    downstream: latestBetween(...down, amps),
    upstream: earliestBetween(...up, amps),
  });
  const [first, last] = [raceAt(start), raceAt(end)];
  const [atStart, atEnd] = [isClash(first), isClash(last)];
  if (!atStart && !atEnd) return undefined;
  if (atStart && atEnd) return [first, last];
  const crossing = raceAt(crossingOf(first, last));
  return atStart ? [first, crossing] : [crossing, last];
}

/** The two knots that a current lies between. */
function sideOf(band: Band, at: number): [from: Knot, to: Knot] | undefined {
  const next = band.findIndex((knot) => knot.at > at);
  const [from, to] = [band[next - 1], band[next]];
  return from && to && [from, to];
}

/** Where the lines meet; one of the two ends is a clash, the other is not, so all four times are finite. */
function crossingOf(first: Race, last: Race): number {
  const [lead, leadAfter] = [first, last].map((race) => Math.log(race.upstream / race.downstream));
  const part = lead! / (lead! - leadAfter!);
  return first.amps * (last.amps / first.amps) ** Math.min(Math.max(part, 0), 1);
}

/** Stretches that touch, as one clash. */
function joined(stretches: readonly [Race, Race][]): OpeningClash[] {
  const clashes: OpeningClash[] = [];
  for (const [start, end] of stretches) {
    const before = clashes.at(-1);
    const here = [start, end].map(asWorst).reduce(worse);
    if (before && !isBelow(before.toAmps, start.amps)) {
      clashes[clashes.length - 1] = {
        fromAmps: before.fromAmps,
        toAmps: end.amps,
        worst: worse(before.worst, here),
      };
    } else clashes.push({ fromAmps: start.amps, toAmps: end.amps, worst: here });
  }
  return clashes;
}

function asWorst({ amps, downstream, upstream }: Race): OpeningClash["worst"] {
  return { amps, downstreamLatestSeconds: downstream, upstreamEarliestSeconds: upstream };
}

/** The one whose downstream device takes more of the upstream device's time; the lower current when equal. */
function worse(a: OpeningClash["worst"], b: OpeningClash["worst"]): OpeningClash["worst"] {
  const lag = (one: OpeningClash["worst"]) => one.downstreamLatestSeconds / one.upstreamEarliestSeconds;
  return lag(b) > lag(a) ? b : a;
}
