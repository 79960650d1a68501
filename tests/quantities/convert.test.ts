import { expect, test } from "vitest";
import {
  allDimensions,
  convert,
  type Dimension,
  inUnit,
  parseQuantity,
  type Quantity,
  quantityOf,
  unitsOf,
} from "../../server/src/core/quantities";
import { fc } from "../support/random";

const value = fc
  .double({ min: -1e9, max: 1e9, noNaN: true })
  .filter((value) => value === 0 || Math.abs(value) > 1e-9);

/** Near absolute zero or 0 degF a temperature is a small difference of numbers of some hundreds. */
function scaleOf(dimension: Dimension, value: number): number {
  return dimension === "temperature" ? Math.max(Math.abs(value), 500) : Math.abs(value);
}

const pair = fc.constantFrom(
  ...allDimensions.flatMap((dimension) =>
    unitsOf(dimension).flatMap((from) => unitsOf(dimension).map((to) => ({ dimension, from, to }))),
  ),
);

test("there and back is the same within 1e-12", () => {
  fc.assert(
    fc.property(pair, value, ({ dimension, from, to }, value) => {
      const back = convert(convert(value, from, to, dimension), to, from, dimension);
      expect(Math.abs(back - value)).toBeLessThanOrEqual(1e-12 * scaleOf(dimension, value));
    }),
    { numRuns: 2000 },
  );
});

test("through SI and directly is the same within 1e-12", () => {
  fc.assert(
    fc.property(pair, value, ({ dimension, from, to }, value) => {
      const quantity = quantityOf(value, from, dimension);
      const direct = quantityOf(inUnit(quantity, to), to, dimension).si;
      expect(Math.abs(direct - quantity.si)).toBeLessThanOrEqual(1e-12 * scaleOf(dimension, quantity.si));
    }),
    { numRuns: 2000 },
  );
});

test("equal lengths are the same number to the last bit, whatever unit they are written in", () => {
  fc.assert(
    fc.property(fc.integer({ min: -1_000_000, max: 1_000_000 }), (thousandths) => {
      // Both are exact decimals of few digits, as somebody would write them.
      const feet = thousandths / 1000;
      const inches = (thousandths * 12) / 1000;
      expect(quantityOf(inches, "in").si).toBe(quantityOf(feet, "ft").si);
      expect(convert(inches, "in", "ft")).toBe(feet);
      expect(convert(feet, "ft", "in")).toBe(inches);
      expect(convert(inches, "in", "mm")).toBe((thousandths * 3048) / 10_000);
    }),
  );
});

test("known conversions come out without a trace of binary", () => {
  expect(quantityOf(12, "in").si).toBe(quantityOf(1, "ft").si);
  expect(convert(0.1, "ft", "in")).toBe(1.2);
  expect(convert(35, "in", "m")).toBe(0.889);
  expect(convert(180, "deg", "rad")).toBe(Math.PI);
  expect(convert(60, "rpm", "rad/s")).toBe(2 * Math.PI);
  expect(convert(1, "psf", "psi")).toBe(1 / 144);
  expect(convert(-0, "ft", "in")).toBe(0);
});

test("a temperature and a difference of temperatures are two things", () => {
  expect(convert(10, "degC", "degF", "temperature")).toBe(50);
  expect(convert(10, "degC", "degF", "temperature-difference")).toBe(18);
});

test("a quantity in its own unit is what was written", () => {
  fc.assert(
    fc.property(pair, value, ({ dimension, from }, value) => {
      expect(inUnit(quantityOf(value, from, dimension), from)).toBe(value);
    }),
  );
});

test("what is not finite stays what it is", () => {
  expect(convert(Number.POSITIVE_INFINITY, "s", "min")).toBe(Number.POSITIVE_INFINITY);
});

test("the types keep dimensions apart", () => {
  const length: Quantity<"length"> = quantityOf(1, "ft");
  const any: Quantity = length;
  expect(inUnit(any, "in")).toBe(12);
  const nine: Quantity<"load-factor"> = quantityOf(9, "g", "load-factor");
  expect(parseQuantity("9 g", { dimension: "load-factor" })).toEqual({ quantity: nine });

  () => {
    // @ts-expect-error: a length is not a mass
    convert(1, "ft", "lb");
    // @ts-expect-error: a length has no kilograms
    inUnit(length, "kg");
    // @ts-expect-error: "degC" alone may be a temperature or a difference
    convert(10, "degC", "degF");
    // @ts-expect-error: "g" alone may be a gram or a load factor
    quantityOf(9, "g");
    // @ts-expect-error: a length is not a mass
    const mass: Quantity<"mass"> = length;
    return mass;
  };
});
