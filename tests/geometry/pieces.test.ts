import { describe, expect, test } from "vitest";
import type { Arc } from "../../server/src/core/methods/geometry";
import { nearestOnPiece } from "../../server/src/core/methods/geometry/outline";
import { boxGap, nearestOfSegments, type Segment } from "../../server/src/core/methods/geometry/segment";
import { fc } from "../support/random";
import { point, runs } from "./arbitraries";
import { apart, leastAlong, type Piece } from "./model";

const along =
  ({ from, to }: Segment): Piece =>
  (share) => ({ x: from.x * (1 - share) + to.x * share, y: from.y * (1 - share) + to.y * share });

const segment = fc.record({ from: point, to: point }).map((ends): Segment => ({ kind: "segment", ...ends }));

test("the distance of two segments against a search along both", () => {
  let crossings = 0;
  fc.assert(
    fc.property(segment, segment, (a, b) => {
      const found = nearestOfSegments(a, b);
      expect(Math.abs(apart(...found.between) - found.distance)).toBeLessThan(1e-12);
      expect(leastAlong([along(a)], (at) => apart(at, found.between[0]))).toBeLessThan(1e-6);
      expect(leastAlong([along(b)], (at) => apart(at, found.between[1]))).toBeLessThan(1e-6);
      const searched = leastAlong([along(a)], (at) => leastOf(at, b));
      expect(Math.abs(searched - found.distance)).toBeLessThan(1e-6);
      expect(boxGap(a, b)).toBeLessThan(found.distance + 1e-12);
      if (found.distance < 1e-12) crossings += 1;
    }),
    runs(150),
  );
  expect(crossings).toBeGreaterThan(15);
});

/** Distance of a point from a segment by thirds: the distance falls and then rises along it. */
function leastOf(at: { x: number; y: number }, segment: Segment): number {
  const place = along(segment);
  let [low, high] = [0, 1];
  for (let round = 0; round < 60; round++) {
    const third = (high - low) / 3;
    if (apart(at, place(low + third)) < apart(at, place(high - third))) high -= third;
    else low += third;
  }
  return apart(at, place((low + high) / 2));
}

describe("the nearest point of an arc", () => {
  const quarter: Arc = {
    kind: "arc",
    centre: { x: 1, y: 1 },
    radius: 2,
    start: 0,
    sweep: Math.PI / 2,
    from: { x: 3, y: 1 },
    to: { x: 1, y: 3 },
  };

  test.each([
    ["outside, in front of it", { x: 4, y: 4 }, { x: 1 + Math.SQRT2, y: 1 + Math.SQRT2 }],
    ["near its centre, in front of it", { x: 1.1, y: 1.1 }, { x: 1 + Math.SQRT2, y: 1 + Math.SQRT2 }],
    ["past its start", { x: 3, y: -2 }, { x: 3, y: 1 }],
    ["past its end", { x: -2, y: 3 }, { x: 1, y: 3 }],
    ["behind it, nearer to its start", { x: 0.5, y: 0 }, { x: 3, y: 1 }],
    ["behind it, nearer to its end", { x: 0, y: 0.5 }, { x: 1, y: 3 }],
  ])("from a point %s", (_, from, wanted) => {
    expect(apart(nearestOnPiece(from, quarter), wanted)).toBeLessThan(1e-12);
  });
});
