import type { MethodCard } from "./wires";

export const conductorWeightMethod: MethodCard = {
  formula: "w = 0.0030269 × CM",
  source: {
    document: "Density of copper, 8.89 g/cm³",
    standing: "derived",
    note: "bare copper, without insulation; within 1 % of a published table of 19-strand conductors",
  },
};

const poundsPer1000FeetPerCircularMil = 0.0030269;

/**
 * Weight in lb per 1000 ft of a bare copper conductor, without its insulation.
 * Source: derived. Example: "5 conductor weight" in tests/published-values/wire-installation.test.ts.
 */
export function copperWeightPer1000Feet(circularMils: number): number {
  return poundsPer1000FeetPerCircularMil * circularMils;
}
