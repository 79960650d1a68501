import { cross, distance, dot, minus, type Point, plus, times } from "./point";

/** A straight piece of a boundary. `from` and `to` may coincide. */
export interface Segment {
  readonly kind: "segment";
  readonly from: Point;
  readonly to: Point;
}

/** How near two things come, and the points where they do, in the order in which the things were given. */
export interface Nearness {
  readonly distance: number;
  readonly between: readonly [Point, Point];
}

export const directionOf = (segment: Segment): Point => minus(segment.to, segment.from);

/** The point at `share` of the way, 0 at `from` and 1 at `to`. */
export const pointAlong = (segment: Segment, share: number): Point =>
  plus(segment.from, times(directionOf(segment), share));

/** Where along the segment (0 to 1) it comes nearest to the point: the foot of the perpendicular, or an end. */
export function nearestShare(point: Point, segment: Segment): number {
  const along = directionOf(segment);
  const square = dot(along, along);
  if (square === 0) return 0;
  return Math.min(1, Math.max(0, dot(minus(point, segment.from), along) / square));
}

/** The end itself, not a sum that rounds to somewhere near it, so that shared corners stay shared. */
export function nearestOnSegment(point: Point, segment: Segment): Point {
  const share = nearestShare(point, segment);
  if (share === 0) return segment.from;
  if (share === 1) return segment.to;
  return pointAlong(segment, share);
}

/**
 * Where along `segment` (0 to 1) the other crosses it, or `undefined`. Parallel segments never cross; for
 * segments on one line rounding may say otherwise, with any place.
 */
export function crossingShare(segment: Segment, other: Segment): number | undefined {
  const along = directionOf(segment);
  const across = directionOf(other);
  const turn = cross(along, across);
  if (turn === 0) return undefined;
  const start = minus(other.from, segment.from);
  const share = cross(start, across) / turn;
  const otherShare = cross(start, along) / turn;
  return share >= 0 && share <= 1 && otherShare >= 0 && otherShare <= 1 ? share : undefined;
}

/**
 * The distance of two segments: zero where they cross, else reached at one of the four ends.
 *
 * Source: derived; the distance of two points on straight lines is a convex function of both positions, so a
 * least value that is not zero lies at an end of its range.
 */
export function nearestOfSegments(a: Segment, b: Segment): Nearness {
  const candidates = [toSegment(a.to, b), turned(toSegment(b.from, a)), turned(toSegment(b.to, a))];
  const crossing = crossingShare(a, b);
  // Segments on one line can seem to cross anywhere, by rounding: the crossing is measured, not believed.
  if (crossing !== undefined) candidates.push(toSegment(pointAlong(a, crossing), b));
  let best = toSegment(a.from, b);
  for (const next of candidates) {
    if (next.distance < best.distance) best = next;
  }
  return best;
}

/**
 * A distance that two segments keep at least: the gap between the boxes around them, along the wider axis;
 * negative when the boxes overlap. Cheap, to pass over the pairs that cannot matter.
 */
export function boxGap(a: Segment, b: Segment): number {
  return Math.max(
    Math.min(a.from.x, a.to.x) - Math.max(b.from.x, b.to.x),
    Math.min(b.from.x, b.to.x) - Math.max(a.from.x, a.to.x),
    Math.min(a.from.y, a.to.y) - Math.max(b.from.y, b.to.y),
    Math.min(b.from.y, b.to.y) - Math.max(a.from.y, a.to.y),
  );
}

function toSegment(point: Point, segment: Segment): Nearness {
  const nearest = nearestOnSegment(point, segment);
  return { distance: distance(point, nearest), between: [point, nearest] };
}

function turned({ distance, between: [a, b] }: Nearness): Nearness {
  return { distance, between: [b, a] };
}
