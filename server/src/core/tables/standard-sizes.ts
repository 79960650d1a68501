/** Sizes that things are made in, as records write them: what a value is chosen from. */
import { formatMeasure } from "../quantities";
import type { Source } from "../source";
import { copperWireSource } from "./copper-wire";
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
};
