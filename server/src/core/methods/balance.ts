import { sameWithinRounding } from "../rounding";
import type { Source } from "../source";
import { advisoryCircular } from "../tables/electrical-documents";

/**
 * Weight-and-balance arithmetic in plain numbers, in any one consistent set of units (lb and in, kg and m).
 * Arms are positive aft of the datum and negative ahead of it; lateral arms are positive to the right.
 * Nothing here rounds.
 */

/** A weight that acts at one arm. A negative weight stands for something taken away. */
export interface PointMass {
  readonly weight: number;
  readonly arm: number;
}

/** What several weights come to. `arm` is where their sum acts: the centre of gravity. */
export interface Balance {
  readonly weight: number;
  readonly moment: number;
  /** Undefined when the weights cancel: a pure moment acts nowhere in particular. */
  readonly arm: number | undefined;
}

/** The mean aerodynamic chord. */
export interface MeanChord {
  /** Arm of the leading edge. */
  readonly leadingEdge: number;
  readonly length: number;
}

/** Where each method comes from. */
export const balanceSources = {
  centreOfGravity: advisoryCircular("chapter 10, par. 10-2h and 10-2i, figure 10-10", "published"),
  usefulLoad: advisoryCircular("chapter 10, par. 10-2d", "published"),
  weighing: advisoryCircular("chapter 10, par. 10-2n and 10-2r", "published"),
  ballast: advisoryCircular("chapter 10, par. 10-22, figure 10-19", "published"),
  shift: {
    document: "sum of moments",
    standing: "derived",
    note: "one weight at a new arm, the total unchanged",
  },
  percentOfChord: { document: "definition of the per cent of mean aerodynamic chord", standing: "derived" },
} as const satisfies Record<string, Source>;

/** moment = weight x arm (AC 43.13-1B 10-2h). */
export function moment(item: PointMass): number {
  return item.weight * item.arm;
}

/** arm = moment / weight; undefined when the weight is zero. */
export function armOf(weight: number, moment: number): number | undefined {
  return weight === 0 ? undefined : moment / weight;
}

/**
 * arm = sum of moments / sum of weights (AC 43.13-1B 10-2i; worked: figure 10-10, forward extreme).
 * Weights that cancel but for binary rounding count as cancelled.
 */
export function combine(items: readonly PointMass[]): Balance {
  let weight = 0;
  let size = 0;
  let total = 0;
  for (const item of items) {
    weight += item.weight;
    size += Math.abs(item.weight);
    total += moment(item);
  }
  return {
    weight,
    moment: total,
    arm: sameWithinRounding(weight, 0, size) ? undefined : armOf(weight, total),
  };
}

/**
 * Empty weight after a change of equipment: what is removed counts as negative weight at its own arm
 * (AC 43.13-1B 10-2h and 10-2i; worked: FAA mechanic test item, seats out and cabinet in).
 * Weights in `removed` and `added` are both written as positive numbers.
 */
export function applyChange(
  empty: PointMass,
  removed: readonly PointMass[],
  added: readonly PointMass[],
): Balance {
  const takenAway = removed.map((item) => ({ weight: -item.weight, arm: item.arm }));
  return combine([empty, ...takenAway, ...added]);
}

/** useful load = maximum weight - empty weight (AC 43.13-1B 10-2d). */
export function usefulLoad(maximumWeight: number, emptyWeight: number): number {
  return maximumWeight - emptyWeight;
}

/**
 * How far the centre of gravity moves when `moved` of the `total` weight goes `distance` aft (negative:
 * forward): moved x distance / total (derived from the sum of moments; worked: PHAK, 100 lb from 30 to 150).
 * Undefined when the total is zero.
 */
export function shiftOfCg(total: number, moved: number, distance: number): number | undefined {
  return armOf(total, moved * distance);
}

/**
 * The weight that must go `distance` aft (negative: forward) to move the centre of gravity by `shift`:
 * total x shift / distance, the inverse of {@link shiftOfCg} (worked: ATPL item, 2.8 to 2.9 m). Undefined
 * when moving weight that way cannot do it.
 */
export function weightToMove(total: number, shift: number, distance: number): number | undefined {
  return amount(total * shift, distance);
}

/**
 * The weight which, put at `ballastArm`, brings the centre of gravity exactly to `limit`:
 * loaded weight x (limit - arm) / (ballast arm - limit) (AC 43.13-1B 10-22; worked: FAA-H-8083-30
 * permanent ballast). `loaded` is the loaded aircraft for temporary ballast, the empty one for permanent
 * ballast. Undefined when no weight at that arm can do it.
 *
 * The ballast makes the aircraft heavier: where the limit slopes, judge the result in the envelope again.
 * Round the answer up, never to the nearest: see `roundUp`.
 */
export function ballastFor(loaded: PointMass, limit: number, ballastArm: number): number | undefined {
  // A centre of gravity on the limit needs nothing, on whichever side of it the last bit falls.
  if (sameWithinRounding(loaded.arm, limit, Math.abs(ballastArm))) return 0;
  return amount(loaded.weight * (limit - loaded.arm), ballastArm - limit);
}

/** 100 x (arm - leading edge) / length; undefined when the chord has no length. */
export function armToPercentMac(arm: number, chord: MeanChord): number | undefined {
  return chord.length > 0 ? (100 * (arm - chord.leadingEdge)) / chord.length : undefined;
}

/** The weight, zero or more, that makes `missing` moment at `distance`. */
function amount(missing: number, distance: number): number | undefined {
  if (missing === 0) return 0;
  const weight = armOf(distance, missing);
  return weight !== undefined && weight > 0 ? weight : undefined;
}
