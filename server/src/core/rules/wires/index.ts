import type { Rule } from "../rule";
import { aluminiumRunTooShort } from "./aluminium-run-too-short";
import { aluminiumTooThin } from "./aluminium-too-thin";
import { aluminiumZone } from "./aluminium-zone";
import { bundleCountTooSmall } from "./bundle-count-too-small";
import { bundleLoadingUnderstated } from "./bundle-loading-understated";
import { bundleTooLarge } from "./bundle-too-large";
import { bundlesNotRecorded } from "./bundles-not-recorded";
import { circuitLoop } from "./circuit-loop";
import { loadModeUnknown } from "./load-mode-unknown";
import { loadNeverRuns } from "./load-never-runs";
import { loadNotConnected } from "./load-not-connected";
import { passDistanceOverstated } from "./pass-distance-overstated";
import { protectionAboveChart } from "./protection-above-chart";
import { protectionAboveWire } from "./protection-above-wire";
import { protectionBelowLoad } from "./protection-below-load";
import { returnNotRecorded } from "./return-not-recorded";
import { returnShared } from "./return-shared";
import { returnThroughComposite } from "./return-through-composite";
import { routeTooNear } from "./route-too-near";
import { terminalsPerStud } from "./terminals-per-stud";
import { wireBendTooTight } from "./wire-bend-too-tight";
import { wireGaugeTooThin } from "./wire-gauge-too-thin";
import { wireIdentificationMismatch } from "./wire-identification-mismatch";
import { wireMarkingInterval } from "./wire-marking-interval";
import { wireNotCovered } from "./wire-not-covered";
import { wireOverAmpacity } from "./wire-over-ampacity";
import { wireRoutingNotRecorded } from "./wire-routing-not-recorded";
import { wireSegmentLetter } from "./wire-segment-letter";
import { wireSplicesTooMany } from "./wire-splices-too-many";
import { wireStrandsDamaged } from "./wire-strands-damaged";
import { wireStrandsTooFew } from "./wire-strands-too-few";
import { wireSupportSpacing } from "./wire-support-spacing";
import { wireTooNear } from "./wire-too-near";
import { wireVoltageDrop } from "./wire-voltage-drop";
import { wireWeightUnknown } from "./wire-weight-unknown";
import { wireWithoutProtection } from "./wire-without-protection";

/** Rules of wires, bundles and their protection, by id. */
export const wireRules: readonly Rule[] = [
  aluminiumRunTooShort,
  aluminiumTooThin,
  aluminiumZone,
  bundleCountTooSmall,
  bundleLoadingUnderstated,
  bundleTooLarge,
  bundlesNotRecorded,
  circuitLoop,
  loadModeUnknown,
  loadNeverRuns,
  loadNotConnected,
  passDistanceOverstated,
  protectionAboveChart,
  protectionAboveWire,
  protectionBelowLoad,
  returnNotRecorded,
  returnShared,
  returnThroughComposite,
  routeTooNear,
  terminalsPerStud,
  wireBendTooTight,
  wireGaugeTooThin,
  wireIdentificationMismatch,
  wireMarkingInterval,
  wireNotCovered,
  wireOverAmpacity,
  wireRoutingNotRecorded,
  wireSegmentLetter,
  wireSplicesTooMany,
  wireStrandsDamaged,
  wireStrandsTooFew,
  wireSupportSpacing,
  wireTooNear,
  wireVoltageDrop,
  wireWeightUnknown,
  wireWithoutProtection,
];
