import type { Source } from "../source";
import { wireInstallationLimits } from "./wire-installation-limits";

/** Fluids that burn, or feed a fire. */
export const flammableFluids: ReadonlySet<string> = new Set(["fuel", "oil", "hydraulic", "oxygen"]);

export const fuelLineSource: Source = {
  document: "FAA AC 43.13-1B",
  edition: "9/8/98, Change 1 of 9/27/01",
  at: "ch. 8, fuel lines",
  standing: "published",
};

/** Wires run above lines and are never held up by them. */
export const wireAboveLineSource: Source = {
  document: "TM 1-1500-204-23-4",
  at: "wires near fluid lines",
  standing: "published",
};

/** No straight tube between two rigid ends. */
export const straightTubeSource: Source = {
  document: "MIL-H-8891A",
  at: "tube routing",
  standing: "published",
};

/** Hot exhaust parts: leakage must not reach flammable parts; no distance is given. */
export const exhaustSource: Source = {
  document: "14 CFR 23.1121",
  edition: "before Amdt 23-64",
  at: "(b) and (c)",
  standing: "published",
};

/** That lines must not chafe is said of fuel lines; of others it is the habit of the trade. */
export const chafingPractice: Source = {
  document: "lines kept clear of what they could chafe on",
  standing: "common-practice",
};

/**
 * Share of the hole that what goes through may fill: the advice that a conduit be about 25 % larger inside than
 * its bundle, 1/1.25 squared.
 */
export const passThroughFill = {
  value: 0.64,
  source: {
    document: "FAA-H-8083-31",
    at: "conduit, size",
    standing: "memory",
    note: "no published figure was found for pass-throughs",
  },
} as const satisfies { value: number; source: Source };

/** Without grommet or clamp, in. */
export const passThroughClearance = wireInstallationLimits.penetrationClearance;

/** Fall of a drain for each length of its run: 1/4 in for each foot. */
export const drainSlope = {
  value: 0.25 / 12,
  source: {
    document: "1/4 in for each ft, a habit of plumbing in buildings",
    standing: "common-practice",
    note: "no published least slope was found for aircraft drains",
  },
} as const satisfies { value: number; source: Source };

/** Water runs down. */
export const drainPhysics: Source = {
  document: "gravity: what does not fall all the way holds water",
  standing: "derived",
};
