import type { Rule } from "../rule";
import { climateNotCovered } from "./climate-not-covered";
import { comfortTooLate } from "./comfort-too-late";
import { conditioningNotChecked } from "./conditioning-not-checked";
import { coolingCapacityShort } from "./cooling-capacity-short";
import { heatingCapacityShort } from "./heating-capacity-short";
import { spaceNotConditioned } from "./space-not-conditioned";

/** Rules of the cooling and heating of spaces, by id. */
export const climateRules: readonly Rule[] = [
  climateNotCovered,
  comfortTooLate,
  conditioningNotChecked,
  coolingCapacityShort,
  heatingCapacityShort,
  spaceNotConditioned,
];
