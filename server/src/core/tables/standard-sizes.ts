/** Sizes that things are made in, as records write them: what a value is chosen from. */
import { formatMeasure } from "../quantities";
import type { Source } from "../source";
import { copperWireSource } from "./copper-wire";
import { fastenerDiameters, fastenerDiametersSource } from "./fastener-strengths";
import { tubeDiameters, tubeDiametersSource } from "./flare-nut-torque";
import { rivetDiameters, rivetTables } from "./rivets-per-inch";
import { standardGauges } from "./standard-ratings";

export interface StandardSizes {
  /** From the smallest. */
  readonly texts: readonly string[];
  readonly source: Source;
}

/** By the name that a schema gives as `x-sizes`. */
export const standardSizes: Readonly<Record<string, StandardSizes>> = {
  "wire-gauge": {
    texts: standardGauges.map((gauge) => formatMeasure(gauge, "AWG")),
    source: copperWireSource,
  },
  "tube-diameter": { texts: tubeDiameters.map(fraction), source: tubeDiametersSource },
  "fastener-diameter": {
    texts: rising([...fastenerDiameters("ad-rivet"), ...fastenerDiameters("an-bolt")]).map(fraction),
    source: fastenerDiametersSource,
  },
  // Those that the tables of rivets have a row or a column for: nothing else can be counted by them.
  "sheet-thickness": {
    texts: rivetTables["4-9"].rows.map(([thickness]) => `${thickness.toFixed(3)} in`),
    source: rivetTables["4-9"].source,
  },
  "doubler-fastener-diameter": { texts: rivetDiameters.map(fraction), source: rivetTables["4-9"].source },
};

/** A size in inches as the trade writes it: "5/32 in". Exact for whole 64ths, which every size here is. */
function fraction(inches: number): string {
  let [over, under] = [inches * 64, 64];
  while (over % 2 === 0 && under > 1) [over, under] = [over / 2, under / 2];
  return under === 1 ? `${over} in` : `${over}/${under} in`;
}

function rising(sizes: readonly number[]): number[] {
  return [...new Set(sizes)].sort((a, b) => a - b);
}
