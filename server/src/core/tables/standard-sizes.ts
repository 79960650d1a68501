/** Sizes that things are made in, as records write them: what a value is chosen from. */
import { formatMeasure } from "../quantities";
import type { Source } from "../source";
import { copperWireSource } from "./copper-wire";
import { fastenerDiameters, fastenerDiametersSource } from "./fastener-strengths";
import { tubeDiameters, tubeDiametersSource } from "./flare-nut-torque";
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
