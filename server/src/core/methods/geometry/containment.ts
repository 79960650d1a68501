import { courseOf } from "./course";
import { nearestOfEdges } from "./loop";
import { grown, settled } from "./nearness";
import { signedClearance } from "./point-clearance";
import { relation } from "./relation";
import type { Nearness } from "./segment";
import { type Core, type Placed, placedCore, sizeOf } from "./shape";
import { withinTouch } from "./tolerance";

/**
 * Where one shape stands in another.
 *
 * - `inside`: no part of the inner is beyond the outer's edge; `distance` is what is left between the edges
 * - `outside`: they share no area; `distance` is the gap
 * - `crossing`: anything else, so also an inner shape that covers the outer one
 *
 * `between` are the nearest points, on the inner's edge and on the outer's.
 */
export type Containment =
  | ({ readonly kind: "inside" } & Nearness)
  | ({ readonly kind: "outside" } & Nearness)
  | { readonly kind: "crossing" };

/**
 * Whether `inner` lies within `outer`, and how far from its edge. Touching (`touchTolerance`) is inside, or
 * outside, with distance 0. Both without `shapeProblems`.
 *
 * Source: derived; see `relation` for outside, `depthInConvex` for inside.
 */
export function containment(inner: Placed, outer: Placed): Containment {
  const apart = relation(inner, outer);
  if (apart.kind === "clear") return { ...apart, kind: "outside" };
  const inCore = placedCore(inner);
  const outCore = placedCore(outer);
  const tolerance = withinTouch(sizeOf(inCore), sizeOf(outCore));
  const depth = outCore.radius > 0 ? depthInConvex(inCore, outer) : depthInLoop(inCore, outCore, tolerance);
  if (depth === undefined || depth.distance < -tolerance) return { kind: "crossing" };
  return { kind: "inside", ...settled(depth, tolerance) };
}

/**
 * Depth below a convex boundary is a concave function of place, so over the inner core it is least at one of
 * the core's corners; the inner's radius then takes its share. Negative when some corner stands out.
 */
function depthInConvex(inner: Core, outer: Placed): Nearness {
  let least: Nearness | undefined;
  for (const corner of inner.loop) {
    const { distance, nearest } = signedClearance(corner, outer);
    if (least === undefined || -distance < least.distance) {
      least = { distance: -distance, between: [corner, nearest] };
    }
  }
  return grown(least!, inner.radius, 0);
}

/** In a polygon: the distance of the edges, provided that no edge of the inner core runs outside. */
function depthInLoop(inner: Core, outer: Core, tolerance: number): Nearness | undefined {
  if (courseOf(inner.loop, outer.loop, tolerance).outside) return undefined;
  return grown(nearestOfEdges(inner.loop, outer.loop), inner.radius, 0);
}
