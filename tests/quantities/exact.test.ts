import { expect, test } from "vitest";
import { exactly, over, times, toNumber } from "../../server/src/core/quantities/exact";
import { fc } from "../support/random";

test("a number survives the way through a rational", () => {
  fc.assert(
    fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
      // Below this, numbers have fewer bits than a rounding to 53 leaves.
      fc.pre(value === 0 || Math.abs(value) >= 2.3e-308);
      expect(toNumber(exactly(value))).toBe(value === 0 ? 0 : value);
    }),
    { numRuns: 5000 },
  );
});

test("a quotient of whole numbers is rounded as the processor rounds it, however it is written", () => {
  const whole = fc.integer({ min: 1, max: Number.MAX_SAFE_INTEGER });
  fc.assert(
    fc.property(whole, whole, fc.boolean(), (a, b, negative) => {
      const expected = negative ? -a / b : a / b;
      // A common factor beyond 53 bits leads past the short way to the long one.
      const common = 10n ** 40n;
      const rational = { n: BigInt(negative ? -a : a) * common, d: BigInt(b) * common };
      expect(toNumber(rational)).toBe(expected);
      expect(toNumber(over(exactly(negative ? -a : a), exactly(b)))).toBe(expected);
    }),
    { numRuns: 5000 },
  );
});

test("a value just above a tie is not taken for the tie", () => {
  const tie = 2n ** 53n + 1n;
  expect(toNumber({ n: tie, d: 1n })).toBe(2 ** 53);
  expect(toNumber({ n: tie * 10n ** 30n + 1n, d: 10n ** 30n })).toBe(2 ** 53 + 2);
});

test("the ends of the range", () => {
  expect(toNumber(exactly("1e308"))).toBe(1e308);
  expect(toNumber(times(exactly("1e308"), exactly(100)))).toBe(Number.POSITIVE_INFINITY);
  expect(toNumber(exactly("5e-324"))).toBe(5e-324);
  expect(toNumber(exactly("1e-400"))).toBe(0);
});
