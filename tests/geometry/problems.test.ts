import { describe, expect, test } from "vitest";
import {
  type Point,
  polygonPointLimit,
  type Shape,
  shapeProblems,
} from "../../server/src/core/methods/geometry";
import { fc } from "../support/random";
import { runs } from "./arbitraries";

const points = (...corners: readonly (readonly [number, number])[]): readonly Point[] =>
  corners.map(([x, y]) => ({ x, y }));
const polygon = (...corners: readonly (readonly [number, number])[]): Shape => ({
  kind: "polygon",
  points: points(...corners),
});

describe("sizes", () => {
  test.each<[Shape, object[]]>([
    [{ kind: "circle", diameter: 0 }, [{ kind: "size-not-positive", dimension: "diameter", value: 0 }]],
    [{ kind: "circle", diameter: Number.NaN }, [{ kind: "size-not-finite", dimension: "diameter" }]],
    [
      { kind: "slot", length: -3, width: Infinity },
      [
        { kind: "size-not-positive", dimension: "length", value: -3 },
        { kind: "size-not-finite", dimension: "width" },
      ],
    ],
    [{ kind: "slot", length: 1, width: 2 }, [{ kind: "slot-shorter-than-wide", length: 1, width: 2 }]],
    [{ kind: "slot", length: 2, width: 2 }, []],
    [
      { kind: "rectangle", width: 4, height: 2, cornerRadius: 1.01 },
      [{ kind: "corner-radius-too-large", value: 1.01, limit: 1 }],
    ],
    [
      { kind: "rectangle", width: 4, height: 2, cornerRadius: -1 },
      [{ kind: "size-not-positive", dimension: "cornerRadius", value: -1 }],
    ],
    [{ kind: "rectangle", width: 4, height: 2, cornerRadius: 1 }, []],
    [{ kind: "rectangle", width: 4, height: 2, cornerRadius: 0 }, []],
  ])("%j", (shape, problems) => {
    expect(shapeProblems(shape)).toEqual(problems);
  });

  test("a slot as long as wide and a radius of half the side survive a change of units", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 100, noNaN: true }), (size) => {
        const [there, back] = [size * 25.4, (size / 0.3) * 0.3 * 25.4];
        expect(shapeProblems({ kind: "slot", length: there, width: back })).toEqual([]);
        const rounded: Shape = { kind: "rectangle", width: there, height: 200_000, cornerRadius: back / 2 };
        expect(shapeProblems(rounded)).toEqual([]);
      }),
      runs(1000),
    );
  });
});

describe("polygons", () => {
  test.each<[string, Shape, object[]]>([
    ["none", polygon(), [{ kind: "too-few-points", count: 0 }]],
    ["two, one of them twice", polygon([0, 0], [0, 0], [1, 1]), [{ kind: "too-few-points", count: 2 }]],
    ["one point many times", polygon([2, 2], [2, 2], [2, 2]), [{ kind: "too-few-points", count: 1 }]],
    ["a line", polygon([0, 0], [1, 1], [3, 3]), [{ kind: "zero-area" }]],
    ["a line off every axis", polygon([0, 0], [0.1, 0.3], [0.2, 0.6], [0.7, 2.1]), [{ kind: "zero-area" }]],
    ["not a number", polygon([0, 0], [Number.NaN, 1], [1, 1]), [{ kind: "point-not-finite", index: 1 }]],
    [
      "a bow tie",
      polygon([0, 0], [2, 2], [2, 0], [0, 2]),
      [{ kind: "self-intersecting", edges: [0, 2], at: { x: 1, y: 1 } }],
    ],
    [
      "a bow tie with corners repeated: indices as given",
      polygon([0, 0], [0, 0], [2, 2], [2, 0], [2, 0], [0, 2], [0, 0]),
      [{ kind: "self-intersecting", edges: [0, 3], at: { x: 1, y: 1 } }],
    ],
    [
      "an edge folded back",
      polygon([0, 0], [4, 0], [2, 0], [2, 2]),
      [{ kind: "self-intersecting", edges: [0, 2], at: { x: 2, y: 0 } }],
    ],
    ["a sharp corner close to the first edge", polygon([0, 0], [2, 0], [2, 2], [-1, 0]), []],
    [
      "an edge folded back at the first corner",
      polygon([2, 0], [4, 0], [2, 2], [3, 0]),
      [{ kind: "self-intersecting", edges: [0, 2], at: { x: 3, y: 0 } }],
    ],
    [
      "a corner on an edge",
      polygon([0, 0], [4, 0], [4, 4], [2, 0], [0, 4]),
      [{ kind: "self-intersecting", edges: [0, 2], at: { x: 2, y: 0 } }],
    ],
    [
      "two lobes that share a corner",
      polygon([0, 0], [1, 1], [2, 0], [2, 2], [1, 1], [0, 2]),
      [{ kind: "self-intersecting", edges: [0, 3], at: { x: 1, y: 1 } }],
    ],
    ["the first point repeated at the end", polygon([0, 0], [2, 0], [0, 2], [0, 0]), []],
    ["corners repeated", polygon([0, 0], [0, 0], [2, 0], [2, 0], [2, 0], [0, 2], [0, 2]), []],
    ["points along an edge", polygon([0, 0], [1, 0], [1.5, 0], [2, 0], [0, 2], [0, 1]), []],
    ["concave, clockwise", polygon([0, 0], [0, 4], [4, 4], [2, 2], [4, 0]), []],
  ])("%s", (_, shape, problems) => {
    expect(shapeProblems(shape)).toEqual(problems);
  });

  test("too many points are not looked at", () => {
    const ring = Array.from({ length: polygonPointLimit + 1 }, (_, i) => {
      const turn = (2 * Math.PI * i) / (polygonPointLimit + 1);
      return { x: Math.cos(turn), y: Math.sin(turn) };
    });
    const count = ring.length;
    expect(shapeProblems({ kind: "polygon", points: ring })).toEqual([
      { kind: "too-many-points", count, limit: polygonPointLimit },
    ]);
    expect(shapeProblems({ kind: "polygon", points: ring.slice(1) })).toEqual([]);
  });
});

