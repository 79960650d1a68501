import { describe, expect, test } from "vitest";
import { type Placed, pointClearance, relation } from "../../server/src/core/methods/geometry";
import { fc } from "../support/random";
import { angle, placed, point, runs, shifted, turned } from "./arbitraries";
import { apart, boundaryPieces, leastAlong, standsOut } from "./model";

const slack = 1e-9;

function signed(found: ReturnType<typeof pointClearance>): number {
  return found.kind === "inside" ? -found.depth : found.distance;
}

describe("the distance of a point from an edge", () => {
  test("is the textbook distance, reached at the nearest point, and no search finds less", () => {
    const seen = { inside: 0, outside: 0 };
    fc.assert(
      fc.property(point, placed, (at, item) => {
        const found = pointClearance(at, item);
        seen[found.kind] += 1;
        expect(Math.abs(signed(found) - standsOut(at, item))).toBeLessThan(slack);
        expect(Math.abs(standsOut(found.nearest, item))).toBeLessThan(slack);
        expect(Math.abs(apart(at, found.nearest) - Math.abs(signed(found)))).toBeLessThan(slack);
        const searched = leastAlong(boundaryPieces(item), (other) => apart(at, other));
        expect(Math.abs(searched - Math.abs(signed(found)))).toBeLessThan(1e-6);
      }),
      runs(1500),
    );
    expect(Math.min(seen.inside, seen.outside)).toBeGreaterThan(50);
  });

  test("does not depend on place and turn", () => {
    fc.assert(
      fc.property(point, placed, angle, point, (at, item, turn, by) => {
        const moved = shifted(turned({ ...item, at }, turn), by).at;
        const found = pointClearance(moved, shifted(turned(item, turn), by));
        expect(Math.abs(signed(found) - signed(pointClearance(at, item)))).toBeLessThan(slack);
      }),
      runs(1000),
    );
  });

  test("from outside is the gap of a circle around the point, and its radius", () => {
    fc.assert(
      fc.property(point, placed, (at, item) => {
        const found = pointClearance(at, item);
        fc.pre(found.kind === "outside" && found.distance > 0.1);
        const around: Placed = { shape: { kind: "circle", diameter: 0.2 }, at, angle: 0 };
        const gap = relation(around, item);
        expect(gap.kind === "clear" && gap.distance).toBeCloseTo(found.distance - 0.1, 10);
      }),
      runs(500),
    );
  });

  test("is 0, outside, on the edge itself", () => {
    fc.assert(
      fc.property(placed, fc.nat(), fc.double({ min: 0, max: 1, noNaN: true }), (item, which, share) => {
        const pieces = boundaryPieces(item);
        const found = pointClearance(pieces[which % pieces.length]!(share), item);
        expect(found).toMatchObject({ kind: "outside", distance: 0 });
      }),
      runs(1000),
    );
  });
});

describe("by hand", () => {
  const slot: Placed = { shape: { kind: "slot", length: 3, width: 1 }, at: { x: 0, y: 0 }, angle: 0 };

  test("the centre of a circle: any point of the edge is nearest", () => {
    const circle: Placed = { shape: { kind: "circle", diameter: 3 }, at: { x: 1, y: 2 }, angle: 0.3 };
    const found = pointClearance({ x: 1, y: 2 }, circle);
    expect(signed(found)).toBe(-1.5);
    expect(apart(found.nearest, circle.at)).toBeCloseTo(1.5, 12);
  });

  test("the middle line of a slot: the edge straight above or below", () => {
    const found = pointClearance({ x: 0.4, y: 0 }, slot);
    expect(signed(found)).toBe(-0.5);
    expect(found.nearest.x).toBeCloseTo(0.4, 12);
    expect(Math.abs(found.nearest.y)).toBeCloseTo(0.5, 12);
  });

  test("beyond the end of a slot: the round end", () => {
    const found = pointClearance({ x: 4, y: 4 }, slot);
    expect(signed(found)).toBeCloseTo(5 - 0.5, 12);
    expect(found.nearest.x).toBeCloseTo(1 + 0.3, 12);
    expect(found.nearest.y).toBeCloseTo(0.4, 12);
  });
});
