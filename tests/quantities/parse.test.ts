import { describe, expect, test } from "vitest";
import {
  allDimensions,
  type Dimension,
  dimensions,
  formatMeasure,
  isUnitOf,
  parseQuantity,
  type QuantityProblem,
  quantityOf,
  type Sign,
  unitsOf,
} from "../../server/src/core/quantities";
import { table } from "../../server/src/core/quantities/units";
import { fc } from "../support/random";

function problemOf(text: string, dimension: Dimension, sign: Sign = "any"): QuantityProblem {
  const parsed = parseQuantity(text, { dimension, sign });
  if ("quantity" in parsed) throw new Error(`read as ${JSON.stringify(parsed.quantity)}`);
  return parsed.problem;
}

function read(text: string, dimension: Dimension): string {
  const parsed = parseQuantity(text, { dimension });
  if ("problem" in parsed) return `${parsed.problem.kind}: ${JSON.stringify(parsed.problem)}`;
  const { written, unit } = parsed.quantity;
  return `${written} ${unit}`;
}

describe("what records write", () => {
  test.each<[string, Dimension, string]>([
    ["14.5 ft", "length", "14.5 ft"],
    ["0.040 in", "length", "0.04 in"],
    [".040 in", "length", "0.04 in"],
    ["14. ft", "length", "14 ft"],
    ["+3 in", "length", "3 in"],
    ["-7.75 in", "length", "-7.75 in"],
    ["\u22127.75 in", "length", "-7.75 in"],
    ["-0 in", "length", "0 in"],
    ["1/8 in", "length", "0.125 in"],
    ["1-1/4 in", "length", "1.25 in"],
    ["1 1/4 in", "length", "1.25 in"],
    ["-1-1/4 in", "length", "-1.25 in"],
    ['3/8"', "length", "0.375 in"],
    ["12-in", "length", "12 in"],
    ["  12\tin ", "length", "12 in"],
    ["1.2e-4 ohm/ft", "resistance-per-length", "0.00012 ohm/ft"],
    ["28V", "voltage", "28 V"],
    ["20%", "ratio", "20 %"],
    ["70\u00b0C", "temperature", "70 degC"],
    ["45\u00b0", "angle", "45 deg"],
    ["8 AWG", "gauge", "8 AWG"],
    ["AWG 8", "gauge", "8 AWG"],
    ["AWG-8", "gauge", "8 AWG"],
    ["0 AWG", "gauge", "0 AWG"],
    ["1/0 AWG", "gauge", "0 AWG"],
    ["00 AWG", "gauge", "-1 AWG"],
    ["2/0 AWG", "gauge", "-1 AWG"],
    ["000 AWG", "gauge", "-2 AWG"],
    ["AWG 4/0", "gauge", "-3 AWG"],
  ])("%j as %s is %s", (text, dimension, expected) => {
    expect(read(text, dimension)).toBe(expected);
  });
});

