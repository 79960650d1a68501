import type { Source } from "../source";
import { copperWire } from "./copper-wire";
import { covered, type Lookup, list, notCovered } from "./lookup";
import { wireChart, wireChartSource } from "./wire-chart";

/** Gauges of Table 11-9 from the thinnest to the thickest. */
export const standardGauges: readonly number[] = copperWire.map((row) => row.gauge);

/** Breaker ratings in A that occur in Table 11-3, rising. */
export const breakerRatings: readonly number[] = rising(wireChart.map((row) => row.breakerAmps));

/** Fuse ratings in A that occur in Table 11-3, rising. */
export const fuseRatings: readonly number[] = rising(wireChart.map((row) => row.fuseAmps));

export const standardRatingsSource: Source = {
  ...wireChartSource,
  note: "ratings that occur in the table; makers offer others",
};

/** How a gauge is written in the trade: 24 … 1, then 0, 00, 000 and 0000. */
export function gaugeName(gauge: number): string {
  return gauge > 0 ? String(gauge) : "0".repeat(1 - gauge);
}

/** Smallest rating, in A, that is at least `amps`. */
export function ratingAtLeast(ratings: readonly number[], amps: number): Lookup<number> {
  return found(
    ratings,
    amps,
    ratings.find((rating) => rating >= amps),
  );
}

/** Largest rating, in A, that is at most `amps`. */
export function ratingAtMost(ratings: readonly number[], amps: number): Lookup<number> {
  return found(
    ratings,
    amps,
    ratings.findLast((rating) => rating <= amps),
  );
}

function found(ratings: readonly number[], amps: number, rating: number | undefined): Lookup<number> {
  if (rating !== undefined) return covered(rating, standardRatingsSource);
  return notCovered(
    { quantity: "rating", asked: amps, unit: "A", covers: list(ratings) },
    standardRatingsSource,
  );
}

function rising(ratings: readonly (number | null)[]): number[] {
  return [...new Set(ratings)].filter((rating) => rating !== null).sort((a, b) => a - b);
}
