import { hullOf, lengthOf, signedArea } from "./loop";
import type { Point } from "./point";
import { coreOf, type Placed, placedCore, type Shape } from "./shape";

/** A box with sides along the axes. */
export interface Box {
  readonly min: Point;
  readonly max: Point;
}

/**
 * Area, in square units.
 *
 * Source: derived; a convex loop of area A and length P grown by r covers A + P·r + π·r² (Steiner's formula).
 * For an obround L × W that is πW²/4 + (L − W)W, for a rounded rectangle w·h − (4 − π)r².
 */
export function area(shape: Shape): number {
  const { loop, radius } = coreOf(shape);
  return signedArea(loop) + lengthOf(loop) * radius + Math.PI * radius ** 2;
}

/**
 * Length of the boundary.
 *
 * Source: derived; a convex loop of length P grown by r has the boundary P + 2π·r. For an obround L × W that
 * is πW + 2(L − W), for a rounded rectangle 2(w + h) − (8 − 2π)r.
 */
export function perimeter(shape: Shape): number {
  const { loop, radius } = coreOf(shape);
  return lengthOf(loop) + 2 * Math.PI * radius;
}

/**
 * Length of the shortest line around the shape: its boundary where it is convex. At a distance of x the way around is
 * 2π·x longer, and no way that keeps that distance is shorter.
 */
export function lengthAround(shape: Shape): number {
  const { loop, radius } = coreOf(shape);
  return lengthOf(hullOf(loop)) + 2 * Math.PI * radius;
}

/** The tightest radius on the boundary; a polygon's corners are sharp, so 0. */
export const smallestCornerRadius = (shape: Shape): number => coreOf(shape).radius;

/** The exact box around the placed shape. */
export function boundingBox(placed: Placed): Box {
  const { loop, radius } = placedCore(placed);
  const xs = loop.map((point) => point.x);
  const ys = loop.map((point) => point.y);
  return {
    min: { x: Math.min(...xs) - radius, y: Math.min(...ys) - radius },
    max: { x: Math.max(...xs) + radius, y: Math.max(...ys) + radius },
  };
}
