/** Where a fan's curve meets the curve of what it blows through. Any consistent units. */

export interface FanPoint {
  readonly flow: number;
  readonly pressure: number;
}

export type Crossing =
  | { readonly kind: "found"; readonly flow: number; readonly pressure: number }
  /** The curves meet before the first point, or beyond the last: nothing is extrapolated. */
  | { readonly kind: "before-curve" | "beyond-curve" }
  /** Flow must rise from point to point, and pressure must not: there may be several crossings otherwise. */
  | { readonly kind: "not-falling"; readonly index: number };

/**
 * The exact crossing of a curve of straight lines between points with p = resistance * Q2.
 *
 * Source: derived; on each line the crossing is the positive root of a quadratic.
 *
 * @param points by rising flow, two at least
 * @param resistance not negative
 */
export function crossing(points: readonly FanPoint[], resistance: number): Crossing {
  for (let index = 1; index < points.length; index++) {
    const [before, here] = [points[index - 1]!, points[index]!];
    if (!(here.flow > before.flow && here.pressure <= before.pressure)) return { kind: "not-falling", index };
  }
  const excess = ({ flow, pressure }: FanPoint) => pressure - resistance * flow ** 2;
  const last = points.at(-1);
  if (!last || excess(points[0]!) < 0) return { kind: "before-curve" };
  if (excess(last) > 0) return { kind: "beyond-curve" };
  const end = Math.max(
    1,
    points.findIndex((point, index) => index > 0 && excess(point) <= 0),
  );
  const [a, b] = [points[end - 1]!, points[end] ?? points[end - 1]!];
  const slope = b === a ? 0 : (b.pressure - a.pressure) / (b.flow - a.flow);
  const start = a.pressure - slope * a.flow;
  // The root that does not lose digits when the resistance is small; the slope is never positive.
  const root = Math.sqrt(slope ** 2 + 4 * resistance * start);
  const flow = start === 0 ? 0 : (2 * start) / (root - slope);
  return { kind: "found", flow, pressure: resistance * flow ** 2 };
}
