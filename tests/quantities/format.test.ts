import { describe, expect, test } from "vitest";
import {
  formatApart,
  formatMeasure,
  formatNumber,
  roundDown,
  roundUp,
} from "../../server/src/core/quantities";
import { fc } from "../support/random";

describe("formatNumber", () => {
  test.each<[number, string]>([
    [0, "0"],
    [-0, "0"],
    [28, "28"],
    [28.00001, "28"],
    [0.41, "0.41"],
    [0.4128, "0.4128"],
    [0.41285, "0.4128"],
    [-0.5, "-0.5"],
    [9.99996, "10"],
    [0.000_012_345_6, "0.00001235"],
    [1e-6, "0.000001"],
    [9.999e-7, "9.999e-7"],
    [38_466.2, "38466"],
    [123_456_789.6, "123456790"],
    [999_999_999.4, "999999999"],
    [1e9, "1e9"],
    [-1.5e12, "-1.5e12"],
    [1000, "1000"],
  ])("%d is %s", (value, expected) => {
    expect(formatNumber(value)).toBe(expected);
  });

  test("with as many digits as are asked for", () => {
    expect(formatNumber(Math.PI, 2)).toBe("3.1");
    expect(formatNumber(Math.PI, 7)).toBe("3.141593");
  });

  test("is within half of its last digit, and has no exponent between 1e-6 and 1e9", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 999_999_999, noNaN: true }), (value) => {
        const text = formatNumber(value);
        expect(text).toMatch(/^\d+(\.\d*[1-9])?$/);
        expect(Math.abs(Number(text) - value)).toBeLessThanOrEqual(Math.max(0.000_500_1 * value, 1e-15));
        expect(formatNumber(-value)).toBe(`-${text}`);
      }),
      { numRuns: 2000 },
    );
  });

  test("does not lose a number that is none", () => {
    expect(formatNumber(Number.NaN)).toBe("NaN");
    expect(formatNumber(Number.NEGATIVE_INFINITY)).toBe("-Infinity");
  });
});

test("formatApart shows which of two numbers is larger", () => {
  expect(formatApart(0.500_01, 0.5)).toEqual(["0.50001", "0.5"]);
  expect(formatApart(0.61, 0.5)).toEqual(["0.61", "0.5"]);
  expect(formatApart(0.5, 0.5)).toEqual(["0.5", "0.5"]);
  fc.assert(
    fc.property(fc.double({ min: 1e-6, max: 1e8 }), fc.integer({ min: 1, max: 1000 }), (a, ulps) => {
      const b = a * (1 + ulps * Number.EPSILON);
      fc.pre(b > a);
      const [lower, upper] = formatApart(a, b).map(Number);
      expect(lower!).toBeLessThan(upper!);
    }),
  );
});

test.each<[number, Parameters<typeof formatMeasure>[1], string]>([
  [0.41, "V", "0.41 V"],
  [20, "%", "20 %"],
  [70, "degC", "70 degC"],
  [8, "AWG", "8 AWG"],
  [0, "AWG", "1/0 AWG"],
  [-3, "AWG", "4/0 AWG"],
  [1.02, "ohm/1000 ft", "1.02 ohm/1000 ft"],
])("formatMeasure(%d, %j) is %j", (value, unit, expected) => {
  expect(formatMeasure(value, unit)).toBe(expected);
});

describe("rounding the safe way", () => {
  test.each<[number, number, number, number]>([
    // value, step, up, down
    [7.6964, 0.1, 7.7, 7.6],
    [7.7, 0.1, 7.7, 7.7],
    [0.1 + 0.2, 0.1, 0.3, 0.3],
    [18.33, 0.1, 18.4, 18.3],
    [-0.5, 1, 0, -1],
    [-7.6964, 0.1, -7.6, -7.7],
    [0, 5, 0, 0],
    [161, 5, 165, 160],
  ])("%d in steps of %d: up %d, down %d", (value, step, up, down) => {
    expect(roundUp(value, step)).toBe(up);
    expect(roundDown(value, step)).toBe(down);
  });

  test("never falls on the wrong side, but for the noise of binary numbers, and never a whole step off", () => {
    const step = fc.constantFrom(0.001, 0.01, 0.05, 0.1, 0.25, 1, 5, 10);
    fc.assert(
      fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), step, (value, step) => {
        const noise = 1e-8 * Math.max(Math.abs(value), step);
        const up = roundUp(value, step);
        const down = roundDown(value, step);
        expect(up).toBeGreaterThanOrEqual(value - noise);
        expect(down).toBeLessThanOrEqual(value + noise);
        expect(up - value).toBeLessThan(step + noise);
        expect(value - down).toBeLessThan(step + noise);
        expect(roundUp(up, step)).toBe(up);
        expect(roundDown(down, step)).toBe(down);
      }),
      { numRuns: 2000 },
    );
  });

  test("a step that is not above zero, or a value that is not finite, changes nothing", () => {
    expect(roundUp(1.5, 0)).toBe(1.5);
    expect(roundDown(1.5, -1)).toBe(1.5);
    expect(roundUp(Number.POSITIVE_INFINITY, 1)).toBe(Number.POSITIVE_INFINITY);
  });
});
