import { isAtMost, isBelow, sameWithinRounding } from "../rounding";
import type { Source } from "../source";
import { advisoryCircular } from "../tables/electrical-documents";
import { interpolate, type Point } from "../tables/interpolation";
import { covered, type Lookup, list, notCovered, range } from "../tables/lookup";
import type { MethodCard } from "./wires";

/**
 * Power sources: alternators, batteries and how much of them may be used. Currents in A, speeds in rpm,
 * charges in Ah or A·min, times in the unit that each name or docstring says.
 *
 * Every function is total: impossible inputs give Infinity, NaN or "not covered", never an exception.
 * Worked examples are named after the tests in tests/published-values/sources.test.ts.
 */
export const sourceMethods = {
  alternatorOutput: {
    formula: "I = I1 + (I2 − I1) × (n − n1) / (n2 − n1)",
    source: {
      document: "Straight line between the output points of the record",
      standing: "derived",
      note: "output drops at low speed; no general curve was found for aircraft alternators",
    },
  },
  leastEngineSpeed: {
    formula: "n engine = n alternator / drive ratio",
    source: { document: "Straight line between the output points of the record", standing: "derived" },
  },
  batteryEndurance: {
    formula: "t = t1 + t2 + (0.75 × 60 × C − t1 × I cruise − t2 × I landing) / I emergency",
    source: {
      document: "Installation manuals 190-01007-A3 and 190-02246-10",
      edition: "rev. 4; rev. 11",
      at: "fig. 3-19; p. 3-38",
      standing: "published",
      note: "loads in steady state, shedding finished within t1, worst case night IFR with pitot heat",
    },
  },
  rechargeTime: {
    formula: "t = C / (I spare × efficiency)",
    source: {
      document: "Balance of charge",
      standing: "derived",
      note: "the shortest time: a battery takes less current as it fills, and without an efficiency its losses are left out",
    },
  },
  cyclicAverage: {
    formula: "I avg = Σ (I × t) / T",
    source: { document: "Mean over the interval", standing: "derived", note: "standard definition" },
  },
} as const satisfies Record<string, MethodCard>;

/** One point of an alternator's output, at the speed of its own shaft. */
export interface OutputPoint {
  readonly rpm: number;
  readonly amps: number;
}

/**
 * Output in A at a speed of the alternator's own shaft: a straight line between the points.
 *
 * @param points in any order. Where two stand at one speed the lesser output counts. A point that is not finite
 *   makes the curve unusable: nothing is covered.
 * @param source who gives the points; it is the source of the answer
 */
export function alternatorOutput(
  points: readonly OutputPoint[],
  alternatorRpm: number,
  source: Source,
): Lookup<number> {
  const curve = outputCurve(points);
  const amps = interpolate(curve, nearestEnd(curve, alternatorRpm));
  return amps === undefined
    ? notCovered(
        { quantity: "alternator speed", asked: alternatorRpm, unit: "rpm", covers: speedsOf(curve) },
        source,
      )
    : covered(amps, source);
}

/**
 * - `isReached`: from `engineRpm` on, up to the highest speed given, the output holds the need. Where that is
 *   `isLowestGiven`, the points don't go low enough to say how much slower would do.
 * - not reached: at the highest speed given the output is only `ampsAtHighest`, short of the need
 */
export type LeastEngineSpeed =
  | {
      readonly isReached: true;
      readonly engineRpm: number;
      readonly alternatorRpm: number;
      readonly isLowestGiven: boolean;
    }
  | { readonly isReached: false; readonly ampsAtHighest: number };

/**
 * The lowest engine speed from which on the output holds `neededAmps` at every higher speed of the points: the
 * inverse of {@link alternatorOutput}. A need that is met at some low speed and missed above it is not met there.
 *
 * @param driveRatio alternator turns for one turn of the engine, above zero
 */
