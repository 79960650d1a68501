import { describe, expect, test } from "vitest";
import { armToPercentMac, combine, type PointMass } from "../../server/src/core/methods/balance";
import {
  type Envelope,
  type LimitPoint,
  type LimitSide,
  limitAt,
} from "../../server/src/core/methods/envelope";
import { roundUp } from "../../server/src/core/quantities";
import { isAtMost, isBelow, sameWithinRounding } from "../../server/src/core/rounding";
import { fc } from "../support/random";

/** What physics and geometry demand, whatever the numbers. No published values here. */

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });
const weight = number(0.1, 20_000);
const arm = number(-500, 500);
const side = fc.constantFrom<LimitSide>("forward", "aft");
const item = fc.record({ weight, arm });
const items = fc.array(item, { minLength: 1, maxLength: 12 });

/** Largest arm or moment arm in play is 1,000 or so: noise is far below this. */
const closeTo = (actual: number | undefined, wanted: number, scale = 1000) => {
  expect(actual).toBeDefined();
  expect(Math.abs(actual! - wanted), `${actual} for ${wanted}`).toBeLessThan(1e-9 * scale);
};

const shifted = (by: number) => (point: PointMass) => ({ ...point, arm: point.arm + by });

describe("centre of gravity", () => {
  test("moves with the datum and nothing else does", () => {
    fc.assert(
      fc.property(items, arm, (list, datum) => {
        const [here, there] = [combine(list), combine(list.map(shifted(datum)))];
        closeTo(there.arm, here.arm! + datum, 10_000);
        expect(there.weight).toBe(here.weight);
      }),
    );
  });

  test("does not depend on the order", () => {
    fc.assert(
      fc.property(
        items.chain((list) =>
          fc.tuple(fc.constant(list), fc.shuffledSubarray(list, { minLength: list.length })),
        ),
        ([list, shuffled]) => closeTo(combine(shuffled).arm, combine(list).arm!),
      ),
    );
  });

  test("of lumps is that of their parts", () => {
    fc.assert(
      fc.property(items, items, (left, right) => {
        const lump = combine(left);
        closeTo(
          combine([{ weight: lump.weight, arm: lump.arm! }, ...right]).arm,
          combine([...left, ...right]).arm!,
        );
      }),
    );
  });

  test("lies between the outermost items", () => {
    fc.assert(
      fc.property(items, (list) => {
        const arms = list.map((each) => each.arm);
        const centre = combine(list).arm!;
        expect(isAtMost(Math.min(...arms), centre, 1000)).toBe(true);
        expect(isAtMost(centre, Math.max(...arms), 1000)).toBe(true);
      }),
    );
  });

  test("is the same in pounds and inches as in kilograms and metres", () => {
    fc.assert(
      fc.property(items, (list) => {
        const metric = list.map((each) => ({ weight: each.weight * 0.45359237, arm: each.arm * 0.0254 }));
        closeTo(combine(metric).arm! / 0.0254, combine(list).arm!);
      }),
    );
  });

  test("has no place where weights cancel, not even after rounding", () => {
    expect(combine([]).arm).toBeUndefined();
    expect(combine([{ weight: 0, arm: 40 }]).arm).toBeUndefined();
    const swapped = combine([
      { weight: -0.3, arm: 20 },
      { weight: 0.1, arm: 50 },
      { weight: 0.2, arm: 50 },
    ]);
    expect(swapped.weight).not.toBe(0);
    expect(swapped.arm).toBeUndefined();
    closeTo(swapped.moment, 9);
  });
});

describe("what is rounded up", () => {
  test("never falls short, and by less than a step more", () => {
    fc.assert(
      fc.property(number(0, 5000), fc.constantFrom(0.01, 0.05, 0.1, 0.5, 1), (needed, step) => {
        const fitted = roundUp(needed, step);
        expect(isAtMost(needed, fitted)).toBe(true);
        expect(fitted - needed).toBeLessThan(step * (1 + 1e-9));
      }),
    );
  });

  test("a multiple of the step stays where it is", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 50_000 }), fc.constantFrom(0.01, 0.1, 0.2, 1), (steps, step) => {
        closeTo(roundUp(steps * step, step), steps * step, 1);
      }),
    );
    closeTo(roundUp(1.1, 0.1), 1.1, 1);
  });
});

describe("per cent of the mean chord", () => {
  test("is nothing at the leading edge and 100 at the trailing edge, and does not depend on the datum", () => {
    fc.assert(
      fc.property(arm, arm, number(1, 300), arm, (at, leadingEdge, length, datum) => {
        const percent = armToPercentMac(at, { leadingEdge, length })!;
        closeTo(armToPercentMac(leadingEdge, { leadingEdge, length }), 0);
        closeTo(armToPercentMac(leadingEdge + length, { leadingEdge, length }), 100, 1e5);
        closeTo(armToPercentMac(at + datum, { leadingEdge: leadingEdge + datum, length }), percent, 1e6);
      }),
    );
  });

  test("has no meaning without a length", () => {
    expect(armToPercentMac(30, { leadingEdge: 20, length: 0 })).toBeUndefined();
    expect(armToPercentMac(30, { leadingEdge: 20, length: -1 })).toBeUndefined();
  });
});

