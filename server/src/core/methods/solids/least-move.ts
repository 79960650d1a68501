import { clearance, extentOf, type Solid, type UprightBox } from "./clearance";
import { plus, type Vector3 } from "./vector";

export type Axis = "x" | "y" | "z";

/**
 * The shortest way that a box has to go along an axis (`sign` 1 or -1) until it keeps `needed` from all of the
 * others; 0 where it does already. Found to 1e-9 of the way.
 *
 * Source: derived. The clearance of two convex solids is a convex function of a shift, so that the shifts that
 * are too near are one stretch, and its end is found by halving.
 */
export function leastMove(
  box: UprightBox,
  others: readonly Solid[],
  needed: number,
  axis: Axis,
  sign: 1 | -1,
): number {
  let way = 0;
  for (let round = 0; round <= others.length; round++) {
    const before = way;
    for (const other of others) way = Math.max(way, wayPast(box, other, needed, axis, sign, way));
    if (way === before) break;
  }
  return way;
}

function wayPast(
  box: UprightBox,
  other: Solid,
  needed: number,
  axis: Axis,
  sign: 1 | -1,
  from: number,
): number {
  const isClear = (way: number) => clearance(moved(box, axis, sign * way), other) >= needed;
  if (isClear(from)) return from;
  const [own, its] = [extentOf(box), extentOf(other)];
  let far = needed + (sign > 0 ? its.max[axis] - own.min[axis] : own.max[axis] - its.min[axis]);
  let near = from;
  for (let halving = 0; halving < 40; halving++) {
    const middle = (near + far) / 2;
    if (isClear(middle)) far = middle;
    else near = middle;
  }
  return far;
}

/** The box somewhere else. */
export function moved(box: UprightBox, axis: Axis, by: number): UprightBox {
  const step: Vector3 = { x: 0, y: 0, z: 0, [axis]: by };
  return { ...box, centre: plus(box.centre, step) };
}