export function leastEngineSpeed(
  points: readonly OutputPoint[],
  driveRatio: number,
  neededAmps: number,
  source: Source,
): Lookup<LeastEngineSpeed> {
  if (!(driveRatio > 0 && driveRatio < Number.POSITIVE_INFINITY)) {
    const covers = range(0, Number.POSITIVE_INFINITY);
    return notCovered({ quantity: "drive ratio", asked: driveRatio, unit: "", covers }, source);
  }
  const curve = outputCurve(points);
  const highest = curve.at(-1);
  if (highest === undefined) {
    return notCovered({ quantity: "needed current", asked: neededAmps, unit: "A", covers: list([]) }, source);
  }
  const short = curve.findLastIndex(([, amps]) => !isAtMost(neededAmps, amps));
  const [from, to] = [curve[short], curve[short + 1]];
  if (to === undefined) return covered({ isReached: false, ampsAtHighest: highest[1] }, source);

  const alternatorRpm =
    from === undefined
      ? to[0]
      : from[0] + ((Math.min(neededAmps, to[1]) - from[1]) * (to[0] - from[0])) / (to[1] - from[1]);
  return covered(
    {
      isReached: true,
      engineRpm: alternatorRpm / driveRatio,
      alternatorRpm,
      isLowestGiven: from === undefined,
    },
    source,
  );
}

/** In strictly rising order of speed, one output each; empty when a point is not finite. */
function outputCurve(points: readonly OutputPoint[]): readonly Point[] {
  if (!points.every(({ rpm, amps }) => Number.isFinite(rpm) && Number.isFinite(amps))) return [];
  const least = new Map<number, number>();
  for (const { rpm, amps } of points) least.set(rpm, Math.min(amps, least.get(rpm) ?? amps));
  return [...least].sort(([a], [b]) => a - b);
}

/** A speed that a drive ratio puts beside an end of the curve by the last bit is that end. */
function nearestEnd(curve: readonly Point[], rpm: number): number {
  const end = [curve[0], curve.at(-1)].find((point) => point && sameWithinRounding(point[0], rpm));
  return end?.[0] ?? rpm;
}

function speedsOf(curve: readonly Point[]) {
  const [first, last] = [curve[0], curve.at(-1)];
  return first && last ? range(first[0], last[0]) : list([]);
}

/** The fixed parts of the published endurance method. */
export const enduranceBasis = {
  /** Share of the rated capacity that counts. */
  usableShare: 0.75,
  /** Time at normal cruise load until the failure is recognised and loads are shed. */
  recognitionMinutes: 5,
  /** Time kept for approach and landing. */
  landingMinutes: 10,
} as const;

export interface EnduranceLoads {
  readonly ratedAmpHours: number;
  /** Before shedding. */
  readonly cruiseAmps: number;
  /** After shedding. */
  readonly emergencyCruiseAmps: number;
  readonly emergencyLandingAmps: number;
}

/** Charges in A·min, times in min. */
export interface Endurance {
  readonly usable: number;
  readonly recognition: number;
  readonly landing: number;
  /** What is left for emergency cruise; negative when recognition and landing alone take more than is usable. */
  readonly remaining: number;
  /** Undefined when `remaining` is negative: the battery fails, and no time says by how much. */
  readonly emergencyCruiseMinutes: number | undefined;
  readonly totalMinutes: number | undefined;
}

/**
 * How long a battery carries the flight after the last generator failed. Loads are zero or more; without any
 * emergency cruise load the time is Infinity.
 * Source: installation manuals 190-01007-A3 and 190-02246-10. Example: "3.2 battery endurance".
 */
export function batteryEndurance(loads: EnduranceLoads): Endurance {
  const { usableShare, recognitionMinutes, landingMinutes } = enduranceBasis;
  const usable = usableShare * loads.ratedAmpHours * 60;
  const recognition = recognitionMinutes * loads.cruiseAmps;
  const landing = landingMinutes * loads.emergencyLandingAmps;
  const taken = recognition + landing;
  const remaining = sameWithinRounding(usable, taken) ? 0 : usable - taken;
  const charges = { usable, recognition, landing, remaining };
  if (!(remaining >= 0)) return { ...charges, emergencyCruiseMinutes: undefined, totalMinutes: undefined };

  const emergencyCruiseMinutes =
    loads.emergencyCruiseAmps === 0 ? Number.POSITIVE_INFINITY : remaining / loads.emergencyCruiseAmps;
  return {
    ...charges,
    emergencyCruiseMinutes,
    totalMinutes: recognitionMinutes + emergencyCruiseMinutes + landingMinutes,
  };
}

/**
 * Hours in which a source puts back what was taken from the battery; Infinity without spare current.
 * Source: derived, see the note of its card. Example: "recharge time".
 */
export function rechargeTime(input: {
  readonly takenAmpHours: number;
  /** What the source gives beyond the loads. */
  readonly spareAmps: number;
  /** Share of the charge sent in that the battery keeps, above 0 and at most 1. Left out: losses are ignored. */
  readonly efficiency?: number;
}): number {
  const { takenAmpHours, spareAmps, efficiency = 1 } = input;
  if (takenAmpHours <= 0) return 0;
  const keptAmps = spareAmps * efficiency;
  return keptAmps <= 0 ? Number.POSITIVE_INFINITY : takenAmpHours / keptAmps;
}

