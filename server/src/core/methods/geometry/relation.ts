import { courseOf } from "./course";
import { encloses, type Loop, nearestOfEdges } from "./loop";
import { grown, settled } from "./nearness";
import type { Nearness } from "./segment";
import { type Placed, placedCore, sizeOf } from "./shape";
import { withinTouch } from "./tolerance";

/** How two shapes stand to each other; `between` are the nearest points, on the first and on the second. */
export type Relation = ({ readonly kind: "clear" } & Nearness) | { readonly kind: "overlapping" };

/**
 * Whether two shapes are clear of each other, and by how much. Touching (`touchTolerance`) is clear with
 * distance 0; one shape wholly within the other is overlapping. `a` and `b` without `shapeProblems`.
 *
 * Source: derived; shapes grown by r₁ and r₂ from cores at the distance d are d − r₁ − r₂ apart, and overlap
 * when that is negative.
 */
export function relation(a: Placed, b: Placed): Relation {
  const first = placedCore(a);
  const second = placedCore(b);
  const tolerance = withinTouch(sizeOf(first), sizeOf(second));
  const apart = nearestOfAreas(first.loop, second.loop);
  const gap = grown(apart, first.radius, second.radius);
  if (gap.distance < -tolerance) return { kind: "overlapping" };
  // Cores that meet have a distance of zero however deeply they do; it tells only for cores that are apart.
  if (apart.distance <= tolerance && areasMeet(first.loop, second.loop, tolerance)) {
    return { kind: "overlapping" };
  }
  return { kind: "clear", ...settled(gap, tolerance) };
}

function nearestOfAreas(a: Loop, b: Loop): Nearness {
  const edges = nearestOfEdges(a, b);
  return encloses(a, b[0]!) || encloses(b, a[0]!) ? { ...edges, distance: 0 } : edges;
}

/**
 * Areas meet when an edge of either runs within the other, or edges run along each other with both areas on
 * the same side. Otherwise no edge enters the other's area and the areas are apart.
 */
function areasMeet(a: Loop, b: Loop, tolerance: number): boolean {
  const course = courseOf(a, b, tolerance);
  return course.inside || course.together || courseOf(b, a, tolerance).inside;
}
