import type { Source } from "../source";
import { advisoryCircular } from "./electrical-documents";

/** What may be on board, or missing, at a weighing. */
export type WeighedThing =
  | "usable-fuel"
  | "unusable-fuel"
  | "drainable-oil"
  | "undrainable-oil"
  | "hydraulic-fluid"
  | "coolant"
  | "other-fluid"
  | "potable-water"
  | "injection-fluid"
  | "installed-equipment"
  | "fixed-ballast"
  | "foreign";

export type CertificationBasis =
  | "CAR 3"
  | "14 CFR 23 before Amdt 23-64"
  | "14 CFR 23 from Amdt 23-64"
  | "14 CFR 25"
  | "14 CFR 29";

export interface EmptyWeightDefinition {
  readonly includes: readonly WeighedThing[];
  readonly source: Source;
  readonly notes: readonly string[];
}

/** In every definition that was read. */
const always = [
  "unusable-fuel",
  "undrainable-oil",
  "hydraulic-fluid",
  "coolant",
  "installed-equipment",
  "fixed-ballast",
] as const satisfies readonly WeighedThing[];

/**
 * What the empty weight includes, by certification basis. Oil is what differs: the older rule leaves all but the
 * undrainable oil out, the newer one counts it full (AC 43.13-1B par. 10-15g says the same of the two).
 */
export const emptyWeightDefinitions: Readonly<Record<CertificationBasis, EmptyWeightDefinition>> = {
  "CAR 3": {
    includes: always,
    source: { document: "CAR 3", at: "3.73", standing: "secondary" },
    notes: ["Only undrainable oil belongs to the empty weight of this basis: full oil is a load."],
  },
  "14 CFR 23 before Amdt 23-64": {
    includes: [...always, "drainable-oil", "other-fluid"],
    source: { document: "14 CFR 23.29", edition: "before Amdt 23-64", standing: "published" },
    notes: [
      "Full oil counts from Amdt 23-21 (effective 1 March 1978) on; before it the type certificate data sheet says.",
    ],
  },
  "14 CFR 23 from Amdt 23-64": {
    includes: [...always, "drainable-oil", "other-fluid"],
    source: { document: "14 CFR 23.2100(c)", standing: "published" },
    notes: [
      "23.2100(c) asks for a condition that is well defined and easily repeatable; what it includes is taken as in 23.29 before.",
    ],
  },
  "14 CFR 25": {
    includes: [...always, "drainable-oil", "other-fluid"],
    source: { document: "14 CFR 25.29", standing: "published" },
    notes: [],
  },
  "14 CFR 29": {
    includes: [...always, "drainable-oil", "other-fluid"],
    source: { document: "14 CFR 29.29", standing: "memory" },
    notes: ["Taken from memory: hold it against the rotorcraft's type certificate data sheet."],
  },
};

/** The circular's own list agrees with the newer bases, and names residual fuel and oil. */
export const emptyWeightSource = advisoryCircular("chapter 10, par. 10-2b and 10-15g", "published");
