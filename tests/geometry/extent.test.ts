/** Widths of shapes across a direction, against a search over their sampled boundaries. */

import { expect, it } from "vitest";
import { extentAlong, greatestExtent } from "../../server/src/core/methods/geometry";
import { fc } from "../support/random";
import { placed as anyPlaced, runs } from "./arbitraries";
import { boundaryPieces, leastAlong } from "./model";

it("the width along a direction is that of the boundary", () => {
  fc.assert(
    fc.property(anyPlaced, fc.double({ min: 0, max: Math.PI, noNaN: true }), (placed, direction) => {
      const pieces = boundaryPieces(placed);
      const along = (x: number, y: number) => x * Math.cos(direction) + y * Math.sin(direction);
      const least = leastAlong(pieces, ({ x, y }) => along(x, y));
      const most = -leastAlong(pieces, ({ x, y }) => -along(x, y));
      const found = extentAlong(placed, direction);
      expect(Math.abs(found - (most - least))).toBeLessThanOrEqual(1e-6 * (1 + found));
    }),
    runs(40),
  );
});

it("no direction gives more than the greatest width, and its own direction gives it", () => {
  fc.assert(
    fc.property(anyPlaced, fc.double({ min: 0, max: Math.PI, noNaN: true }), (placed, direction) => {
      const { length, direction: own } = greatestExtent(placed);
      expect(extentAlong(placed, direction)).toBeLessThanOrEqual(length * (1 + 1e-12) + 1e-12);
      expect(Math.abs(extentAlong(placed, own) - length)).toBeLessThanOrEqual(1e-9 * (1 + length));
    }),
    runs(200),
  );
});
