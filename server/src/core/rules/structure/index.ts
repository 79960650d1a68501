import type { Rule } from "../rule";
import { bracketBendTooTight } from "./bracket-bend-too-tight";
import { bracketFlatLength } from "./bracket-flat-length";
import { bracketLeastRadiusMissing } from "./bracket-least-radius-missing";
import { bracketLegTooShort } from "./bracket-leg-too-short";
import { bracketNotFoldable } from "./bracket-not-foldable";
import { cutoutCoreOpen } from "./cutout-core-open";
import { cutoutInPressureShell } from "./cutout-in-pressure-shell";
import { cutoutNotReinforced } from "./cutout-not-reinforced";
import { cutoutStiffenerCut } from "./cutout-stiffener-cut";
import { cutoutStiffenerDistance } from "./cutout-stiffener-distance";
import { cutoutStressAboveAllowable } from "./cutout-stress-above-allowable";
import { cutoutStressNotCovered } from "./cutout-stress-not-covered";
import { doublerCountNotCovered } from "./doubler-count-not-covered";
import { doublerCoversOpening } from "./doubler-covers-opening";
import { doublerDataMissing } from "./doubler-data-missing";
import { doublerEdgeDistance } from "./doubler-edge-distance";
import { doublerFastenerDataMissing } from "./doubler-fastener-data-missing";
import { doublerFastenerPlacesDiffer } from "./doubler-fastener-places-differ";
import { doublerFastenerTooNear } from "./doubler-fastener-too-near";
import { doublerFastenersTooFew } from "./doubler-fasteners-too-few";
import { doublerFastenersTooMany } from "./doubler-fasteners-too-many";
import { doublerMaterialDiffers } from "./doubler-material-differs";
import { doublerMissesOpening } from "./doubler-misses-opening";
import { doublerOutsidePanel } from "./doubler-outside-panel";
import { doublerOverStiffener } from "./doubler-over-stiffener";
import { doublerOverlapTooShort } from "./doubler-overlap-too-short";
import { doublerTooNarrow } from "./doubler-too-narrow";
import { doublerTooThin } from "./doubler-too-thin";
import { doublerTotalTooFew } from "./doubler-total-too-few";
import { fastenerPitchTooClose } from "./fastener-pitch-too-close";
import { fastenerPitchTooWide } from "./fastener-pitch-too-wide";
import { fastenerRowsTooClose } from "./fastener-rows-too-close";
import { rivetTooLarge } from "./rivet-too-large";
import { rivetTooSmall } from "./rivet-too-small";

/** Rules of what openings do to the structure around them, and of bent parts, by id. */
export const structureRules: readonly Rule[] = [
  bracketBendTooTight,
  bracketFlatLength,
  bracketLeastRadiusMissing,
  bracketLegTooShort,
  bracketNotFoldable,
  cutoutCoreOpen,
  cutoutInPressureShell,
  cutoutNotReinforced,
  cutoutStiffenerCut,
  cutoutStiffenerDistance,
  cutoutStressAboveAllowable,
  cutoutStressNotCovered,
  doublerCountNotCovered,
  doublerCoversOpening,
  doublerDataMissing,
  doublerEdgeDistance,
  doublerFastenerDataMissing,
  doublerFastenerPlacesDiffer,
  doublerFastenerTooNear,
  doublerFastenersTooFew,
  doublerFastenersTooMany,
  doublerMaterialDiffers,
  doublerMissesOpening,
  doublerOutsidePanel,
  doublerOverStiffener,
  doublerOverlapTooShort,
  doublerTooNarrow,
  doublerTooThin,
  doublerTotalTooFew,
  fastenerPitchTooClose,
  fastenerPitchTooWide,
  fastenerRowsTooClose,
  rivetTooLarge,
  rivetTooSmall,
];
