/**
 * Worked values of plane geometry. None of them is from a document: each was derived by hand and computed a
 * second time by brute force; the standing of all is "derived".
 */
import { describe, expect, test } from "vitest";
import {
  area,
  boltCircleSpacing,
  circleOverlapArea,
  type Placed,
  perimeter,
  relation,
  type Shape,
} from "../../server/src/core/methods/geometry";

const circle = (radius: number): Shape => ({ kind: "circle", diameter: 2 * radius });
const slot = (length: number, width: number): Shape => ({ kind: "slot", length, width });
const rounded = (width: number, height: number, cornerRadius: number): Shape => ({
  kind: "rectangle",
  width,
  height,
  cornerRadius,
});
const at = (x: number, y: number, shape: Shape): Placed => ({ shape, at: { x, y }, angle: 0 });

function gap(a: Placed, b: Placed): number {
  const found = relation(a, b);
  return found.kind === "clear" ? found.distance : Number.NaN;
}

function expectWithin(found: number, wanted: number, tolerance: number): void {
  expect(Math.abs(found - wanted)).toBeLessThanOrEqual(tolerance);
}

describe("gaps", () => {
  // D35, derived: 5 between the centres, less both radii; tolerance 1e-6.
  test("two circles", () => {
    expectWithin(gap(at(0, 0, circle(1)), at(3, 4, circle(0.5))), 3.5, 1e-6);
  });

  // D36, derived: √(2² + 1²) from the end of the middle line, less .5 and .25; tolerance 1e-5.
  test("slot and circle", () => {
    expectWithin(gap(at(0, 0, slot(3, 1)), at(3, 1, circle(0.25))), 1.48607, 1e-5);
    expectWithin(gap(at(0, 0, slot(3, 1)), at(3, 1, circle(0.25))), Math.sqrt(5) - 0.75, 1e-14);
  });

  // D37, derived: parallel middle lines 2 apart, less .5 and .4; tolerance 1e-6.
  test("two slots", () => {
    expectWithin(gap(at(0, 0, slot(3, 1)), at(0.5, 2, slot(2.8, 0.8))), 1.1, 1e-6);
  });

  // D38, derived: past a rounded corner, and square to a side; tolerance 1e-5.
  test("rounded rectangle and circle", () => {
    expectWithin(gap(at(0, 0, rounded(4, 3, 0.5)), at(4, 3, circle(0.25))), 2.45156, 1e-5);
    expectWithin(gap(at(0, 0, rounded(4, 3, 0.5)), at(4, 3, circle(0.25))), Math.sqrt(10.25) - 0.75, 1e-14);
    expectWithin(gap(at(0, 0, rounded(4, 3, 0.5)), at(3, 0.5, circle(0.25))), 0.75, 1e-5);
  });
});

describe("areas and perimeters", () => {
  // D39, derived: πW²/4 + (L − W)W and wh − (4 − π)r²; πW + 2(L − W) and 2(w + h) − (8 − 2π)r; tolerance 1e-5.
  test("slot and rounded rectangle", () => {
    expectWithin(area(slot(3, 1)), 2.785398, 1e-5);
    expectWithin(area(rounded(4, 3, 0.5)), 11.785398, 1e-5);
    expectWithin(perimeter(slot(3, 1)), 7.141593, 1e-5);
    expectWithin(perimeter(rounded(4, 3, 0.5)), 13.141593, 1e-5);
  });

  // D40, derived: a 5 × 4 rectangle less a corner of 2 × 2 / 2; tolerance 1e-5.
  test("polygon", () => {
    const points = [
      { x: 0, y: 0 },
      { x: 5, y: 0 },
      { x: 5, y: 2 },
      { x: 3, y: 4 },
      { x: 0, y: 4 },
    ];
    expectWithin(area({ kind: "polygon", points }), 18, 1e-5);
    expectWithin(perimeter({ kind: "polygon", points }), 16.828427, 1e-5);
  });
});

describe("circles", () => {
  // D41, derived: chord D·sin(π/n) of 8 rivets on a 6.0 in circle; tolerance 1e-4.
  test("spacing on a bolt circle", () => {
    expectWithin(boltCircleSpacing(6, 8), 2.2961, 1e-4);
    expect(boltCircleSpacing(6, 2)).toBe(6);
    expect(boltCircleSpacing(6, 1)).toBe(Infinity);
  });

  // D42, derived: 2π/3 − √3/2 for unit circles 1 apart; tolerance 1e-5.
  test("overlap of two circles", () => {
    expectWithin(circleOverlapArea(1, 1, 1), 1.22837, 1e-5);
    expectWithin(circleOverlapArea(1, 1, 1), (2 * Math.PI) / 3 - Math.sqrt(3) / 2, 1e-12);
  });
});
