import type { Rule } from "../rule";
import { bondFastening } from "./bond-fastening";
import { bondOnto } from "./bond-onto";
import { bondResistance } from "./bond-resistance";
import { bondsNotRecorded } from "./bonds-not-recorded";
import { breakerNotPullable } from "./breaker-not-pullable";
import { breakerResetsItself } from "./breaker-resets-itself";
import { contactBelowLoad } from "./contact-below-load";
import { essentialCircuitShared } from "./essential-circuit-shared";
import { faultCurrentNotCompared } from "./fault-current-not-compared";
import { faultCurrentTooSmall } from "./fault-current-too-small";
import { fuseSparesTooFew } from "./fuse-spares-too-few";
import { inrushTimeMissing } from "./inrush-time-missing";
import { openingPointsMissing } from "./opening-points-missing";
import { openingTimeNotCovered } from "./opening-time-not-covered";
import { protectionAboveSources } from "./protection-above-sources";
import { protectionOpensAtInrush } from "./protection-opens-at-inrush";
import { protectionOpensAtPeak } from "./protection-opens-at-peak";
import { protectionOrder } from "./protection-order";
import { resetOutOfReach } from "./reset-out-of-reach";

/** Rules of breakers, fuses, contacts and bonds, by id. */
export const protectionRules: readonly Rule[] = [
  bondFastening,
  bondOnto,
  bondResistance,
  bondsNotRecorded,
  breakerNotPullable,
  breakerResetsItself,
  contactBelowLoad,
  essentialCircuitShared,
  faultCurrentNotCompared,
  faultCurrentTooSmall,
  fuseSparesTooFew,
  inrushTimeMissing,
  openingPointsMissing,
  openingTimeNotCovered,
  protectionAboveSources,
  protectionOpensAtInrush,
  protectionOpensAtPeak,
  protectionOrder,
  resetOutOfReach,
];
