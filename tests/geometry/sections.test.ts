/** What stands beside a figure in straight cuts, against cuts through sampled boundaries. */

import { describe, expect, it } from "vitest";
import {
  beside,
  containment,
  extentAlong,
  lengthAround,
  type Placed,
  passageOf,
  reachAlong,
  type Shape,
} from "../../server/src/core/methods/geometry";
import { fc } from "../support/random";
import { placed as anyPlaced, place, runs, scaled, shape, shifted, turned } from "./arbitraries";
import { boundaryPieces } from "./model";

const angle = fc.double({ min: -Math.PI, max: Math.PI, noNaN: true });

/** A small figure somewhere within a large one. */
const nested = fc
  .tuple(anyPlaced, place(shape), fc.double({ min: 0.05, max: 0.6, noNaN: true }), angle)
  .map(([outer, inner, size, direction]) => {
    const small = scaled({ ...inner, at: { x: 0, y: 0 } }, size);
    const by = { x: outer.at.x + (inner.at.x * size) / 4, y: outer.at.y + (inner.at.y * size) / 4 };
    return { outer, inner: shifted(small, by), direction };
  })
  .filter(({ outer, inner }) => containment(inner, outer).kind === "inside");

/** Levels where a cut at a station meets the boundary, by many short chords of it, in order. */
function cutsThrough(figure: Placed, direction: number): (station: number) => number[] {
  const [cos, sin] = [Math.cos(direction), Math.sin(direction)];
  const points = boundaryPieces(figure)
    .flatMap((piece) => Array.from({ length: 100 }, (_, index) => piece(index / 100)))
    .map(({ x, y }) => ({ level: x * cos + y * sin, station: y * cos - x * sin }));
  return (station) => {
    const levels: number[] = [];
    let a = points.at(-1)!;
    for (const b of points) {
      if (a.station > station !== b.station > station) {
        levels.push(a.level + ((station - a.station) / (b.station - a.station)) * (b.level - a.level));
      }
      a = b;
    }
    return levels.sort((one, other) => one - other);
  };
}

it("no cut leaves less than the least, and some cut leaves no more", () => {
  fc.assert(
    fc.property(nested, ({ inner, outer, direction }) => {
      const found = beside(inner, outer, direction);
      const { from, to } = reachAlong(inner, direction + Math.PI / 2);
      const [through, around] = [cutsThrough(inner, direction), cutsThrough(outer, direction)];
      const least = { before: Infinity, behind: Infinity, together: Infinity };
      let widest = 0;
      for (let index = 0.5; index < 200; index++) {
        const station = from + ((to - from) * index) / 200;
        const own = through(station);
        if (own.length === 0) continue;
        const levels = around(station);
        const before = own[0]! - levels.findLast((level) => level <= own[0]!)!;
        const behind = levels.find((level) => level >= own.at(-1)!)! - own.at(-1)!;
        least.before = Math.min(least.before, before);
        least.behind = Math.min(least.behind, behind);
        least.together = Math.min(least.together, before + behind);
        widest = Math.max(widest, own.at(-1)! - own[0]!);
      }
      const size = extentAlong(outer, direction) + extentAlong(outer, direction + Math.PI / 2);
      for (const side of ["before", "behind", "together"] as const) {
        // Chords of a sampled arc lie within it by 3e-5 of its radius.
        expect(found[side]).toBeLessThanOrEqual(least[side] + 5e-5 * size);
        // Between two cuts an edge that they meet at a flat angle still moves.
        expect(found[side]).toBeGreaterThan(least[side] - 0.03 * size);
      }
      expect(found.widest).toBeGreaterThanOrEqual(widest - 5e-5 * size);
      expect(found.widest).toBeLessThan(widest + 0.03 * size);
    }),
    runs(60),
  );
});

it("is nowhere less than the least distance between the outlines, and turns with the figures", () => {
  fc.assert(
    fc.property(nested, angle, ({ inner, outer, direction }, turn) => {
      const apart = containment(inner, outer);
      const found = beside(inner, outer, direction);
      const least = apart.kind === "inside" ? apart.distance : Number.NaN;
      expect(Math.min(found.before, found.behind)).toBeGreaterThanOrEqual(least - 1e-7);
      expect(found.together).toBeGreaterThanOrEqual(found.before + found.behind - 1e-7);
      const other = beside(turned(inner, turn), turned(outer, turn), direction + turn);
      for (const side of ["before", "behind", "together"] as const) {
        expect(Math.abs(other[side] - found[side])).toBeLessThanOrEqual(1e-6);
      }
    }),
    runs(150),
  );
});

const at = (of: Shape, x = 0, y = 0, degrees = 0): Placed => ({
  shape: of,
  at: { x, y },
  angle: (degrees * Math.PI) / 180,
});
const circle = (diameter: number): Shape => ({ kind: "circle", diameter });
const rectangle = (width: number, height: number, cornerRadius = 0): Shape => {
  return { kind: "rectangle", width, height, cornerRadius };
};
const polygon = (...points: readonly [number, number][]): Shape => ({
  kind: "polygon",
  points: points.map(([x, y]) => ({ x, y })),
});
const quarter = Math.PI / 2;

