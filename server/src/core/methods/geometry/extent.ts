import { distance, dot, minus, type Point } from "./point";
import { type Placed, placedCore } from "./shape";

/** How far the placed shape reaches along a direction (radians), from end to end: exact for every shape. */
export function extentAlong(placed: Placed, direction: number): number {
  const { from, to } = reachAlong(placed, direction);
  return to - from;
}

/** The ends of the placed shape along a direction, measured from the origin of the plane. */
export function reachAlong(
  placed: Placed,
  direction: number,
): { readonly from: number; readonly to: number } {
  const { loop, radius } = placedCore(placed);
  const axis: Point = { x: Math.cos(direction), y: Math.sin(direction) };
  const reaches = loop.map((point) => dot(point, axis));
  return { from: Math.min(...reaches) - radius, to: Math.max(...reaches) + radius };
}

/** The longest line between two points of the shape, and its direction (radians; 0 where all are as long). */
export function greatestExtent(placed: Placed): { readonly length: number; readonly direction: number } {
  const { loop, radius } = placedCore(placed);
  let longest = 0;
  let direction = 0;
  for (const [index, point] of loop.entries()) {
    for (const other of loop.slice(index + 1)) {
      const found = distance(point, other);
      if (found <= longest) continue;
      const along = minus(other, point);
      [longest, direction] = [found, Math.atan2(along.y, along.x)];
    }
  }
  return { length: longest + 2 * radius, direction };
}
