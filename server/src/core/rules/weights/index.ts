import type { Rule } from "../rule";
import { ballastAboveLimit } from "./ballast-above-limit";
import { ballastPlaceUnknown } from "./ballast-place-unknown";
import { cgAftOfLimit } from "./cg-aft-of-limit";
import { cgForwardOfLimit } from "./cg-forward-of-limit";
import { cgNotChecked } from "./cg-not-checked";
import { cgOutAsFuelBurns } from "./cg-out-as-fuel-burns";
import { componentNotPlaced } from "./component-not-placed";
import { componentPlacedTwice } from "./component-placed-twice";
import { cumulativeChangeLarge } from "./cumulative-change-large";
import { emptyCgNotComputed } from "./empty-cg-not-computed";
import { envelopeLimitsCrossed } from "./envelope-limits-crossed";
import { equipmentRemovedTwice } from "./equipment-removed-twice";
import { everyLoadingNotChecked } from "./every-loading-not-checked";
import { floorLoadAboveLimit } from "./floor-load-above-limit";
import { harnessNotCounted } from "./harness-not-counted";
import { landingWeightNotChecked } from "./landing-weight-not-checked";
import { lateralCgBeyondLimit } from "./lateral-cg-beyond-limit";
import { lateralCgNotComputed } from "./lateral-cg-not-computed";
import { limitWithinTolerance } from "./limit-within-tolerance";
import { loadWithoutWeight } from "./load-without-weight";
import { loadingMadeIllegal } from "./loading-made-illegal";
import { loadingNotCovered } from "./loading-not-covered";
import { loadingScheduleNeeded } from "./loading-schedule-needed";
import { phaseWeightAboveLimit } from "./phase-weight-above-limit";
import { placardAboveLimit } from "./placard-above-limit";
import { requiredEquipmentRemoved } from "./required-equipment-removed";
import { stationAboveLimit } from "./station-above-limit";
import { tareAboveReading } from "./tare-above-reading";
import { usefulLoadLoss } from "./useful-load-loss";
import { weighingDisagrees } from "./weighing-disagrees";
import { weightAboveLimit } from "./weight-above-limit";
import { weightChangeNegligible } from "./weight-change-negligible";

/** Rules of weight and balance, by id. */
export const weightRules: readonly Rule[] = [
  ballastAboveLimit,
  ballastPlaceUnknown,
  cgAftOfLimit,
  cgForwardOfLimit,
  cgNotChecked,
  cgOutAsFuelBurns,
  componentNotPlaced,
  componentPlacedTwice,
  cumulativeChangeLarge,
  emptyCgNotComputed,
  envelopeLimitsCrossed,
  equipmentRemovedTwice,
  everyLoadingNotChecked,
  floorLoadAboveLimit,
  harnessNotCounted,
  landingWeightNotChecked,
  lateralCgBeyondLimit,
  lateralCgNotComputed,
  limitWithinTolerance,
  loadWithoutWeight,
  loadingMadeIllegal,
  loadingNotCovered,
  loadingScheduleNeeded,
  phaseWeightAboveLimit,
  placardAboveLimit,
  requiredEquipmentRemoved,
  stationAboveLimit,
  tareAboveReading,
  usefulLoadLoss,
  weighingDisagrees,
  weightAboveLimit,
  weightChangeNegligible,
];