describe("worked by hand", () => {
  it.each([
    ["a strip of 3 in with a hole of 2 in", circle(2), at(rectangle(14, 3, 0.25)), 1],
    [
      "the same turned by 45 deg: a chord of 3 / cos 45",
      circle(2),
      at(rectangle(14, 3), 0, 0, 45),
      3 * Math.SQRT2 - 2,
    ],
    // From (-1.5, -1.5): the other leg of the L is not beside the hole.
    [
      "an L, 3 in wide at the hole",
      circle(2),
      at(polygon([-1.5, -1.5], [10, -1.5], [10, 8], [8, 8], [8, 1.5], [-1.5, 1.5])),
      1,
    ],
    // 2 (h - |x|) - 2 sqrt(1 - x2) is least at x = 1 / sqrt 2: 2 h - 2 sqrt 2.
    [
      "a square on its corner",
      circle(2),
      at(rectangle(Math.SQRT2 * 2, Math.SQRT2 * 2), 0, 0, 45),
      4 - 2 * Math.SQRT2,
    ],
    // Both chords change alike where their arcs have the same slope: at 30 deg, 2 (2 cos 30 - cos 30).
    ["a circle off the middle of a circle", circle(2), at(circle(4), -0.5, 0), Math.sqrt(3)],
    // Along the load; the arcs of the slot's end and of the circle have the same slope where the sine is 2/3.
    ["a slot in a circle", { kind: "slot", length: 3, width: 1 } as Shape, at(circle(4)), Math.sqrt(5)],
  ])("%s", (_, inner, outer, expected) => {
    const { together } = beside(at(inner), outer, quarter);
    expect(together).toBeCloseTo(expected, 8);
  });

  it("a slot askew is wider in all than in any cut", () => {
    const slot = at({ kind: "slot", length: 6, width: 3 }, 0, 0, 20);
    const { widest, together } = beside(slot, at(rectangle(9.5, 8)), quarter);
    expect(widest).toBeCloseTo(3 / Math.cos(Math.PI / 9), 8);
    expect(together).toBeCloseTo(8 - widest, 8);
  });

  it("what a figure encloses without being it does not stand beside it", () => {
    // A U of 4 by 4 in with 2 in between its legs, in a square of 6: 1 in on each side, and nothing of its inside.
    const u = polygon([-2, -2], [2, -2], [2, 2], [1, 2], [1, -1], [-1, -1], [-1, 2], [-2, 2]);
    expect(beside(at(u), at(rectangle(6, 6)), 0).together).toBeCloseTo(2, 9);
  });

  it("before and behind are the least each by itself", () => {
    const found = beside(at(circle(2)), at(polygon([-3, -3], [3, -3], [3, 2], [-3, 4])), quarter);
    expect(found.before).toBeCloseTo(2, 9);
    // The edge above falls by 1 in 3: 3 - x / 3 - sqrt(1 - x2) is least at x = 1 / sqrt 10.
    expect(found.behind).toBeCloseTo(3 - Math.sqrt(10) / 3, 8);
  });
});

it("the shortest way around a figure spans its hollows", () => {
  const el = polygon([0, 0], [0, 4], [2, 4], [2, 2], [4, 2], [4, 0]);
  expect(lengthAround(el)).toBeCloseTo(12 + 2 * Math.SQRT2, 12);
  expect(lengthAround({ kind: "slot", length: 4, width: 2 })).toBeCloseTo(4 + 2 * Math.PI, 12);
});

describe("a passage", () => {
  const strip = at(rectangle(30, 10, 0.5));

  it("has both edges at rest in a strip, and none beyond its end", () => {
    const { lower, upper } = passageOf(strip, quarter, 3, { from: -14, to: 14 })!;
    for (const level of [lower.from, lower.to]) expect(level).toBeCloseTo(-5, 12);
    for (const level of [upper.from, upper.to]) expect(level).toBeCloseTo(5, 12);
    expect(passageOf(strip, quarter, 3, { from: 5, to: 16 })).toBeUndefined();
    expect(passageOf(strip, quarter, 6, { from: -14, to: 14 })).toBeUndefined();
  });

  it("tells how far the edges of a taper, a circle and an L move", () => {
    const taper = at(polygon([0, 10], [0, -10], [30, -2.5], [30, 2.5]));
    // Stations lie a quarter turn on from the cuts, which is to the left here.
    const found = passageOf(taper, quarter, 0, { from: -29, to: -27 })!;
    expect(found.lower.to).toBeCloseTo(-2.75, 9);
    expect(found.lower.from).toBeCloseTo(-3.25, 9);
    const round = passageOf(at(circle(10)), quarter, 0, { from: -3, to: 3 })!;
    expect(round.upper.from).toBeCloseTo(4, 9);
    expect(round.upper.to).toBeCloseTo(5, 9);
    const el = at(polygon([0, 0], [4, 0], [4, 2], [2, 2], [2, 4], [0, 4]));
    expect(passageOf(el, 0, 1, { from: 1, to: 3 })).toEqual({
      lower: { from: 0, to: 0 },
      upper: { from: 2, to: 4 },
    });
  });
});
