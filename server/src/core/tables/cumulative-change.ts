import type { Source } from "../source";

/**
 * From which cumulative change on the empty weight and CG are to be established anew, by weighing or calculation.
 * Written for operators under these rules; a lower threshold of the aircraft's own data wins.
 */
export const cumulativeChange = {
  /** Of the maximum landing weight, either way. */
  weightPercent: 0.5,
  /** Of the mean aerodynamic chord, either way; aeroplanes. */
  cgPercent: 0.5,
  source: {
    document: "AMC1 CAT.POL.MAB.100(b), AMC1 SPO.POL.105(b), GM1 NCO.POL.105",
    edition: "edition not recorded",
    standing: "published",
  },
} as const satisfies { weightPercent: number; cgPercent: number; source: Source };
