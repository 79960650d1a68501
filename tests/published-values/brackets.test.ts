/** Flat layout of bent sheet: FAA AC 43.13-1B (9/8/98), par. 4-56 and Table 4-7. */
import { expect, test } from "vitest";
import { bendAllowance, setback } from "../../server/src/core/methods/sheet-bends";

const rad = (degrees: number) => (degrees * Math.PI) / 180;

// D32, par. 4-56, p. 4-14: radius 0.25 in, sheet of 0.064 in; tolerance .001.
test.each([
  [45, 0.13],
  [135, 0.758],
])("setback of a bend of %d deg: %d in", (degrees, printed) => {
  expect(Math.abs(setback(rad(degrees), 0.25, 0.064) - printed)).toBeLessThanOrEqual(0.001);
});

// D33, computed by the formula of par. 4-56: radius 0.125 in, sheet of 0.040 in; tolerance .0005.
test("bend allowance of 90 deg: 0.2242 in", () => {
  expect(Math.abs(bendAllowance(90, 0.125, 0.04) - 0.2242)).toBeLessThanOrEqual(0.0005);
});

// Derived: the two constants are a degree in radians, and the same times the neutral line's share of the thickness.
test("the formula is the arc of a line 0.447 of the thickness out", () => {
  const arc = (degrees: number) => rad(degrees) * (0.125 + 0.447 * 0.04);
  for (const degrees of [1, 30, 90, 170]) {
    expect(Math.abs(bendAllowance(degrees, 0.125, 0.04) / arc(degrees) - 1)).toBeLessThan(0.002);
  }
});
