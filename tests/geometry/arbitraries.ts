/** Random shapes and placements, of sizes around 1. */

import type { Placed, Point, Shape } from "../../server/src/core/methods/geometry";
import { fc } from "../support/random";

/** A search is too slow to shrink its cases. */
export const runs = (numRuns: number): fc.Parameters<unknown> => ({
  numRuns,
  endOnFailure: true,
});

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const size = real(0.2, 4);
export const point: fc.Arbitrary<Point> = fc.record({ x: real(-5, 5), y: real(-5, 5) });
export const angle = real(-Math.PI, Math.PI);

const circle = size.map((diameter): Shape => ({ kind: "circle", diameter }));

const slot = fc
  .tuple(size, fc.oneof(fc.constant(0), size))
  .map(([width, more]): Shape => ({ kind: "slot", length: width + more, width }));

const rectangle = fc
  .tuple(size, size, fc.oneof(fc.constantFrom(0, 1), real(0, 1)))
  .map(([width, height, share]): Shape => {
    return { kind: "rectangle", width, height, cornerRadius: (share * Math.min(width, height)) / 2 };
  });

/** Corners in order of angle around the origin, mostly concave; either way round, some corners repeated. */
const polygon = fc
  .tuple(
    fc.array(fc.tuple(real(0.3, 3), real(0, 0.9), fc.boolean()), { minLength: 4, maxLength: 9 }),
    fc.boolean(),
  )
  .map(([corners, clockwise]): Shape => {
    const points = corners.flatMap(([radius, jitter, twice]) => {
      const turn = (2 * Math.PI * jitter) / corners.length;
      const corner = { radius, turn };
      return twice ? [corner, corner] : [corner];
    });
    let place = -1;
    let before: object | undefined;
    const placed = points.map((corner) => {
      if (corner !== before) place += 1;
      before = corner;
      const at = (2 * Math.PI * place) / corners.length + corner.turn;
      return { x: corner.radius * Math.cos(at), y: corner.radius * Math.sin(at) };
    });
    return { kind: "polygon", points: clockwise ? placed.reverse() : placed };
  });

export const shape: fc.Arbitrary<Shape> = fc.oneof(circle, slot, rectangle, polygon);
export const place = (of: fc.Arbitrary<Shape>): fc.Arbitrary<Placed> =>
  fc.record({ shape: of, at: point, angle });
export const placed = place(shape);
export const placedCircle = place(circle);

const polygonOf = (...points: readonly [number, number][]): Shape => ({
  kind: "polygon",
  points: points.map(([x, y]) => ({ x, y })),
});

const whole = (min: number, max: number) => fc.integer({ min, max });

/**
 * Whole sizes at whole places up to `reach` and right angles, under one common turn: shapes that touch, share edges, are
 * equal or lie edge to edge within each other come up all the time.
 */
export const lattice = (reach: number): fc.Arbitrary<readonly [Placed, Placed]> =>
  fc
    .tuple(latticeItem(reach), latticeItem(reach), fc.constantFrom(0, 0.3, 1, 2.2))
    .map(([a, b, turn]) => [turned(a, turn), turned(b, turn)]);

function latticeItem(reach: number): fc.Arbitrary<Placed> {
  const shape: fc.Arbitrary<Shape> = fc.oneof(
    whole(1, 2).map((r): Shape => ({ kind: "circle", diameter: 2 * r })),
    whole(0, 2).map((more): Shape => ({ kind: "slot", length: 2 + 2 * more, width: 2 })),
    fc.tuple(whole(1, 3), whole(1, 3), whole(0, 1)).map(([a, b, cornerRadius]): Shape => {
      return { kind: "rectangle", width: 2 * a, height: 2 * b, cornerRadius };
    }),
    fc.constantFrom(
      polygonOf([0, 0], [4, 0], [4, 2], [2, 2], [2, 4], [0, 4]),
      polygonOf([0, 0], [0, 4], [6, 4], [6, 0], [4, 0], [4, 2], [2, 2], [2, 0]),
      polygonOf([0, 0], [2, 0], [4, 0], [4, 4], [2, 2], [0, 4]),
      polygonOf([0, 0], [2, 2], [0, 2]),
      polygonOf([0, 0], [2, 0], [2, 2], [0, 2]),
    ),
  );
  return fc.record({
    shape,
    at: fc.record({ x: whole(-reach, reach), y: whole(-reach, reach) }),
    angle: whole(0, 3).map((quarters) => (quarters * Math.PI) / 2),
  });
}

/** Turned about the world's origin. */
export function turned({ shape, at, angle }: Placed, turn: number): Placed {
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return { shape, at: { x: at.x * cos - at.y * sin, y: at.x * sin + at.y * cos }, angle: angle + turn };
}

export const shifted = ({ shape, at, angle }: Placed, by: Point): Placed => ({
  shape,
  at: { x: at.x + by.x, y: at.y + by.y },
  angle,
});

export function scaled({ shape, at, angle }: Placed, factor: number): Placed {
  const grown = ({ x, y }: Point): Point => ({ x: x * factor, y: y * factor });
  return { shape: scaledShape(shape, factor, grown), at: grown(at), angle };
}

function scaledShape(shape: Shape, factor: number, grown: (point: Point) => Point): Shape {
  switch (shape.kind) {
    case "circle":
      return { ...shape, diameter: shape.diameter * factor };
    case "slot":
      return { ...shape, length: shape.length * factor, width: shape.width * factor };
    case "rectangle":
      return {
        ...shape,
        width: shape.width * factor,
        height: shape.height * factor,
        cornerRadius: shape.cornerRadius * factor,
      };
    case "polygon":
      return { ...shape, points: shape.points.map(grown) };
  }
}
