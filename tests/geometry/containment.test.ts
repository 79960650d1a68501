import { describe, expect, test } from "vitest";
import { containment, type Placed, relation, type Shape } from "../../server/src/core/methods/geometry";
import { fc } from "../support/random";
import { angle, lattice, placed, point, runs, scaled, shape, shifted, turned } from "./arbitraries";
import { apart, boundaryPieces, leastAlong, leastDistance, sampledDistance, standsOut } from "./model";

const slack = 1e-9;

/** A small shape in a large one, so that all three answers come up. */
const smallInLarge = fc
  .tuple(placed, shape, angle, point)
  .map(([inner, outer, turn, at]): readonly [Placed, Placed] => [
    scaled(inner, 0.4),
    scaled({ shape: outer, at: { x: at.x / 5, y: at.y / 5 }, angle: turn }, 1.5),
  ]);

/** How far the inner's boundary comes out of the outer, and the outer's boundary into the inner. */
function beyond(inner: Placed, outer: Placed): number {
  const out = -leastAlong(boundaryPieces(inner), (at) => -standsOut(at, outer));
  const intruding = -leastAlong(boundaryPieces(outer), (at) => standsOut(at, inner));
  return Math.max(out, intruding);
}

function expectTrue(inner: Placed, outer: Placed): "inside" | "outside" | "crossing" {
  const found = containment(inner, outer);
  const apartFrom = relation(inner, outer);
  if (apartFrom.kind === "clear") {
    expect(found).toEqual({ ...apartFrom, kind: "outside" });
    return "outside";
  }
  if (found.kind === "crossing") {
    expect(beyond(inner, outer)).toBeGreaterThan(slack);
    return found.kind;
  }
  expect(found.kind).toBe("inside");
  expect(beyond(inner, outer)).toBeLessThan(slack);
  const [onInner, onOuter] = found.between;
  expect(Math.abs(standsOut(onInner, inner))).toBeLessThan(slack);
  expect(Math.abs(standsOut(onOuter, outer))).toBeLessThan(slack);
  expect(Math.abs(apart(onInner, onOuter) - found.distance)).toBeLessThan(slack);
  expect(Math.abs(leastDistance(inner, outer) - found.distance)).toBeLessThan(1e-7);
  const sampled = sampledDistance(inner, outer);
  expect(sampled.distance).toBeGreaterThan(found.distance - slack);
  expect(sampled.distance).toBeLessThan(found.distance + sampled.spacing);
  return "inside";
}

describe("against a search of both boundaries", () => {
  test("a small shape and a large one, anywhere", () => {
    const seen = { inside: 0, outside: 0, crossing: 0 };
    fc.assert(
      fc.property(smallInLarge, ([inner, outer]) => {
        seen[expectTrue(inner, outer)] += 1;
      }),
      runs(300),
    );
    expect(Math.min(seen.inside, seen.outside, seen.crossing)).toBeGreaterThan(30);
  });

  test("shapes that share edges or are equal", () => {
    const seen = { inside: 0, outside: 0, crossing: 0 };
    fc.assert(
      fc.property(lattice(1), ([a, b]) => {
        seen[expectTrue(a, b)] += 1;
        seen[expectTrue(b, a)] += 1;
      }),
      runs(200),
    );
    expect(Math.min(seen.inside, seen.outside, seen.crossing)).toBeGreaterThan(20);
  });
});

test("does not depend on place, turn or unit", () => {
  fc.assert(
    fc.property(
      fc.oneof(smallInLarge, lattice(1)),
      angle,
      point,
      fc.constantFrom(1, 25.4, 1e-4),
      ([inner, outer], turn, by, unit) => {
        const move = (item: Placed) => scaled(shifted(turned(item, turn), by), unit);
        const [found, wanted] = [containment(move(inner), move(outer)), containment(inner, outer)];
        expect(found.kind).toBe(wanted.kind);
        if (found.kind !== "crossing" && wanted.kind !== "crossing") {
          expect(Math.abs(found.distance - unit * wanted.distance)).toBeLessThan(slack * unit);
        }
      },
    ),
    runs(1000),
  );
});

test("every shape lies within itself, with nothing left", () => {
  fc.assert(
    fc.property(placed, (item) => {
      expect(containment(item, item)).toMatchObject({ kind: "inside", distance: 0 });
    }),
    runs(500),
  );
});

describe("by hand", () => {
  const at = (x: number, y: number, shape: Shape): Placed => ({ shape, at: { x, y }, angle: 0 });
  const hole: Shape = { kind: "circle", diameter: 2 };
  const panel: Shape = { kind: "rectangle", width: 10, height: 6, cornerRadius: 1 };

  test("a hole in a panel: the margin to the nearest edge", () => {
    expect(containment(at(3, 0, hole), at(0, 0, panel))).toEqual({
      kind: "inside",
      distance: 1,
      between: [
        { x: 4, y: 0 },
        { x: 5, y: 0 },
      ],
    });
  });

  test("a hole in a rounded corner: the margin runs to the arc", () => {
    const found = containment(at(3.5, 1.5, hole), at(0, 0, panel));
    // From (3.5, 1.5) the straight edges are 1.5 away; the arc around (4, 2) has 1 + √0.5 on the diagonal.
    expect(found).toMatchObject({ kind: "inside", distance: 0.5 });
    const sharp: Shape = { kind: "circle", diameter: 0.2 };
    const corner = containment(at(4.5, 2.5, sharp), at(0, 0, panel));
    expect(corner.kind === "inside" && corner.distance).toBeCloseTo(1 - Math.SQRT1_2 - 0.1, 12);
  });

  test("a hole over the notch of a panel crosses, though its corners are all inside", () => {
    const notched: Shape = {
      kind: "polygon",
      points: [
        [0, 0],
        [10, 0],
        [10, 6],
        [5.1, 6],
        [5, 2],
        [4.9, 6],
        [0, 6],
      ].map(([x, y]) => ({ x: x!, y: y! })),
    };
    const square: Shape = { kind: "rectangle", width: 4, height: 2, cornerRadius: 0 };
    expect(containment(at(5, 4, square), at(0, 0, notched)).kind).toBe("crossing");
    expect(containment(at(5, 1, square), at(0, 0, notched))).toMatchObject({ kind: "inside", distance: 0 });
    expect(containment(at(5, 2.5, hole), at(0, 0, notched)).kind).toBe("crossing");
  });

  test("a hole larger than its panel crosses", () => {
    expect(containment(at(0, 0, panel), at(0, 0, hole)).kind).toBe("crossing");
  });

  test("touching from within is inside, from without outside, both with nothing left", () => {
    expect(containment(at(4, 0, hole), at(0, 0, panel))).toMatchObject({ kind: "inside", distance: 0 });
    expect(containment(at(6, 0, hole), at(0, 0, panel))).toMatchObject({ kind: "outside", distance: 0 });
    expect(containment(at(4.001, 0, hole), at(0, 0, panel)).kind).toBe("crossing");
  });
});
