import { cross, distance, minus, type Point } from "./point";
import { boxGap, type Nearness, nearestOfSegments, nearestOnSegment, type Segment } from "./segment";

/**
 * A closed chain of corners, counter-clockwise, and the area that it bounds. One corner is a point and two
 * are a straight line, there and back: both are loops without area.
 */
export type Loop = readonly Point[];

export function edgesOf(loop: Loop): readonly Segment[] {
  return loop.map((from, i) => ({ kind: "segment", from, to: loop[(i + 1) % loop.length]! }));
}

export const reversed = (loop: Loop): Loop => [...loop].reverse();

/** Length around the loop; a line counts there and back. */
export function lengthOf(loop: Loop): number {
  return edgesOf(loop).reduce((sum, { from, to }) => sum + distance(from, to), 0);
}

/**
 * Area, negative when the corners run clockwise.
 *
 * Source: derived, Green's theorem. Taken from the first corner, so that a loop far from the origin loses no
 * digits.
 */
export function signedArea(loop: Loop): number {
  const base = loop[0]!;
  return edgesOf(loop).reduce((sum, { from, to }) => sum + cross(minus(from, base), minus(to, base)), 0) / 2;
}

/** The smallest convex loop around the points, counter-clockwise. */
export function hullOf(points: readonly Point[]): Loop {
  const sorted = [...points].sort((a, b) => a.x - b.x || a.y - b.y);
  const chain = (order: readonly Point[]): Point[] => {
    const kept: Point[] = [];
    for (const point of order) {
      while (kept.length > 1 && cross(minus(kept.at(-1)!, kept.at(-2)!), minus(point, kept.at(-1)!)) <= 0) {
        kept.pop();
      }
      kept.push(point);
    }
    return kept.slice(0, -1);
  };
  return sorted.length < 3 ? sorted : [...chain(sorted), ...chain(sorted.toReversed())];
}

/** How far the points spread: the largest distance from the first; 0 for none. */
export const extentOf = (points: readonly Point[]): number =>
  points.reduce((most, point) => Math.max(most, distance(points[0]!, point)), 0);

/** Whether the point lies in the loop's area, by counting edges to its right; on the edge itself, either. */
export function encloses(loop: Loop, point: Point): boolean {
  let inside = false;
  let from = loop.at(-1)!;
  for (const to of loop) {
    if (from.y > point.y !== to.y > point.y) {
      const side = cross(minus(to, from), minus(point, from));
      if (side > 0 === to.y > from.y) inside = !inside;
    }
    from = to;
  }
  return inside;
}

/** The edge of the loop that comes nearest to the point. */
export function nearestEdge(edges: readonly Segment[], point: Point): { edge: Segment; distance: number } {
  let best = { edge: edges[0]!, distance: Infinity };
  for (const edge of edges) {
    const apart = distance(point, nearestOnSegment(point, edge));
    if (apart < best.distance) best = { edge, distance: apart };
  }
  return best;
}

/** How near the edges of two loops come, whatever their areas do. */
export function nearestOfEdges(a: Loop, b: Loop): Nearness {
  const others = edgesOf(b);
  let best: Nearness = { distance: Infinity, between: [a[0]!, b[0]!] };
  for (const edge of edgesOf(a)) {
    for (const other of others) {
      if (boxGap(edge, other) >= best.distance) continue;
      const next = nearestOfSegments(edge, other);
      if (next.distance < best.distance) best = next;
    }
  }
  return best;
}

/**
 * The indices of the points that remain when each one within `tolerance` of the point kept before it (or,
 * at the end of the list, of the first point) is dropped.
 */
export function distinctPoints(points: readonly Point[], tolerance: number): readonly number[] {
  const kept: number[] = [];
  points.forEach((point, index) => {
    const before = kept.at(-1);
    if (before === undefined || distance(points[before]!, point) > tolerance) kept.push(index);
  });
  while (kept.length > 1 && distance(points[kept.at(-1)!]!, points[kept[0]!]!) <= tolerance) kept.pop();
  return kept;
}
