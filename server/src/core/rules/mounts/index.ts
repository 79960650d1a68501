import type { Rule } from "../rule";
import { componentWithoutMount } from "./component-without-mount";
import { fastenerOverInteraction } from "./fastener-over-interaction";
import { fastenerOverShear } from "./fastener-over-shear";
import { fastenerOverTension } from "./fastener-over-tension";
import { floorOverloaded } from "./floor-overloaded";
import { loadFactorUnknown } from "./load-factor-unknown";
import { mountDataMissing } from "./mount-data-missing";
import { mountEdgeDistance } from "./mount-edge-distance";
import { mountUnstable } from "./mount-unstable";
import { sheetOverBearing } from "./sheet-over-bearing";
import { sheetTooThinForBearing } from "./sheet-too-thin-for-bearing";
import { shelfOverloaded } from "./shelf-overloaded";

/** Rules of mounts and of what they stand on, by id. */
export const mountRules: readonly Rule[] = [
  componentWithoutMount,
  fastenerOverInteraction,
  fastenerOverShear,
  fastenerOverTension,
  floorOverloaded,
  loadFactorUnknown,
  mountDataMissing,
  mountEdgeDistance,
  mountUnstable,
  sheetOverBearing,
  sheetTooThinForBearing,
  shelfOverloaded,
];
