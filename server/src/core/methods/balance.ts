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

/** useful load = maximum weight - empty weight (AC 43.13-1B 10-2d). */
export function usefulLoad(maximumWeight: number, emptyWeight: number): number {
  return maximumWeight - emptyWeight;
}

/** 100 x (arm - leading edge) / length; undefined when the chord has no length. */
export function armToPercentMac(arm: number, chord: MeanChord): number | undefined {
  return chord.length > 0 ? (100 * (arm - chord.leadingEdge)) / chord.length : undefined;
}
