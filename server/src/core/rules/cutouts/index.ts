import type { Rule } from "../rule";
import { cutoutCornerRadius } from "./cutout-corner-radius";
import { cutoutEdgeDistance } from "./cutout-edge-distance";
import { cutoutFastenerDistance } from "./cutout-fastener-distance";
import { cutoutMinimumMissing } from "./cutout-minimum-missing";
import { cutoutOutsidePanel } from "./cutout-outside-panel";
import { cutoutOverlap } from "./cutout-overlap";
import { cutoutSpacing } from "./cutout-spacing";
import { figureFaulty } from "./figure-faulty";

/** Rules of openings in panels, by id. */
export const cutoutRules: readonly Rule[] = [
  cutoutCornerRadius,
  cutoutEdgeDistance,
  cutoutFastenerDistance,
  cutoutMinimumMissing,
  cutoutOutsidePanel,
  cutoutOverlap,
  cutoutSpacing,
  figureFaulty,
];
