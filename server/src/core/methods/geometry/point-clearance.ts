import { edgesOf, encloses, nearestEdge } from "./loop";
import { nearestOnPiece, outlineOfCore } from "./outline";
import { distance, minus, type Point, plus, rotated } from "./point";
import { coreOf, type Placed, sizeOf } from "./shape";
import { withinTouch } from "./tolerance";

/** How far a point (a fastener's centre, say) is from a shape's edge, and the nearest point of that edge. */
export type PointClearance =
  | { readonly kind: "outside"; readonly distance: number; readonly nearest: Point }
  | { readonly kind: "inside"; readonly depth: number; readonly nearest: Point };

/**
 * Exact distance of a point from the edge of a shape without `shapeProblems`. A point on the edge
 * (`touchTolerance`) is outside with distance 0.
 *
 * Source: derived; the nearest point of a segment is the foot of the perpendicular or an end, that of an arc
 * lies on the ray from its centre or is an end.
 */
export function pointClearance(point: Point, placed: Placed): PointClearance {
  const { distance, nearest } = signedClearance(point, placed);
  const tolerance = withinTouch(sizeOf(coreOf(placed.shape)));
  if (distance < -tolerance) return { kind: "inside", depth: -distance, nearest };
  return { kind: "outside", distance: distance > tolerance ? distance : 0, nearest };
}

/** The same as one number: negative within the shape. */
export function signedClearance(point: Point, placed: Placed): { distance: number; nearest: Point } {
  const core = coreOf(placed.shape);
  const local = rotated(minus(point, placed.at), -placed.angle);
  let best = { distance: Infinity, nearest: local };
  for (const piece of outlineOfCore(core)) {
    const nearest = nearestOnPiece(local, piece);
    const apart = distance(local, nearest);
    if (apart < best.distance) best = { distance: apart, nearest };
  }
  const within = encloses(core.loop, local) || nearestEdge(edgesOf(core.loop), local).distance < core.radius;
  return {
    distance: within ? -best.distance : best.distance,
    nearest: plus(placed.at, rotated(best.nearest, placed.angle)),
  };
}
