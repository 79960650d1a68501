import { describe, expect, test } from "vitest";
import { type Placed, type Relation, relation, type Shape } from "../../server/src/core/methods/geometry";
import { fc } from "../support/random";
import { angle, lattice, placed, placedCircle, point, runs, scaled, shifted, turned } from "./arbitraries";
import { apart, commonDepth, leastDistance, sampledDistance, standsOut } from "./model";

const slack = 1e-9;

/** The answer must be reached by two points of the boundaries, and no search may find anything nearer. */
function expectTrue(a: Placed, b: Placed, found: Relation): void {
  const depth = commonDepth(a, b);
  if (found.kind === "overlapping") {
    expect(depth).toBeGreaterThan(0);
    return;
  }
  expect(depth).toBeLessThan(slack);
  const [onA, onB] = found.between;
  expect(Math.abs(standsOut(onA, a))).toBeLessThan(slack);
  expect(Math.abs(standsOut(onB, b))).toBeLessThan(slack);
  expect(Math.abs(apart(onA, onB) - found.distance)).toBeLessThan(slack);
  expect(Math.abs(leastDistance(a, b) - found.distance)).toBeLessThan(1e-7);
  const sampled = sampledDistance(a, b);
  expect(sampled.distance).toBeGreaterThan(found.distance - slack);
  expect(sampled.distance).toBeLessThan(found.distance + sampled.spacing);
}

const distanceOf = (found: Relation): number | undefined =>
  found.kind === "clear" ? found.distance : undefined;

function expectSame(found: Relation, wanted: Relation, factor = 1): void {
  expect(found.kind).toBe(wanted.kind);
  if (found.kind === "clear" && wanted.kind === "clear") {
    expect(Math.abs(found.distance - factor * wanted.distance)).toBeLessThan(slack * factor);
  }
}

describe("against a search of both boundaries", () => {
  test("shapes anywhere", () => {
    const seen = { clear: 0, overlapping: 0 };
    fc.assert(
      fc.property(placed, placed, (a, b) => {
        const found = relation(a, b);
        seen[found.kind] += 1;
        expectTrue(a, b, found);
      }),
      runs(250),
    );
    expect(Math.min(seen.clear, seen.overlapping)).toBeGreaterThan(40);
  });

  test("shapes that touch, share edges or are equal", () => {
    const seen = { clear: 0, overlapping: 0, touching: 0 };
    fc.assert(
      fc.property(lattice(3), ([a, b]) => {
        const found = relation(a, b);
        seen[found.kind === "clear" && found.distance === 0 ? "touching" : found.kind] += 1;
        // A true overlap on the lattice is deep; a search may scrape a touching edge by rounding.
        const deep = commonDepth(a, b) > 1e-6;
        expect(found.kind).toBe(deep ? "overlapping" : "clear");
        if (found.kind === "clear") expectTrue(a, b, found);
      }),
      runs(250),
    );
    expect(Math.min(seen.clear, seen.overlapping, seen.touching)).toBeGreaterThan(20);
  });
});

describe("does not depend on", () => {
  test("the order", () => {
    fc.assert(
      fc.property(fc.oneof(fc.tuple(placed, placed), lattice(3)), ([a, b]) => {
        expectSame(relation(b, a), relation(a, b));
      }),
      runs(1000),
    );
  });

  test("where the pair stands and how it is turned", () => {
    fc.assert(
      fc.property(fc.oneof(fc.tuple(placed, placed), lattice(3)), angle, point, ([a, b], turn, by) => {
        const move = (item: Placed) => shifted(turned(item, turn), by);
        expectSame(relation(move(a), move(b)), relation(a, b));
      }),
      runs(1000),
    );
  });

  test("the unit", () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.tuple(placed, placed), lattice(3)),
        fc.constantFrom(0.0254, 25.4, 1e-6, 1e6),
        ([a, b], unit) => {
          expectSame(relation(scaled(a, unit), scaled(b, unit)), relation(a, b), unit);
        },
      ),
      runs(1000),
    );
  });
});