describe("spellings of the trade", () => {
  test.each<[string, Dimension, string]>([
    ["3 lbs", "mass", "3 lb"],
    ["3 LBS.", "mass", "3 lb"],
    ["3 pounds", "mass", "3 lb"],
    ["12 inches", "length", "12 in"],
    ["12 FT.", "length", "12 ft"],
    ["12 MM", "length", "12 mm"],
    ["5 amps", "current", "5 A"],
    ["5 ma", "current", "5 mA"],
    ["5 \u03a9", "resistance", "5 ohm"],
    ["5 m\u2126", "resistance", "5 mohm"],
    ["5 M\u03a9", "resistance", "5 Mohm"],
    ["5 Mohms", "resistance", "5 Mohm"],
    ["1 ohms per 1,000 feet", "resistance-per-length", "1 ohm/1000 ft"],
    ["1 \u03a9/km", "resistance-per-length", "1 mohm/m"],
    ["6 lb / gal", "density", "6 lb/gal"],
    ["6 pounds per US gallon", "density", "6 lb/gal"],
    ["1 lb/cu. ft.", "density", "1 lb/ft3"],
    ["20 U.S. gal", "volume", "20 gal"],
    ["4 sq in", "area", "4 in2"],
    ["4 in\u00b2", "area", "4 in2"],
    ["4 in^2", "area", "4 in2"],
    ["100 lbs/sq ft", "area-load", "100 lb/ft2"],
    ["100 psf", "area-load", "100 lb/ft2"],
    ["100 psf", "pressure", "100 psf"],
    ["24 amp-hours", "charge", "24 Ah"],
    ["2 hrs", "time", "2 h"],
    ["400 CFM", "volume-flow", "400 cfm"],
    ["400 cubic feet per minute", "volume-flow", "400 cfm"],
    ["2 in. w.g.", "pressure", "2 inH2O"],
    ["29.92 in. Hg", "pressure", "29.92 inHg"],
    ["100 kts", "velocity", "100 kt"],
    ["3.8 G", "load-factor", "3.8 g"],
    ["3.8 g", "mass", "3.8 g"],
    ["150 lb", "force", "150 lbf"],
    ["60 deg F", "temperature", "60 degF"],
    ["60 degrees Celsius", "temperature", "60 degC"],
    // The trade writes moment and torque alike; what is expected decides.
    ["25 in-lb", "torque", "25 in lb"],
    ["25 in-lb", "moment", "25 lb in"],
    ["25 lb\u00b7in", "torque", "25 in lb"],
    ["25 ft-lbs", "torque", "25 ft lb"],
    ["3 N\u00b7m", "torque", "3 N m"],
  ])("%j as %s is %s", (text, dimension, expected) => {
    expect(read(text, dimension)).toBe(expected);
  });

  test("every symbol and alias names its own unit and no other of its dimension", () => {
    for (const dimension of allDimensions) {
      for (const [symbol, { aliases }] of Object.entries(table[dimension])) {
        for (const spelling of [symbol, ...aliases, symbol.replaceAll(" ", "-")]) {
          expect(read(`8 ${spelling}`, dimension)).toBe(`8 ${symbol}`);
        }
      }
    }
  });

  test("every example is right", () => {
    for (const dimension of allDimensions) {
      expect(parseQuantity(dimensions[dimension].example, { dimension, sign: "positive" })).toHaveProperty(
        "quantity",
      );
    }
  });
});

describe("not a number", () => {
  test.each<[string, Dimension, string, string[]]>([
    ["14,5 ft", "length", "decimal-comma", ["14.5 ft"]],
    ["-0,040 in", "length", "decimal-comma", ["-0.040 in"]],
    ["1.200,5 lb", "mass", "decimal-comma", ["1200.5 lb"]],
    ["1,200 lb", "mass", "thousands-comma", ["1200 lb", "1.200 lb"]],
    ["1,234.5 lb", "mass", "thousands-comma", ["1234.5 lb"]],
    ["1,234,567 lb", "mass", "thousands-comma", ["1234567 lb"]],
    ["1 200 lb", "mass", "thousands-space", ["1200 lb"]],
    ["1 123 1234 lb", "mass", "malformed", []],
    ["1,2,3 lb", "mass", "malformed", []],
    ["1.2.3 lb", "mass", "malformed", []],
    ["1/2/3 in", "length", "malformed", []],
    ["5-6 in", "length", "malformed", []],
    ["5 6 in", "length", "malformed", []],
    ["", "length", "empty", []],
    ["  ", "length", "empty", []],
    ["ft", "length", "no-number", []],
    ["ca. 5 ft", "length", "no-number", []],
    ["AWG", "gauge", "no-number", []],
  ])("%j as %s: %s", (text, dimension, reason, suggestions) => {
    expect(problemOf(text, dimension)).toMatchObject({ kind: "not-a-number", reason, suggestions });
  });

  test("every suggestion can be read", () => {
    for (const text of ["14,5 ft", "1,200 ft", "1 200 ft", "-1.234,5 ft", "1,234,567.5 ft"]) {
      const problem = problemOf(text, "length");
      const suggestions = problem.kind === "not-a-number" ? problem.suggestions : [];
      expect(suggestions.length).toBeGreaterThan(0);
      for (const one of suggestions)
        expect(parseQuantity(one, { dimension: "length" })).toHaveProperty("quantity");
    }
  });
});

