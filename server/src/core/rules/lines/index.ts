import type { Rule } from "../rule";
import { drainHoldsWater } from "./drain-holds-water";
import { drainSlopeShallow } from "./drain-slope-shallow";
import { flareNutTorque } from "./flare-nut-torque";
import { flareNutTorqueWithoutTable } from "./flare-nut-torque-without-table";
import { fuelLineNotBonded } from "./fuel-line-not-bonded";
import { hoseSlack } from "./hose-slack";
import { lineAbovePressure } from "./line-above-pressure";
import { lineAboveTemperature } from "./line-above-temperature";
import { lineBendFlattened } from "./line-bend-flattened";
import { lineBendTooTight } from "./line-bend-too-tight";
import { lineByExhaust } from "./line-by-exhaust";
import { lineNotCovered } from "./line-not-covered";
import { lineRouteTooNear } from "./line-route-too-near";
import { lineSupportSpacing } from "./line-support-spacing";
import { lineTooNear } from "./line-too-near";
import { passThroughClearance } from "./pass-through-clearance";
import { passThroughFill } from "./pass-through-fill";
import { passThroughFillUnknown } from "./pass-through-fill-unknown";
import { tubeWithoutBend } from "./tube-without-bend";
import { wireBelowLine } from "./wire-below-line";

/** Rules of hoses, tubes, pass-throughs and drains, by id. */
export const lineRules: readonly Rule[] = [
  drainHoldsWater,
  drainSlopeShallow,
  flareNutTorque,
  flareNutTorqueWithoutTable,
  fuelLineNotBonded,
  hoseSlack,
  lineAbovePressure,
  lineAboveTemperature,
  lineBendFlattened,
  lineBendTooTight,
  lineByExhaust,
  lineNotCovered,
  lineRouteTooNear,
  lineSupportSpacing,
  lineTooNear,
  passThroughClearance,
  passThroughFill,
  passThroughFillUnknown,
  tubeWithoutBend,
  wireBelowLine,
];
