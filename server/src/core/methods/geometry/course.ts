import { edgesOf, encloses, type Loop, nearestEdge } from "./loop";
import { distance, dot } from "./point";
import {
  boxGap,
  crossingShare,
  directionOf,
  nearestOnSegment,
  nearestShare,
  pointAlong,
  type Segment,
} from "./segment";

/** Where the edges of one loop run, seen from another loop's area; each is true if any stretch does. */
export interface Course {
  readonly inside: boolean;
  readonly outside: boolean;
  /** Along an edge of the other and the same way round, so that both areas lie on the same side of it. */
  readonly together: boolean;
}

/**
 * How `loop` runs past `other`. Each edge is cut wherever it meets the other's edges, so that every stretch
 * between cuts is on one side throughout, and its middle tells which. What stays within `tolerance` of the
 * other's edges is on neither side.
 */
export function courseOf(loop: Loop, other: Loop, tolerance: number): Course {
  const others = edgesOf(other);
  let [inside, outside, together] = [false, false, false];
  for (const edge of edgesOf(loop)) {
    const cuts = cutsOf(edge, others, tolerance);
    for (let i = 1; i < cuts.length; i++) {
      const middle = pointAlong(edge, (cuts[i - 1]! + cuts[i]!) / 2);
      const nearest = nearestEdge(others, middle);
      if (nearest.distance > tolerance) {
        if (encloses(other, middle)) inside = true;
        else outside = true;
      } else {
        const stretch = distance(edge.from, edge.to) * (cuts[i]! - cuts[i - 1]!);
        const sameWay = dot(directionOf(edge), directionOf(nearest.edge)) > 0;
        if (stretch > tolerance && sameWay) together = true;
      }
    }
  }
  return { inside, outside, together };
}

/** Shares along the edge, rising from 0 to 1, where it crosses another edge or passes a corner within reach. */
function cutsOf(edge: Segment, others: readonly Segment[], tolerance: number): readonly number[] {
  const cuts = [0, 1];
  for (const other of others) {
    if (boxGap(edge, other) > tolerance) continue;
    const crossing = crossingShare(edge, other);
    if (crossing !== undefined) cuts.push(crossing);
    const corner = other.from;
    if (distance(corner, nearestOnSegment(corner, edge)) <= tolerance) cuts.push(nearestShare(corner, edge));
  }
  return cuts.sort((a, b) => a - b);
}
