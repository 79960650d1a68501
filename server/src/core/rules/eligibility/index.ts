import type { Rule } from "../rule";
import { aircraftNotEligible } from "./aircraft-not-eligible";
import { equipmentRequired } from "./equipment-required";
import { modificationIncompatible } from "./modification-incompatible";
import { modificationRequired } from "./modification-required";
import { serialNotComparable } from "./serial-not-comparable";

/** Rules of which aircraft a kit may go into, by id. */
export const eligibilityRules: readonly Rule[] = [
  aircraftNotEligible,
  equipmentRequired,
  modificationIncompatible,
  modificationRequired,
  serialNotComparable,
];
