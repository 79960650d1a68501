import { sameWithinRounding } from "../rounding";
import type { Source } from "../source";
import { advisoryCircular } from "../tables/electrical-documents";
import { type Balance, combine, type PointMass } from "./balance";

export const loadingConditionSource: Source = advisoryCircular("chapter 10, par. 10-18", "published");

/** Something to load as far as the maximum weight lets it. */
export interface LoadingStep {
  readonly id: string;
  readonly arm: number;
  readonly most: number;
  /** Weight of one person or piece, where only whole ones can be carried. */
  readonly each?: number;
}

export interface LoadingStepRow {
  readonly id: string;
  readonly weight: number;
  readonly arm: number;
  readonly moment: number;
  /** What keeps more from being carried: its own limit or the maximum weight. */
  readonly stoppedBy: "own-limit" | "maximum-weight";
}

export interface LoadingCondition {
  readonly rows: readonly LoadingStepRow[];
  readonly total: Balance;
}

/**
 * One of the loading conditions of AC 43.13-1B 10-18 (full fuel, most passengers, most baggage): what comes
 * first is loaded first, and the rest takes what is left below the maximum weight (worked: figures 10-13 and
 * 10-14). `always` is on board in any case, and is not held to the maximum.
 */
export function loadingCondition(
  always: readonly PointMass[],
  steps: readonly LoadingStep[],
  maximumWeight: number,
): LoadingCondition {
  let left = maximumWeight - combine(always).weight;
  const rows = steps.map(({ id, arm, most, each }): LoadingStepRow => {
    const weight = wholeUnits(Math.max(0, Math.min(most, left)), each);
    left -= weight;
    const isFull = weight >= wholeUnits(most, each) || sameWithinRounding(weight, most);
    return { id, weight, arm, moment: weight * arm, stoppedBy: isFull ? "own-limit" : "maximum-weight" };
  });
  return { rows, total: combine([...always, ...rows]) };
}

function wholeUnits(weight: number, each: number | undefined): number {
  if (each === undefined || each <= 0) return weight;
  const units = weight / each;
  const nearest = Math.round(units);
  return (sameWithinRounding(units, nearest) ? nearest : Math.floor(units)) * each;
}