describe("wrong or missing unit", () => {
  test("a number alone", () => {
    expect(problemOf(" 14.5 ", "length")).toEqual({
      kind: "unit-missing",
      at: { start: 1, end: 5 },
      expected: "length",
      example: "14.5 ft",
    });
    expect(problemOf("0.2", "ratio").kind).toBe("unit-missing");
    expect(problemOf("8", "gauge").kind).toBe("unit-missing");
  });

  test.each<[string, Dimension, string[]]>([
    ["12 foots", "length", ["ft"]],
    ["12 inchs", "length", ["in"]],
    ["12 Ampers", "current", ["A"]],
    ["3 pouds", "mass", ["lb"]],
    ["150 spi", "pressure", ["psi"]],
    // Milli and mega are a billion times apart: never guessed from capitals.
    ["12 MA", "current", ["mA"]],
    ["12 MOHM", "resistance", ["Mohm", "mohm"]],
    ["12 constructor", "mass", []],
    ["12 __proto__", "mass", []],
  ])("%j as %s: nearest are %j", (text, dimension, nearest) => {
    expect(problemOf(text, dimension)).toMatchObject({ kind: "unit-unknown", nearest });
  });

  test.each<[string, Dimension, Dimension, string]>([
    ["12 A", "voltage", "current", "A"],
    ["3 lb", "length", "mass", "lb"],
    ["3 in", "mass", "length", "in"],
    ["8 AWG", "length", "gauge", "AWG"],
    ["1/0 AWG", "area", "gauge", "AWG"],
    ["8.37 mm2", "gauge", "area", "mm2"],
    ["20 degC", "ratio", "temperature", "degC"],
    ["5 lb in a box", "length", "moment", "lb in"],
  ])("%j as %s is a %s", (text, expected, found, unit) => {
    expect(problemOf(text, expected)).toMatchObject({ kind: "wrong-dimension", expected, found, unit });
  });

  test.each<[string, Dimension, string, string]>([
    ["14.5 ft long", "length", "14.5 ft", "long"],
    ["3 lb 4 oz", "mass", "3 lb", "4 oz"],
    ["12 A (max)", "current", "12 A", "(max)"],
    // "lb in" is a unit too, but not of what is expected here.
    ["3 lb in tank 2", "mass", "3 lb", "in tank 2"],
    ["AWG 8 shielded", "gauge", "AWG 8", "shielded"],
  ])("%j as %s: understood %j, not %j", (text, dimension, understood, rest) => {
    const problem = problemOf(text, dimension);
    expect(problem).toMatchObject({ kind: "not-understood", understood });
    expect(text.slice(problem.at.start, problem.at.end)).toBe(rest);
  });
});

test.each<[string, Dimension, string | undefined]>([
  ["21 ft 6 in", "length", "21.5 ft"],
  ["3 lb 4 oz", "mass", "3.25 lb"],
  ["1 h 30 min", "time", "1.5 h"],
  ["21 ft 6", "length", undefined],
  ["21 ft 14 in", "length", undefined],
  ["21 ft 6 lb", "length", undefined],
  ["21 ft 6 in 3 mm", "length", undefined],
  ["-21 ft 6 in", "length", undefined],
])("%j as %s: in one unit it would be %j", (text, dimension, meant) => {
  const problem = problemOf(text, dimension);
  expect(problem.kind).toBe("not-understood");
  expect(problem).toEqual(expect.objectContaining(meant ? { meant } : {}));
  expect("meant" in problem).toBe(meant !== undefined);
});

describe("impossible", () => {
  test.each<[string, Dimension, Sign, string, string | undefined]>([
    ["-3 lb", "mass", "not-negative", "negative", "at-least 0 lb"],
    ["-3 lb", "mass", "positive", "not-positive", "more-than 0 lb"],
    ["0 lb", "mass", "positive", "not-positive", "more-than 0 lb"],
    ["-460 degF", "temperature", "any", "below-absolute-zero", "at-least -459.67 degF"],
    ["-273.16 degC", "temperature", "any", "below-absolute-zero", "at-least -273.15 degC"],
    ["31 AWG", "gauge", "any", "not-a-gauge", "at-most 30 AWG"],
    ["5/0 AWG", "gauge", "any", "not-a-gauge", "at-least 4/0 AWG"],
    ["00000 AWG", "gauge", "any", "not-a-gauge", "at-least 4/0 AWG"],
    ["8.5 AWG", "gauge", "any", "not-a-gauge", undefined],
    ["-2 AWG", "gauge", "any", "not-a-gauge", undefined],
    ["0/0 AWG", "gauge", "any", "not-a-gauge", undefined],
    ["1e999 ft", "length", "any", "too-large", "at-most 1e15 ft"],
    ["-1e16 ft", "length", "any", "too-large", "at-most 1e15 ft"],
    ["1e-16 ft", "length", "any", "too-small", "at-least 1e-15 ft"],
    ["1e-400 ft", "length", "any", "too-small", "at-least 1e-15 ft"],
    [`1/${"9".repeat(400)} ft`, "length", "any", "too-small", "at-least 1e-15 ft"],
    ["1/0 in", "length", "any", "not-finite", undefined],
    ["NaN ft", "length", "any", "not-finite", undefined],
    [".inf ft", "length", "any", "not-finite", undefined],
    ["-Infinity ft", "length", "any", "not-finite", undefined],
  ])("%j as %s, %s: %s", (text, dimension, sign, reason, bound) => {
    const problem = problemOf(text, dimension, sign);
    expect(problem).toMatchObject({ kind: "impossible", reason, at: { start: 0 } });
    const { relation, unit, bound: value } = problem as Extract<QuantityProblem, { kind: "impossible" }>;
    expect(value === undefined ? undefined : `${relation} ${formatMeasure(value, unit, 12)}`).toBe(bound);
  });

  test("absolute zero itself is possible in every unit", () => {
    for (const text of ["0 K", "-273.15 degC", "-459.67 degF"]) {
      expect(parseQuantity(text, { dimension: "temperature" })).toMatchObject({ quantity: { si: 0 } });
    }
  });

  test("a temperature below zero is no negative value, and the thickest wires are gauges like others", () => {
    expect(parseQuantity("-40 degC", { dimension: "temperature", sign: "positive" })).toHaveProperty(
      "quantity",
    );
    expect(parseQuantity("4/0 AWG", { dimension: "gauge", sign: "positive" })).toHaveProperty("quantity");
  });
});

