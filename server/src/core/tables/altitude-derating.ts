import { advisoryCircular } from "./electrical-documents";
import { interpolate, type Point } from "./interpolation";
import { covered, type Lookup, notCovered, range } from "./lookup";

/** [altitude in ft, factor] */
export const altitudeDerating: readonly Point[] = [
  [0, 1],
  [5_000, 0.98],
  [10_000, 0.96],
  [15_000, 0.94],
  [20_000, 0.92],
  [25_000, 0.9],
  [30_000, 0.88],
  [35_000, 0.86],
  [40_000, 0.84],
  [45_000, 0.82],
  [50_000, 0.8],
  [55_000, 0.785],
  [60_000, 0.77],
  [70_000, 0.75],
  [80_000, 0.73],
  [90_000, 0.71],
  [100_000, 0.7],
];

export const altitudeDeratingSource = advisoryCircular(
  "Figure 11-6",
  "secondary",
  "points read from the same figure in MIL-W-5088L, fig. 5; reading error 0.015",
);

/** Figure 11-6: factor on the free-air current at an altitude of 0 to 100,000 ft. */
export function altitudeFactor(altitudeFeet: number): Lookup<number> {
  const factor = interpolate(altitudeDerating, altitudeFeet);
  if (factor === undefined) {
    return notCovered(
      { quantity: "altitude", asked: altitudeFeet, unit: "ft", covers: range(0, 100_000) },
      altitudeDeratingSource,
    );
  }
  const nearTextPoint = altitudeFeet > 15_000 && altitudeFeet < 25_000;
  return covered(
    factor,
    altitudeDeratingSource,
    nearTextPoint ? ["The AC's text reads 0.91 at 20,000 ft where these points read 0.92."] : [],
  );
}
