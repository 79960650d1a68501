import { advisoryCircular } from "./electrical-documents";
import { interpolate, type Point } from "./interpolation";
import { covered, type Lookup, notCovered, range } from "./lookup";

/** Bundle loadings that the figure has a line for, in percent of the bundle's capacity. */
export const bundleLoadings = [20, 40, 60, 80, 100] as const;

/** [number of wires, factor at 20 %, 40 %, 60 %, 80 %, 100 %] */
export type BundleRow = readonly [
  wires: number,
  at20: number,
  at40: number,
  at60: number,
  at80: number,
  at100: number,
];

/** Two wires and more; a single wire is no bundle. */
export const bundleDerating: readonly BundleRow[] = [
  [2, 0.9675, 0.92, 0.91, 0.87, 0.825],
  [3, 0.935, 0.855, 0.815, 0.77, 0.725],
  [4, 0.9075, 0.805, 0.75, 0.705, 0.66],
  [5, 0.875, 0.76, 0.695, 0.65, 0.61],
  [6, 0.85, 0.725, 0.655, 0.605, 0.5725],
  [7, 0.82, 0.695, 0.625, 0.57, 0.54],
  [8, 0.795, 0.6675, 0.595, 0.5425, 0.5125],
  [9, 0.775, 0.645, 0.575, 0.52, 0.485],
  [10, 0.755, 0.6225, 0.55, 0.5, 0.465],
  [11, 0.735, 0.6, 0.53, 0.48, 0.445],
  [12, 0.715, 0.585, 0.515, 0.465, 0.43],
  [13, 0.6975, 0.5675, 0.495, 0.4475, 0.415],
  [14, 0.685, 0.5525, 0.48, 0.435, 0.3975],
  [15, 0.67, 0.54, 0.465, 0.42, 0.385],
  [16, 0.6575, 0.5275, 0.455, 0.41, 0.37],
  [17, 0.645, 0.515, 0.4425, 0.3975, 0.36],
  [18, 0.635, 0.505, 0.4325, 0.3875, 0.35],
  [19, 0.625, 0.495, 0.4225, 0.38, 0.3425],
];

/** Beyond 19 wires only the 20 % line has points: [number of wires, factor at 20 %]. */
export const largeBundleDerating: readonly Point[] = [
  [20, 0.615],
  [35, 0.52],
];

export const bundleDeratingSource = advisoryCircular(
  "Figure 11-5",
  "secondary",
  "points read from the same figure in MIL-W-5088L, fig. 4; reading error 0.02",
);
const largeBundleSource = advisoryCircular(
  "Figure 11-5",
  "derived",
  "straight line between 20 wires (0.615) and 35 wires (0.52) at 20 % loading; up to 0.011 above the curve of the smaller bundles, within the reading error of 0.02",
);

const lowLoadingNote = "Loading is below the figure's lowest line: the 20 % line is used, the safe way.";

/**
 * Figure 11-5: factor on the free-air current of each wire in a bundle.
 *
 * @param wires whole number of wires. A single wire has the factor 1 at any loading; 20 to 35 wires are covered
 *   at 20 % loading only; more are not covered.
 * @param loadingPercent actual total current in percent of the sum of the wires' allowed currents, 0 to 100.
 *   Below 20 % the 20 % line is used.
 */
export function bundleFactor(wires: number, loadingPercent: number): Lookup<number> {
  const given = `bundle of ${wires} wires`;
  const largest = largeBundleDerating.at(-1)![0];
  if (!Number.isInteger(wires) || wires < 1 || wires > largest) {
    return notCovered(
      { quantity: "wires in bundle", asked: wires, unit: "", covers: range(1, largest) },
      bundleDeratingSource,
    );
  }
  if (wires === 1) return covered(1, bundleDeratingSource);

  const row = bundleDerating.find((each) => each[0] === wires);
  const highestLoading = row === undefined ? 20 : 100;
  if (!(loadingPercent >= 0 && loadingPercent <= highestLoading)) {
    const covers = range(0, highestLoading);
    return notCovered(
      { quantity: "bundle loading", asked: loadingPercent, unit: "%", covers, given },
      bundleDeratingSource,
    );
  }
  const notes = loadingPercent < 20 ? [lowLoadingNote] : [];
  if (row === undefined) {
    const source = largeBundleDerating.some(([count]) => count === wires)
      ? bundleDeratingSource
      : largeBundleSource;
    return covered(interpolate(largeBundleDerating, wires)!, source, notes);
  }
  const line = bundleLoadings.map((loading, index): Point => [loading, row[index + 1]!]);
  return covered(interpolate(line, Math.max(loadingPercent, 20))!, bundleDeratingSource, notes);
}