describe("envelope", () => {
  /** Limit points at different weights, light to heavy. */
  const line = fc
    .uniqueArray(fc.integer({ min: 500, max: 10_000 }), { minLength: 2, maxLength: 8 })
    .chain((weights) =>
      fc
        .array(arm, { minLength: weights.length, maxLength: weights.length })
        .map((arms): LimitPoint[] =>
          weights.toSorted((a, b) => a - b).map((each, index) => ({ weight: each, arm: arms[index]! })),
        ),
    );
  const shuffledLine = line.chain((points) =>
    fc.tuple(fc.constant(points), fc.shuffledSubarray(points, { minLength: points.length })),
  );
  const covered = (limit: ReturnType<typeof limitAt>): number => {
    expect(limit.covered).toBe(true);
    return limit.covered ? limit.arm : Number.NaN;
  };

  test("is straight between neighbouring points, in whatever order they come", () => {
    fc.assert(
      fc.property(shuffledLine, side, fc.nat(), number(0, 1), ([points, shuffled], which, pick, part) => {
        const index = pick % (points.length - 1);
        const [low, high] = [points[index]!, points[index + 1]!];
        const at = low.weight + part * (high.weight - low.weight);
        closeTo(covered(limitAt(shuffled, which, at)), low.arm + part * (high.arm - low.arm), 10_000);
      }),
    );
  });

  test("says nothing outside the weights given, unless the lowest holds for less", () => {
    fc.assert(
      fc.property(line, side, number(0.01, 400), (points, which, beyond) => {
        const [lowest, highest] = [points[0]!, points.at(-1)!];
        expect(limitAt(points, which, highest.weight + beyond)).toEqual({
          covered: false,
          reason: "above-highest",
          boundary: highest.weight,
        });
        expect(limitAt(points, which, lowest.weight - beyond)).toEqual({
          covered: false,
          reason: "below-lowest",
          boundary: lowest.weight,
        });
        const orLess = [{ ...lowest, orLess: true }, ...points.slice(1)];
        expect(covered(limitAt(orLess, which, lowest.weight - beyond))).toBe(lowest.arm);
      }),
    );
    expect(limitAt([], "aft", 2000)).toEqual({ covered: false, reason: "no-points" });
    expect(limitAt([{ weight: 2000, arm: 40 }], "aft", Number.NaN).covered).toBe(false);
  });

  test("refuses “or less” above the lowest point", () => {
    const points = [
      { weight: 2000, arm: 35 },
      { weight: 2300, arm: 38, orLess: true },
    ];
    expect(limitAt(points, "forward", 2100)).toEqual({
      covered: false,
      reason: "misplaced-or-less",
      boundary: 2300,
    });
  });

  const steps: LimitPoint[] = [
    { weight: 1500, arm: 30 },
    { weight: 2000, arm: 32 },
    { weight: 2000, arm: 35 },
    { weight: 2500, arm: 36 },
  ];

  test("takes the stricter arm at a step, and each side's own arm beside it", () => {
    for (const points of [steps, steps.toReversed()]) {
      expect(covered(limitAt(points, "forward", 2000))).toBe(35);
      expect(covered(limitAt(points, "aft", 2000))).toBe(32);
      closeTo(covered(limitAt(points, "forward", 1750)), 31);
      closeTo(covered(limitAt(points, "forward", 2250)), 35.5);
    }
  });

  test("does not guess which side of a step an arm belongs to when the points are in no order", () => {
    const points = [steps[2]!, steps[0]!, steps[3]!, steps[1]!, { weight: 3000, arm: 37 }];
    expect(covered(limitAt(points, "forward", 2000))).toBe(35);
    for (const beside of [1750, 2250]) {
      expect(limitAt(points, "forward", beside)).toEqual({
        covered: false,
        reason: "unclear-step",
        boundary: 2000,
      });
    }
    closeTo(covered(limitAt(points, "forward", 2750)), 36.5);
  });

  test("an arm written twice is no step", () => {
    const points = [steps[3]!, steps[1]!, steps[1]!, steps[0]!, steps[0]!];
    closeTo(covered(limitAt(points, "aft", 2250)), 34);
    closeTo(covered(limitAt([steps[1]!, steps[3]!, steps[1]!], "aft", 2250)), 34);
  });

  /** An envelope whose forward limit lies ahead of its aft limit at every weight. */
  const envelope = fc.tuple(line, number(1, 60)).map(
    ([forward, width]): Envelope => ({
      forward,
      aft: forward.map((point) => ({ ...point, arm: point.arm + width })),
    }),
  );
  const within = fc.tuple(envelope, number(0, 1)).map(([box, part]) => {
    const [low, high] = [box.forward[0]!.weight, box.forward.at(-1)!.weight];
    return { box, at: low + part * (high - low) };
  });
  test("does not depend on the datum", () => {
    fc.assert(
      fc.property(within, side, arm, ({ box, at }, each, datum) => {
        const here = covered(limitAt(box[each], each, at));
        closeTo(covered(limitAt(box[each].map(shifted(datum)), each, at)), here + datum, 10_000);
      }),
    );
  });
});

describe("comparing past binary rounding", () => {
  test("the last bit decides nothing, a real difference does", () => {
    expect(sameWithinRounding(0.1 + 0.2, 0.3)).toBe(true);
    expect(sameWithinRounding(0.3, 0.300001)).toBe(false);
    expect(sameWithinRounding(0, 0)).toBe(true);
    expect(isAtMost(0.1 + 0.2, 0.3)).toBe(true);
    expect(isBelow(0.3, 0.1 + 0.2)).toBe(false);
    expect(isBelow(0.3, 0.300001)).toBe(true);
    expect(isAtMost(1e-13, 0)).toBe(false);
    expect(isAtMost(1e-13, 0, 100)).toBe(true);
  });

  test("what is no number is neither at, below nor the same", () => {
    for (const judge of [sameWithinRounding, isAtMost, isBelow]) {
      expect(judge(Number.NaN, 1)).toBe(false);
      expect(judge(1, Number.NaN)).toBe(false);
    }
    expect(sameWithinRounding(Number.POSITIVE_INFINITY, 5)).toBe(false);
  });
});
