/** The worst case of tolerances: against every corner of what weights and arms may be. */

import { describe, expect, test } from "vitest";
import { combine } from "../../server/src/core/methods/balance";
import { leastSteps } from "../../server/src/core/methods/least-step";
import { balanceRange, type UncertainMass } from "../../server/src/core/methods/tolerance";
import { fc } from "../support/random";

const mass: fc.Arbitrary<UncertainMass> = fc.record({
  weight: fc.integer({ min: -30, max: 60 }).filter((weight) => weight !== 0),
  arm: fc.integer({ min: -50, max: 200 }),
  weightTolerance: fc.integer({ min: 0, max: 3 }).map((steps) => steps / 4),
  armTolerance: fc.integer({ min: 0, max: 4 }),
});

/** Heavy enough that what is taken away never leaves nothing. */
const empty: UncertainMass = { weight: 400, arm: 80, weightTolerance: 0, armTolerance: 0 };

/** Every choice of ends. */
function corners(masses: readonly UncertainMass[]): number[] {
  const states = masses.reduce<{ weight: number; arm: number }[][]>(
    (rows, one) =>
      rows.flatMap((row) =>
        [-1, 1].flatMap((w) =>
          [-1, 1].map((x) => [
            ...row,
            { weight: one.weight + w * one.weightTolerance, arm: one.arm + x * one.armTolerance },
          ]),
        ),
      ),
    [[]],
  );
  return states.map((state) => combine(state).arm!);
}

describe("the worst case of the tolerances", () => {
  test("is the foremost and the aftmost of all corners", () => {
    fc.assert(
      fc.property(fc.array(mass, { maxLength: 4 }), (changed) => {
        const masses = [empty, ...changed];
        const range = balanceRange(masses)!;
        const all = corners(masses);
        expect(range.foremost.arm).toBeCloseTo(Math.min(...all), 9);
        expect(range.aftmost.arm).toBeCloseTo(Math.max(...all), 9);
      }),
    );
  });

  test("without tolerances is the sum itself", () => {
    fc.assert(
      fc.property(fc.array(mass), (changed) => {
        const exact = [empty, ...changed.filter(({ weight }) => weight > 0)].map((one) => ({
          ...one,
          weightTolerance: 0,
          armTolerance: 0,
        }));
        const range = balanceRange(exact)!;
        const { arm, weight } = combine(exact);
        expect(range.foremost.arm).toBeCloseTo(arm!, 9);
        expect(range.aftmost.arm).toBeCloseTo(arm!, 9);
        expect(range.foremost.weight).toBeCloseTo(weight, 9);
        expect(range.weightTolerance).toBe(0);
      }),
    );
  });

  test("of an aircraft that may weigh nothing is not told", () => {
    expect(balanceRange([{ weight: 1, arm: 2, weightTolerance: 1, armTolerance: 0 }])).toBeUndefined();
  });
});

describe("the least number of steps", () => {
  test("is the first from which on it holds", () => {
    fc.assert(
      fc.property(fc.nat(500), fc.nat(500), (from, most) => {
        const found = leastSteps(most, (steps) => steps >= from);
        expect(found).toBe(from <= most ? from : undefined);
      }),
    );
  });
});
