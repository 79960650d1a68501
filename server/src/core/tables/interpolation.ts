/** One point of a published curve: [abscissa, ordinate]. */
export type Point = readonly [x: number, y: number];

/**
 * Straight line between neighbouring points of a curve; `undefined` outside the first and last point, and
 * for a number that is not finite.
 *
 * @param points in strictly rising order of x
 */
export function interpolate(points: readonly Point[], x: number): number | undefined {
  const upperIndex = points.findIndex(([pointX]) => x <= pointX);
  const upper = points[upperIndex];
  if (upper === undefined) return undefined;
  // An exact point is returned as printed, free of rounding in the arithmetic below.
  if (x === upper[0]) return upper[1];
  const lower = points[upperIndex - 1];
  if (lower === undefined) return undefined;
  return lower[1] + ((upper[1] - lower[1]) * (x - lower[0])) / (upper[0] - lower[0]);
}
