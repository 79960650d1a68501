import type { Rule } from "../rule";
import { airDensityNotCovered } from "./air-density-not-covered";
import { airPathNotSolved } from "./air-path-not-solved";
import { coolingAirShort } from "./cooling-air-short";
import { coolingDataMissing } from "./cooling-data-missing";
import { coolingFanOff } from "./cooling-fan-off";
import { coolingNotChecked } from "./cooling-not-checked";
import { ductNotSolved } from "./duct-not-solved";
import { ductOutletShort } from "./duct-outlet-short";
import { heatToAirTooSmall } from "./heat-to-air-too-small";
import { lossFromMemory } from "./loss-from-memory";
import { outletAirRecirculates } from "./outlet-air-recirculates";
import { outletDirectionMissing } from "./outlet-direction-missing";
import { screenAirTooSlow } from "./screen-air-too-slow";

/** Rules of air through openings and ducts, by id. */
export const airRules: readonly Rule[] = [
  airDensityNotCovered,
  airPathNotSolved,
  coolingAirShort,
  coolingDataMissing,
  coolingFanOff,
  coolingNotChecked,
  ductNotSolved,
  ductOutletShort,
  heatToAirTooSmall,
  lossFromMemory,
  outletAirRecirculates,
  outletDirectionMissing,
  screenAirTooSlow,
];