/**
 * - `continuous`: the whole continuous load
 * - `landing-light-on`, `landing-light-off`: take-off and landing with pitot heat on
 */
export type SourceLoadCase = "continuous" | "landing-light-on" | "landing-light-off";

/** One comparison of a demand with the share of a source's rating that it may take. */
export interface SourceLoadCheck {
  readonly loadCase: SourceLoadCase;
  readonly demandAmps: number;
  readonly limitAmps: number;
  /** Demand over rating; 1 at the rating. */
  readonly share: number;
  readonly limitShare: number;
  readonly holds: boolean;
  readonly source: Source;
}

const loadLimits = {
  unmonitored: {
    share: 0.8,
    source: advisoryCircular(
      "par. 11-35a",
      "published",
      "a rule of thumb by the AC's own words, no load analysis",
    ),
  },
  monitored: {
    share: 1,
    source: advisoryCircular("par. 11-35d and 11-36", "memory", "ammeter red line at 100 % of the rating"),
  },
  landingLightOn: { share: 0.95, source: takeOffAndLanding() },
  landingLightOff: { share: 0.8, source: takeOffAndLanding() },
} as const;

function takeOffAndLanding(): Source {
  return {
    document: "Installation manuals 190-01007-A3, 190-00734-17 and 190-01810-10",
    edition: "rev. 4; rev. 1; rev. 1",
    at: "p. 3-40; p. 3-24; p. 16",
    standing: "published",
    note: "intermittent loads are left out: the battery supplies them",
  };
}

/**
 * How much of a generator's or alternator's rating the continuous load may take: 80 %, or all of it where the
 * load is placarded or monitored. The source holds when every check of the answer does.
 *
 * In take-off and landing with pitot heat and landing light both on, up to 95 % is allowed if the demand is
 * within 80 % with pitot heat on and landing light off. Give `landingLightOffAmps` for that case only, with
 * `demandAmps` as the demand with both on; it does not matter to a monitored source.
 * Source: AC 43.13-1B par. 11-35; STC-manual practice. Examples: "1.14 eighty per cent".
 */
export function eightyPercentRule(input: {
  readonly ratingAmps: number;
  readonly demandAmps: number;
  /** Placards of allowed load combinations, warning light, or ammeter and voltmeter (par. 11-35b to d). */
  readonly isMonitored: boolean;
  readonly landingLightOffAmps?: number;
}): readonly SourceLoadCheck[] {
  const { ratingAmps, demandAmps, isMonitored, landingLightOffAmps } = input;
  const check = (
    loadCase: SourceLoadCase,
    amps: number,
    limit: { readonly share: number; readonly source: Source },
  ): SourceLoadCheck => ({
    loadCase,
    demandAmps: amps,
    limitAmps: limit.share * ratingAmps,
    share: amps / ratingAmps,
    limitShare: limit.share,
    holds: isAtMost(amps, limit.share * ratingAmps),
    source: limit.source,
  });
  if (isMonitored) return [check("continuous", demandAmps, loadLimits.monitored)];
  if (landingLightOffAmps === undefined) return [check("continuous", demandAmps, loadLimits.unmonitored)];
  return [
    check("landing-light-on", demandAmps, loadLimits.landingLightOn),
    check("landing-light-off", landingLightOffAmps, loadLimits.landingLightOff),
  ];
}

/** A part of a cycle, at one current. */
export interface CyclePart {
  readonly amps: number;
  readonly seconds: number;
}

/**
 * I avg = Σ (I × t) / T: mean current of a load that comes and goes, in A. NaN where there is no time to average
 * over, and where the parts take longer than the interval.
 * Source: standard definition. Example: "cyclic average".
 *
 * @param intervalSeconds T; current is zero in what the parts leave of it. Left out: the parts are the interval.
 */
export function cyclicAverage(parts: readonly CyclePart[], intervalSeconds?: number): number {
  const seconds = parts.reduce((total, part) => total + part.seconds, 0);
  const interval = intervalSeconds ?? seconds;
  if (!(interval > 0) || isBelow(interval, seconds)) return Number.NaN;
  return parts.reduce((total, { amps, seconds }) => total + amps * seconds, 0) / interval;
}
