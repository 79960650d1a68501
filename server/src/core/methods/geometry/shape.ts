import { distinctPoints, extentOf, type Loop, reversed, signedArea } from "./loop";
import { type Point, plus, rotated } from "./point";

/**
 * A shape in its own coordinates: any one length unit. A circle, a slot and a rectangle have their centre at
 * the origin.
 */
export type Shape =
  | { readonly kind: "circle"; readonly diameter: number }
  /** Obround: `length` over all along x, at least as long as wide. */
  | { readonly kind: "slot"; readonly length: number; readonly width: number }
  /** `width` along x; `cornerRadius` at most half the smaller side. */
  | {
      readonly kind: "rectangle";
      readonly width: number;
      readonly height: number;
      readonly cornerRadius: number;
    }
  /** A simple polygon, either way round; it may be concave and need not repeat its first point. */
  | { readonly kind: "polygon"; readonly points: readonly Point[] };

/** A shape turned by `angle` (radians, counter-clockwise) about its origin, which then stands on `at`. */
export interface Placed {
  readonly shape: Shape;
  readonly at: Point;
  readonly angle: number;
}

/**
 * Every shape is a loop of straight edges grown by a radius: a circle is a point grown, a slot a line, a
 * rounded rectangle a smaller rectangle, a polygon itself with radius 0. A core with a radius is convex.
 * Distances and areas follow from the core in closed form.
 */
export interface Core {
  readonly loop: Loop;
  readonly radius: number;
}

export function coreOf(shape: Shape): Core {
  switch (shape.kind) {
    case "circle":
      return { loop: [{ x: 0, y: 0 }], radius: shape.diameter / 2 };
    case "slot":
      return { loop: box(shape.length - shape.width, 0), radius: shape.width / 2 };
    case "rectangle": {
      const { width, height, cornerRadius } = shape;
      return { loop: box(width - 2 * cornerRadius, height - 2 * cornerRadius), radius: cornerRadius };
    }
    case "polygon": {
      const loop = distinct(shape.points);
      return { loop: signedArea(loop) < 0 ? reversed(loop) : loop, radius: 0 };
    }
  }
}

export function placedCore({ shape, at, angle }: Placed): Core {
  const { loop, radius } = coreOf(shape);
  return { loop: loop.map((point) => plus(at, rotated(point, angle))), radius };
}

/** A measure of the shape that does not depend on its angle, between half its longest reach and all of it. */
export const sizeOf = ({ loop, radius }: Core): number => extentOf(loop) + 2 * radius;

/** A rectangle around the origin, without the corners that fall together when a side is nothing. */
function box(width: number, height: number): Loop {
  const x = Math.max(0, width / 2);
  const y = Math.max(0, height / 2);
  return distinct([
    { x: -x, y: -y },
    { x, y: -y },
    { x, y },
    { x: -x, y },
  ]);
}

/** Only exact repeats go: the edge between points that merely lie close is part of the shape. */
function distinct(points: readonly Point[]): Loop {
  return distinctPoints(points, 0).map((index) => points[index]!);
}
