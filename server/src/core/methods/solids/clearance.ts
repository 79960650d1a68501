import { relation } from "../geometry";
import { lineDistance } from "./line-distance";
import { cross, dot, lengthOf, minus, plus, times, type Vector3 } from "./vector";

/** A box that stands upright: half its sides along its own axes, turned about the vertical through its centre. */
export interface UprightBox {
  readonly kind: "box";
  readonly centre: Vector3;
  readonly half: Vector3;
  /** rad, counter-clockwise from above */
  readonly turn: number;
}

/** All that is within `radius` of a straight line; of a point where both ends are the same. */
export interface SweptLine {
  readonly kind: "line";
  readonly from: Vector3;
  readonly to: Vector3;
  readonly radius: number;
}

export type Solid = UprightBox | SweptLine;

/**
 * Room between two solids. Where they share space it is negative: the shortest straight move that parts them.
 *
 * Source: derived. Two upright boxes are as far apart as their plans and their heights are; a line is nearest to
 * a box where a convex function made of parabolas is least; within each other, the shortest way out is square to
 * a face of their difference. Two lines are as far apart as their centre lines are, less both radii: the difference
 * of two straight lines is flat, so that this is also the way out. No approximation.
 */
export function clearance(one: Solid, other: Solid): number {
  if (one.kind === "box") return other.kind === "box" ? betweenBoxes(one, other) : fromLine(one, other);
  if (other.kind === "box") return fromLine(other, one);
  return lineDistance(one, other) - one.radius - other.radius;
}

function betweenBoxes(a: UprightBox, b: UprightBox): number {
  const inHeight = Math.abs(a.centre.z - b.centre.z) - a.half.z - b.half.z;
  const inPlan = planClearance(a, b);
  return inHeight > 0 && inPlan > 0 ? Math.hypot(inHeight, inPlan) : Math.max(inHeight, inPlan);
}

function planClearance(a: UprightBox, b: UprightBox): number {
  const found = relation(planOf(a), planOf(b));
  return found.kind === "clear" ? found.distance : -planOverlap(a, b);
}

function planOf({ centre, half, turn }: UprightBox) {
  const shape = { kind: "rectangle", width: 2 * half.x, height: 2 * half.y, cornerRadius: 0 } as const;
  return { shape, at: { x: centre.x, y: centre.y }, angle: turn };
}

/** Least overlap along the sides' directions: the shortest move in plan that parts two rectangles. */
function planOverlap(a: UprightBox, b: UprightBox): number {
  const apart = minus(b.centre, a.centre);
  const overlaps = [...axesOf(a).slice(0, 2), ...axesOf(b).slice(0, 2)].map(
    (axis) => halfAlong(a, axis) + halfAlong(b, axis) - Math.abs(dot(apart, axis)),
  );
  return Math.max(0, Math.min(...overlaps));
}

/** Half the room that a box takes along a direction. */
function halfAlong(box: UprightBox, direction: Vector3): number {
  const [x, y, z] = axesOf(box);
  return (
    box.half.x * Math.abs(dot(x, direction)) +
    box.half.y * Math.abs(dot(y, direction)) +
    box.half.z * Math.abs(dot(z, direction))
  );
}

function axesOf({ turn }: UprightBox): readonly [Vector3, Vector3, Vector3] {
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return [
    { x: cos, y: sin, z: 0 },
    { x: -sin, y: cos, z: 0 },
    { x: 0, y: 0, z: 1 },
  ];
}

function fromLine(box: UprightBox, { from, to, radius }: SweptLine): number {
  const start = inAxesOf(box, from);
  const way = minus(inAxesOf(box, to), start);
  const apart = distanceToBox(start, way, box.half);
  return (apart > 0 ? apart : -lineDepth(start, way, box.half)) - radius;
}

function inAxesOf(box: UprightBox, point: Vector3): Vector3 {
  const from = minus(point, box.centre);
  const [x, y, z] = axesOf(box);
  return { x: dot(from, x), y: dot(from, y), z: dot(from, z) };
}

const sides = ["x", "y", "z"] as const;

/**
 * Distance of the points start + t·way, t from 0 to 1, to a box about the origin. The square of it is a parabola
 * in t between the places where the line passes the planes of the box's sides.
 */
function distanceToBox(start: Vector3, way: Vector3, half: Vector3): number {
  const cuts = sides.flatMap((side) =>
    [-half[side], half[side]].map((plane) => (plane - start[side]) / way[side]),
  );
  const shares = [0, 1, ...cuts.filter((share) => share > 0 && share < 1)].sort((a, b) => a - b);
  let least = distanceAt(start, way, half, 0);
  for (let index = 1; index < shares.length; index++) {
    const [low, high] = [shares[index - 1]!, shares[index]!];
    const middle = plus(start, times(way, (low + high) / 2));
    const outside = sides.filter((side) => Math.abs(middle[side]) > half[side]);
    if (outside.length === 0) return 0;
    let [slope, bend] = [0, 0];
    for (const side of outside) {
      const beyond = start[side] - Math.sign(middle[side]) * half[side];
      slope += beyond * way[side];
      bend += way[side] ** 2;
    }
    const lowest = bend > 0 ? Math.min(high, Math.max(low, -slope / bend)) : high;
    least = Math.min(least, distanceAt(start, way, half, lowest), distanceAt(start, way, half, high));
  }
  return least;
}

function distanceAt(start: Vector3, way: Vector3, half: Vector3, share: number): number {
  const at = plus(start, times(way, share));
  const beyond = (side: (typeof sides)[number]) => Math.max(0, Math.abs(at[side]) - half[side]);
  return Math.hypot(beyond("x"), beyond("y"), beyond("z"));
}

/**
 * Shortest move that takes a line out of the box that it meets: out of the box swept by the line, whose faces
 * are square to the box's axes, or to one of them and the line.
 */
function lineDepth(start: Vector3, way: Vector3, half: Vector3): number {
  const middle = plus(start, times(way, 0.5));
  const axes: Vector3[] = [
    { x: 1, y: 0, z: 0 },
    { x: 0, y: 1, z: 0 },
    { x: 0, y: 0, z: 1 },
  ];
  const faces = [...axes, ...axes.map((axis) => cross(axis, way))];
  let least = Number.POSITIVE_INFINITY;
  for (const face of faces) {
    const size = lengthOf(face);
    if (size <= 1e-12 * (1 + lengthOf(way))) continue;
    const square = times(face, 1 / size);
    const reach =
      half.x * Math.abs(square.x) +
      half.y * Math.abs(square.y) +
      half.z * Math.abs(square.z) +
      Math.abs(dot(way, square)) / 2;
    least = Math.min(least, reach - Math.abs(dot(middle, square)));
  }
  return Math.max(0, least);
}

/** The straight box, along the axes, around a solid: its least and its greatest corner. */
export function extentOf(solid: Solid): { readonly min: Vector3; readonly max: Vector3 } {
  if (solid.kind === "line") {
    const { from, to, radius } = solid;
    const corner = (choose: (a: number, b: number) => number, by: number): Vector3 => ({
      x: choose(from.x, to.x) + by,
      y: choose(from.y, to.y) + by,
      z: choose(from.z, to.z) + by,
    });
    return { min: corner(Math.min, -radius), max: corner(Math.max, radius) };
  }
  const half = {
    x: halfAlong(solid, { x: 1, y: 0, z: 0 }),
    y: halfAlong(solid, { x: 0, y: 1, z: 0 }),
    z: solid.half.z,
  };
  return { min: minus(solid.centre, half), max: plus(solid.centre, half) };
}
