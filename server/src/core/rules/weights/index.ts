import type { Rule } from "../rule";
import { cgAftOfLimit } from "./cg-aft-of-limit";
import { cgForwardOfLimit } from "./cg-forward-of-limit";
import { cgNotChecked } from "./cg-not-checked";
import { componentNotPlaced } from "./component-not-placed";
import { componentPlacedTwice } from "./component-placed-twice";
import { equipmentRemovedTwice } from "./equipment-removed-twice";
import { loadWithoutWeight } from "./load-without-weight";
import { loadingNotCovered } from "./loading-not-covered";
import { stationAboveLimit } from "./station-above-limit";
import { weightAboveLimit } from "./weight-above-limit";
import { weightChangeNegligible } from "./weight-change-negligible";

/** Rules of weight and balance, by id. */
export const weightRules: readonly Rule[] = [
  cgAftOfLimit,
  cgForwardOfLimit,
  cgNotChecked,
  componentNotPlaced,
  componentPlacedTwice,
  equipmentRemovedTwice,
  loadWithoutWeight,
  loadingNotCovered,
  stationAboveLimit,
  weightAboveLimit,
  weightChangeNegligible,
];