describe("any text", () => {
  const dimension = fc.constantFrom(...allDimensions);
  const sign = fc.constantFrom<Sign>("any", "not-negative", "positive");
  const pieces = fc
    .array(
      fc.constantFrom(..."0123456789.,/-+ eE%AWGinftlb\u00b0\u03a9\u2212'\"", "AWG", "1/0", "degC", " per "),
    )
    .map((parts) => parts.join(""));

  test("gives a possible quantity or a problem inside the text, and never throws", () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string({ unit: "binary" }), pieces),
        dimension,
        sign,
        (text, dimension, sign) => {
          const parsed = parseQuantity(text, { dimension, sign });
          if ("quantity" in parsed) {
            const { quantity } = parsed;
            expect(quantity.dimension).toBe(dimension);
            expect(isUnitOf(dimension, quantity.unit)).toBe(true);
            expect(Number.isFinite(quantity.si)).toBe(true);
            if (sign === "positive" && dimension !== "gauge") expect(quantity.si).toBeGreaterThanOrEqual(0);
          } else {
            const { start, end } = parsed.problem.at;
            expect(0 <= start && start <= end && end <= text.length).toBe(true);
            if (text.trim() !== "") expect(end).toBeGreaterThan(start);
          }
        },
      ),
      { numRuns: 2000 },
    );
  });

  test.each([
    ["digits", "1".repeat(1_000_000)],
    ["commas", "1,".repeat(500_000)],
    ["blanks", `1${" ".repeat(1_000_000)}x`],
    ["words", `1 ${"sq ft ".repeat(200_000)}`],
    ["a fraction", `1/${"1".repeat(1_000_000)} in`],
    ["groups", "1 123".repeat(200_000)],
    ["aughts", `${"0".repeat(1_000_000)} AWG`],
  ])("a million characters of %s are answered", (_, text) => {
    for (const dimension of ["length", "gauge"] as const) {
      expect(parseQuantity(text, { dimension })).toHaveProperty("problem");
    }
  });

  test("what is formatted in full reads back as it was, in every unit", () => {
    const unit = fc.constantFrom(
      ...allDimensions
        .filter((dimension) => dimension !== "gauge")
        .flatMap((dimension) => unitsOf(dimension).map((unit) => ({ dimension, unit }))),
    );
    const size = fc.double({ min: 1e-9, max: 1e12, noNaN: true });
    fc.assert(
      fc.property(unit, size, ({ dimension, unit }, value) => {
        const parsed = parseQuantity(formatMeasure(value, unit, 17), { dimension });
        expect(parsed).toEqual({ quantity: quantityOf(value, unit, dimension) });
      }),
    );
  });

  test("every gauge reads back", () => {
    for (let gauge = -3; gauge <= 30; gauge++) {
      const parsed = parseQuantity(formatMeasure(gauge, "AWG"), { dimension: "gauge" });
      expect(parsed).toEqual({ quantity: quantityOf(gauge, "AWG") });
    }
  });
});
