/** Tolerances behind quantities: how they are written, what is made of them, and where they may not stand. */

import { describe, expect, it } from "vitest";
import { parseQuantity } from "../../server/src/core/quantities";
import { fc } from "../support/random";

const weight = { dimension: "mass", sign: "not-negative", tolerance: true } as const;

describe("a weight with a tolerance", () => {
  it.each([
    ["31.2 ± 0.5 lb", 31.2, 0.5],
    ["31.2±0.5lb", 31.2, 0.5],
    ["31.2 +/- 0.5 lb", 31.2, 0.5],
    ["31.2 + / - 0.5 lb", 31.2, 0.5],
    ["31.2 lb ± 0.5 lb", 31.2, 0.5],
    ["31.2 lb ± 8 oz", 31.2, 0.5],
    ["31 1/4 ± 1/8 lb", 31.25, 0.125],
    ["31.2 ± 0 lb", 31.2, 0],
  ])("%s", (text, written, tolerance) => {
    const read = parseQuantity(text, weight);
    expect(read).toMatchObject({ quantity: { written, unit: "lb" } });
    expect("quantity" in read && read.quantity.tolerance).toBeCloseTo(tolerance, 12);
  });

  it("without one has none", () => {
    const read = parseQuantity("31.2 lb", weight);
    expect("quantity" in read && read.quantity.tolerance).toBeUndefined();
  });

  it.each([
    ["31.2 ±", "not-a-number", "±"],
    ["31.2 ± lb", "not-a-number", "± lb"],
    ["31.2 ± 0.5", "unit-missing", "31.2"],
    ["31.2 lb ± 0.5", "unit-missing", "0.5"],
    ["31.2 lb ± 0.5 in", "wrong-dimension", "in"],
    ["31.2 ± 0.5 in", "wrong-dimension", "in"],
    ["31.2 ± -0.5 lb", "impossible", "-0.5"],
    ["31.2 ± 0.5 lb each", "not-understood", "each"],
    ["31.2 ± 0.5 pund", "unit-unknown", "pund"],
    ["± 0.5 lb", "not-a-number", "± 0.5 lb"],
  ])("%s is told what is wrong with it", (text, kind, part) => {
    const read = parseQuantity(text, weight);
    if (!("problem" in read)) throw new Error("taken as right");
    expect(read.problem.kind).toBe(kind);
    expect(text.slice(read.problem.at.start, read.problem.at.end)).toBe(part);
  });

  it("keeps a place inside its text, whatever stands around the sign", () => {
    const piece = fc.constantFrom("±", "+/-", "31.2", " ", "lb", "in", "pund", "-", "+", "each", "1/8", ",");
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 8 }), (pieces) => {
        const text = pieces.join("");
        const read = parseQuantity(text, weight);
        if ("quantity" in read) return;
        const { start, end } = read.problem.at;
        expect(start).toBeGreaterThanOrEqual(0);
        expect(end).toBeGreaterThanOrEqual(start);
        expect(end).toBeLessThanOrEqual(text.length);
      }),
    );
  });
});

it("where no tolerance is computed with, one is told so, with the value that may stand there", () => {
  const read = parseQuantity("14.5 ± 0.2 ft", { dimension: "length" });
  expect(read).toMatchObject({ problem: { kind: "tolerance-unused", bare: "14.5 ft" } });
});
