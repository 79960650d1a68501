import { dot, lengthOf, minus, plus, times, type Vector3 } from "./vector";

/** The straight way between two points; they may be the same one. */
interface Straight {
  readonly from: Vector3;
  readonly to: Vector3;
}

/**
 * Least distance between the points of two straight lines with ends.
 *
 * Source: derived. Its square is a convex parabola of the two shares of the way: it is least where both slopes
 * are none, or else at an end of one of the lines. Where the lines are parallel it is least at an end too.
 */
export function lineDistance(a: Straight, b: Straight): number {
  const atEnds = Math.min(fromPoint(a.from, b), fromPoint(a.to, b), fromPoint(b.from, a), fromPoint(b.to, a));
  const [u, v, w] = [minus(a.to, a.from), minus(b.to, b.from), minus(a.from, b.from)];
  const [uu, uv, vv, uw, vw] = [dot(u, u), dot(u, v), dot(v, v), dot(u, w), dot(v, w)];
  const slant = uu * vv - uv * uv;
  const [onA, onB] = [(uv * vw - vv * uw) / slant, (uu * vw - uv * uw) / slant];
  // Between parallel lines neither is a number, or they are noise; what they lead to is never below the truth.
  if (!(onA > 0 && onA < 1 && onB > 0 && onB < 1)) return atEnds;
  return Math.min(atEnds, lengthOf(plus(w, minus(times(u, onA), times(v, onB)))));
}

function fromPoint(point: Vector3, { from, to }: Straight): number {
  const [way, toPoint] = [minus(to, from), minus(point, from)];
  const square = dot(way, way);
  const share = square > 0 ? Math.min(1, Math.max(0, dot(toPoint, way) / square)) : 0;
  return lengthOf(minus(toPoint, times(way, share)));
}