describe("touching", () => {
  /** Moved by the gap along the line of the nearest points, a shape touches the other and overlaps nowhere. */
  test("is clear with distance 0", () => {
    fc.assert(
      fc.property(placed, placed, (a, b) => {
        const found = relation(a, b);
        fc.pre(found.kind === "clear");
        const [onA, onB] = found.between;
        const moved = relation(a, shifted(b, { x: onA.x - onB.x, y: onA.y - onB.y }));
        expect(distanceOf(moved)).toBe(0);
      }),
      runs(1000),
    );
  });

  test("ends where a circle is pushed further in, or pulled back", () => {
    fc.assert(
      fc.property(placedCircle, placed, fc.constantFrom(1e-3, 1e-5, 1e-7), (a, b, step) => {
        const found = relation(a, b);
        fc.pre(found.kind === "clear" && found.distance > 1e-3);
        const [onA, onB] = found.between;
        const by = (way: number) => {
          const share = (found.distance + way) / found.distance;
          return { x: (onA.x - onB.x) * share, y: (onA.y - onB.y) * share };
        };
        expect(relation(a, shifted(b, by(step))).kind).toBe("overlapping");
        expect(distanceOf(relation(a, shifted(b, by(-step))))).toBeCloseTo(step, 10);
      }),
      runs(1000),
    );
  });

  const square: Extract<Shape, { kind: "rectangle" }> = {
    kind: "rectangle",
    width: 2,
    height: 2,
    cornerRadius: 0,
  };
  const at = (x: number, y: number, shape: Shape = square, angle = 0): Placed => ({
    shape,
    at: { x, y },
    angle,
  });

  test.each([
    ["a whole edge", at(2, 0), 0],
    ["part of an edge", at(2, 1.3), 0],
    ["a corner", at(2, 2), 0],
    ["a corner on an edge", at(1 + Math.SQRT2, 0, square, Math.PI / 4), 0],
    ["less than nothing, within the tolerance", at(2 - 1e-10, 0), 0],
  ])("two squares share %s", (_, other, distance) => {
    expect(distanceOf(relation(at(0, 0), other))).toBe(distance);
  });

  test.each([
    ["equal", at(0, 0)],
    ["equal but a quarter turn", at(0, 0, square, Math.PI / 2)],
    ["one in the corner of the other", at(-0.5, -0.5, { ...square, width: 1, height: 1 })],
    ["pushed in by more than the tolerance", at(2 - 1e-7, 0)],
    ["one in the middle of the other", at(0, 0, { ...square, width: 1, height: 1 })],
    ["a bar across, flush with two edges", at(0, 0, { ...square, height: 0.5 })],
  ])("two squares %s overlap", (_, other) => {
    expect(relation(at(0, 0), other).kind).toBe("overlapping");
    expect(relation(other, at(0, 0)).kind).toBe("overlapping");
  });

  test("edges on one line that do not meet are measured between their ends", () => {
    for (const turn of [0, 0.1, 0.7, 1, 2, 2.9]) {
      const found = relation(turned(at(0, 0), turn), turned(at(5, 0), turn));
      expect(distanceOf(found)).toBeCloseTo(3, 12);
    }
  });

  test("a square held in a frame by four hooks that all but touch the middles of its edges", () => {
    const hook = [
      [3, 3],
      [-0.4, 3],
      [0, 1 + 1e-11],
      [-0.6, 3],
    ] as const;
    const quarters = [
      [1, 0],
      [0, 1],
      [-1, 0],
      [0, -1],
    ] as const;
    const points = quarters.flatMap(([cos, sin]) =>
      hook.map(([x, y]) => ({ x: x * cos - y * sin, y: x * sin + y * cos })),
    );
    const frame = at(0, 0, { kind: "polygon", points });
    expect(relation(at(0, 0), frame).kind).toBe("overlapping");
  });

  test("a peg fits its notch: three edges shared, nothing overlapped", () => {
    const notch: Shape = {
      kind: "polygon",
      points: [
        [0, 0],
        [6, 0],
        [6, 4],
        [4, 4],
        [4, 2],
        [2, 2],
        [2, 4],
        [0, 4],
      ].map(([x, y]) => ({ x: x!, y: y! })),
    };
    for (const turn of [0, 0.4, 1.9]) {
      const body = turned(at(0, 0, notch), turn);
      expect(distanceOf(relation(body, turned(at(3, 3), turn)))).toBe(0);
      expect(relation(body, turned(at(3, 2.999), turn)).kind).toBe("overlapping");
    }
  });
});

describe("the same shape said differently", () => {
  const pairs: readonly [string, Shape, Shape][] = [
    [
      "slot as long as wide, circle",
      { kind: "slot", length: 1.3, width: 1.3 },
      { kind: "circle", diameter: 1.3 },
    ],
    [
      "rectangle with half its height as radius, slot",
      { kind: "rectangle", width: 3, height: 1.1, cornerRadius: 0.55 },
      { kind: "slot", length: 3, width: 1.1 },
    ],
    [
      "rectangle with sharp corners, polygon",
      { kind: "rectangle", width: 3, height: 1, cornerRadius: 0 },
      {
        kind: "polygon",
        points: [
          { x: -1.5, y: -0.5 },
          { x: -1.5, y: 0.5 },
          { x: 1.5, y: 0.5 },
          { x: 1.5, y: -0.5 },
        ],
      },
    ],
  ];

  test.each(pairs)("%s", (_, one, other) => {
    fc.assert(
      fc.property(point, angle, placed, (at, angle, third) => {
        expectSame(relation({ shape: one, at, angle }, third), relation({ shape: other, at, angle }, third));
      }),
      runs(500),
    );
  });
});
