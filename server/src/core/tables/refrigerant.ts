import type { Source } from "../source";
import { interpolate, type Point } from "./interpolation";
import { covered, type Lookup, notCovered, range } from "./lookup";

/** R-134a: [temperature in degF, saturation pressure in psi above the air at sea level] */
export const saturationPoints: readonly Point[] = [
  [-10, 1.9],
  [0, 6.5],
  [10, 11.9],
  [20, 18.4],
  [30, 26.1],
  [50, 45.4],
  [60, 57.4],
  [70, 71.1],
  [80, 86.7],
  [90, 104.3],
  [100, 124.2],
  [110, 146.4],
  [120, 171.2],
  [140, 229.2],
  [150, 262.9],
];

export const saturationSource: Source = {
  document: "R-134a saturation table",
  at: "computed from NIST data",
  standing: "published",
  note: "other prints are rounded otherwise: within 1 psi",
};

/** What goes with every work on such a line; from memory. */
export const refrigerantCautions: readonly string[] = [
  "Refrigerant: it takes recovery equipment and a licensed process to open the system; never vent it (40 CFR 82 subpart F, from memory).",
  "Refrigerant is heavier than air and displaces it; on a hot exhaust it breaks down into poisonous gas (from memory).",
];

/**
 * Pressure of R-134a that stands at a temperature, psi. Between two points of the table a straight line, which
 * lies above the curve: the safe way for a line's rating.
 */
export function saturationPressure(degreesFahrenheit: number): Lookup<number> {
  const psi = interpolate(saturationPoints, degreesFahrenheit);
  if (psi !== undefined) return covered(psi, saturationSource, refrigerantCautions);
  const covers = range(saturationPoints[0]![0], saturationPoints.at(-1)![0]);
  return notCovered(
    { quantity: "temperature", asked: degreesFahrenheit, unit: "degF", covers },
    saturationSource,
  );
}
