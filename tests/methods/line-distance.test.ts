/** Distance of straight lines and the room between swept ones: by brute force, and by what must hold. */

import { describe, expect, it } from "vitest";
import { clearance, lineDistance, type SweptLine, type Vector3 } from "../../server/src/core/methods/solids";
import { fc } from "../support/random";

const coordinate = fc.oneof(
  fc.double({ min: -12, max: 12, noNaN: true }),
  fc.integer({ min: -2, max: 2 }), // parallel, crossing and touching lines
);
const point: fc.Arbitrary<Vector3> = fc.record({ x: coordinate, y: coordinate, z: coordinate });
const line: fc.Arbitrary<SweptLine> = fc.record({
  kind: fc.constant("line" as const),
  from: point,
  to: point,
  radius: fc.double({ min: 0, max: 2, noNaN: true }),
});

const apart = (a: Vector3, b: Vector3) => Math.hypot(a.x - b.x, a.y - b.y, a.z - b.z);
const at = ({ from, to }: SweptLine, share: number): Vector3 => ({
  x: from.x + share * (to.x - from.x),
  y: from.y + share * (to.y - from.y),
  z: from.z + share * (to.z - from.z),
});

/** Nearest point of a line to a point: in the open between its ends, or one of them. */
function nearest(of: SweptLine, to: Vector3): Vector3 {
  const way = { x: of.to.x - of.from.x, y: of.to.y - of.from.y, z: of.to.z - of.from.z };
  const square = way.x ** 2 + way.y ** 2 + way.z ** 2;
  const along = (to.x - of.from.x) * way.x + (to.y - of.from.y) * way.y + (to.z - of.from.z) * way.z;
  return at(of, square === 0 ? 0 : Math.min(1, Math.max(0, along / square)));
}

const samples = 2000;

/** The least distance of many points of one line from the other. */
function sampled(a: SweptLine, b: SweptLine): number {
  let least = Number.POSITIVE_INFINITY;
  for (let index = 0; index <= samples; index++) {
    const one = at(a, index / samples);
    least = Math.min(least, apart(one, nearest(b, one)));
  }
  return least;
}

describe("the distance of two straight lines", () => {
  it("is the least of any two of their points", () => {
    let crossing = 0;
    fc.assert(
      fc.property(line, line, (a, b) => {
        const found = lineDistance(a, b);
        const searched = sampled(a, b);
        expect(found).toBeLessThanOrEqual(searched + 1e-9);
        // No point of the line is farther than this from a sample.
        expect(searched - found).toBeLessThanOrEqual(apart(a.from, a.to) / (2 * samples) + 1e-9);
        if (found < Math.min(...[a.from, a.to].flatMap((one) => [apart(one, b.from), apart(one, b.to)])))
          crossing++;
      }),
      { numRuns: 200 },
    );
    expect(crossing).toBeGreaterThan(30);
  });

  it("worked by hand", () => {
    const straight = (from: Vector3, to: Vector3) => ({ from, to });
    const [o, x] = [
      { x: 0, y: 0, z: 0 },
      { x: 10, y: 0, z: 0 },
    ];
    expect(lineDistance(straight(o, x), straight({ x: 5, y: -3, z: 4 }, { x: 5, y: 3, z: 4 }))).toBe(4);
    expect(lineDistance(straight(o, x), straight({ x: 2, y: 3, z: 4 }, { x: 8, y: 3, z: 4 }))).toBe(5);
    expect(lineDistance(straight(o, x), straight({ x: 13, y: 4, z: 0 }, { x: 20, y: 4, z: 0 }))).toBe(5);
    expect(lineDistance(straight(o, x), straight({ x: 5, y: -1, z: 0 }, { x: 5, y: 1, z: 0 }))).toBe(0);
    expect(lineDistance(straight(o, o), straight({ x: 0, y: 3, z: 4 }, { x: 0, y: 3, z: 4 }))).toBe(5);
  });
});

describe("the room between two swept lines", () => {
  it("is the same from either, and shrinks by what the radii grow", () => {
    fc.assert(
      fc.property(line, line, (a, b) => {
        const found = clearance(a, b);
        expect(clearance(b, a)).toBeCloseTo(found, 9);
        expect(clearance({ ...a, radius: a.radius + 0.5 }, b)).toBeCloseTo(found - 0.5, 9);
      }),
    );
  });

  it("where they share room, no shorter move parts them", () => {
    let sharing = 0;
    fc.assert(
      fc.property(line, line, fc.array(point, { minLength: 20, maxLength: 20 }), (a, b, directions) => {
        const depth = -clearance(a, b);
        if (depth < 1e-3) return;
        sharing++;
        const after = (way: Vector3, by: number) => {
          const size = apart(way, { x: 0, y: 0, z: 0 });
          if (size < 1e-3) return 0;
          const shift = ({ x, y, z }: Vector3) => ({
            x: x + (way.x / size) * by,
            y: y + (way.y / size) * by,
            z: z + (way.z / size) * by,
          });
          return clearance({ ...a, from: shift(a.from), to: shift(a.to) }, b);
        };
        for (const way of directions) expect(after(way, depth * 0.999)).toBeLessThan(1e-9);
      }),
      { numRuns: 300 },
    );
    expect(sharing).toBeGreaterThan(20);
  });
});