/** Whether a chain of whole-number points is a simple polygon, in exact arithmetic. */
function simpleInWholeNumbers(given: readonly Point[]): boolean {
  const same = (a: Point, b: Point) => a.x === b.x && a.y === b.y;
  const corners = given.filter((corner, i) => i === 0 || !same(corner, given[i - 1]!));
  while (corners.length > 1 && same(corners[0]!, corners.at(-1)!)) corners.pop();
  const count = corners.length;
  if (count < 3) return false;
  const turn = (a: Point, b: Point, c: Point) =>
    Math.sign((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x));
  const between = (p: Point, a: Point, b: Point) =>
    turn(a, b, p) === 0 && (p.x - a.x) * (p.x - b.x) <= 0 && (p.y - a.y) * (p.y - b.y) <= 0;
  const corner = (i: number) => corners[i % count]!;
  for (let i = 0; i < count; i++) {
    const [a, b, next] = [corner(i), corner(i + 1), corner(i + 2)];
    if (between(next, a, b) || between(a, b, next)) return false;
    for (let j = i + 2; j < count; j++) {
      if (i === 0 && j === count - 1) continue;
      const [c, d] = [corner(j), corner(j + 1)];
      const proper = turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;
      if (proper || between(a, c, d) || between(b, c, d) || between(c, a, b) || between(d, a, b))
        return false;
    }
  }
  return true;
}

describe("self-intersection against exact arithmetic in whole numbers", () => {
  /** Turning and scaling brings in rounding, which must not change the answer. */
  const disturbed = (corners: readonly Point[]): readonly Point[] => {
    const [cos, sin] = [Math.cos(0.7), Math.sin(0.7)];
    return corners.map(({ x, y }) => ({
      x: 25.4 * (x * cos - y * sin) + 91.3,
      y: 25.4 * (x * sin + y * cos) - 7.7,
    }));
  };

  const agrees = (corners: readonly Point[]): boolean => {
    const simple = simpleInWholeNumbers(corners);
    return (
      simple === (shapeProblems({ kind: "polygon", points: corners }).length === 0) &&
      simple === (shapeProblems({ kind: "polygon", points: disturbed(corners) }).length === 0)
    );
  };

  test.each([3, 4, 5])("every chain of %i points of a 3 × 3 grid", (count) => {
    const wrong: string[] = [];
    let simple = 0;
    for (let code = 0; code < 9 ** count; code++) {
      const corners = Array.from({ length: count }, (_, i) => {
        const cell = Math.floor(code / 9 ** i) % 9;
        return { x: cell % 3, y: Math.floor(cell / 3) };
      });
      if (simpleInWholeNumbers(corners)) simple += 1;
      if (!agrees(corners)) wrong.push(JSON.stringify(corners));
    }
    expect(wrong).toEqual([]);
    expect(simple).toBeGreaterThan(400);
  });

  test("longer chains of a larger grid, points repeated", () => {
    const cell = fc.record({ x: fc.integer({ min: 0, max: 6 }), y: fc.integer({ min: 0, max: 6 }) });
    const chain = fc
      .array(fc.tuple(cell, fc.integer({ min: 1, max: 3 })), { minLength: 3, maxLength: 8 })
      .map((corners) => corners.flatMap(([corner, times]) => Array.from({ length: times }, () => corner)));
    let simple = 0;
    fc.assert(
      fc.property(chain, (corners) => {
        if (simpleInWholeNumbers(corners)) simple += 1;
        return agrees(corners);
      }),
      runs(5000),
    );
    expect(simple).toBeGreaterThan(200);
  });
});
