/** Published changes of equipment as records: what comes out and what goes in, the new empty weight and CG out. */
import { describe, expect, test } from "vitest";
import { weightsOf } from "../../server/src/core/graph/derivations";
import { convert, type UnitSymbol } from "../../server/src/core/quantities";
import { everyLoadingExample } from "../../server/src/core/rules/weights/every-loading-example";
import { expectPrinted, expectPrintedBalance } from "../published-values/printed";
import { judge, titlesFor } from "../remedies/support";
import { fc } from "../support/random";

type Item = readonly [weight: number, arm: number];

interface Units {
  readonly mass: UnitSymbol<"mass">;
  readonly length: UnitSymbol<"length">;
}

const imperial: Units = { mass: "lb", length: "in" };

/** An aircraft of this empty weight, changed by nothing but these items. */
function recordOf(
  empty: Item,
  removed: readonly Item[],
  added: readonly Item[],
  { mass, length }: Units = imperial,
): string {
  const of = ([weight, arm]: Item) => `weight: ${weight} ${mass}, arm: ${arm} ${length}`;
  return everyLoadingExample({
    rack: "0 lb",
    airframe: removed.map((item, index) => `    - { id: OUT-${index}, ${of(item)} }`).join("\n"),
    sections: [
      `removed: [${removed.map((_, index) => `{ equipment: OUT-${index} }`).join(", ")}]`,
      `added: [${added.map((item, index) => `{ id: IN-${index}, ${of(item)} }`).join(", ")}]`,
    ].join("\n"),
  }).replace(/empty: \{[^}]*\}/, `empty: { ${of(empty)} }`);
}

/** The empty aircraft after the change, and how far its CG went, in the units of the example. */
function changed(text: string, { mass, length }: Units = imperial) {
  const { units, change } = weightsOf(judge(text).project!);
  const inMass = (value: number) => convert(value, units.weight, mass, "mass");
  const inLength = (value: number) => convert(value, units.arm, length, "length");
  return {
    weight: inMass(change.emptyWeight!.value),
    moment: inLength(inMass(change.emptyMoment!.value)),
    arm: inLength(change.emptyCg!.value),
    shift: inLength(change.cgChange!.value),
  };
}

// FAA aviation mechanic general knowledge test item, from memory; D10 and D11 are in weights.test.ts.
test("D12: one item out, three in, one of them forward", () => {
  const after = changed(
    recordOf(
      [1800, 31.5],
      [[30, 72]],
      [
        [14, 76],
        [20, 73.5],
        [30, 30],
      ],
    ),
  );
  expectPrintedBalance(after, { weight: "1,834", moment: "57,974", arm: "31.61" });
});

// FAA-H-8083-25, weight and balance chapter (from memory); D29 from FAA-H-8083-30 (2008), ch. 4.
describe("something added or taken out", () => {
  test("D20: 140 lb added aft", () => {
    const after = changed(recordOf([6860, 80], [], [[140, 150]]));
    expectPrintedBalance(after, { weight: "7,000", arm: "81.4" });
  });
  test("D21: 100 lb taken out aft", () => {
    const after = changed(recordOf([6100, 80], [[100, 150]], []));
    expectPrintedBalance(after, { weight: "6,000", arm: "78.8" });
    expectPrinted(after.shift, "-1.2");
  });
  test("D29: seven quarts of oil taken out of the empty weight", () => {
    const { weight, moment } = changed(recordOf([1200, 10], [[13.125, -49]], []));
    expectPrinted(weight, "1,186.875");
    expectPrinted(moment, "12,643.125");
  });
});

describe("something moved: out here, in there", () => {
  const moved = (empty: Item, weight: number, from: number, to: number, units: Units = imperial) =>
    changed(recordOf(empty, [[weight, from]], [[weight, to]], units), units);

  // FAA-H-8083-25, weight and balance chapter.
  test("D16: 100 lb from 30 to 150", () => {
    const after = moved([8000, 616_000 / 8000], 100, 30, 150);
    expectPrintedBalance(after, { weight: "8,000", moment: "628,000", arm: "78.5" });
  });
  // EASA ATPL items: D17 asks for the weight that does it.
  test("D17: 228 kg are what moves 6603 kg by 0.1 m over 2.9 m", () => {
    const metric: Units = { mass: "kg", length: "m" };
    const after = (weight: number) => moved([6603, 2.8], weight, 0, 2.9, metric).arm;
    expect(after(227.5)).toBeLessThan(2.9);
    expect(after(228.5)).toBeGreaterThan(2.9);
  });
  test("D18: 150 lb 70 in aft", () => {
    expectPrinted(moved([5500, 22], 150, 0, 70).arm, "23.909");
  });
  // Study pages on weight shift, publishers not recorded.
  test("D22: 100 lb from 55 to 145", () => {
    expectPrinted(moved([4000, 80], 100, 55, 145).arm, "82.25");
  });
  test("D23: 100 lb 50 in forward", () => {
    expectPrinted(moved([2450, 40], 100, 90, 40).shift, "-2.04");
  });
});

// FAA-H-8083-30 (2008), ch. 4, p. 4-23: empty weight and CG were read; range, station and answer are from memory.
describe("D15: permanent ballast to the forward end of the empty CG range", () => {
  /** The crew sits on the limit, and does not count about it; nothing else is aboard. */
  const text = (ballast = "") =>
    recordOf([1876, 32.2], [], [])
      .replace("arm: 80.0 in, or-less: true", "arm: 33.0 in, or-less: true")
      .replace("front-seats, kind: seat, arm: 85.0 in", "front-seats, kind: seat, arm: 33.0 in")
      .replace(/ load: \[.*\]/, " load: [{ station: front-seats, weight: 170 lb }]")
      .replace("kind: ballast, arm: -20.0 in", "kind: ballast, arm: 228 in")
      .concat(ballast && `ballast: [{ id: B1, station: nose-ballast, weight: ${ballast} }]\n`);

  test("the remedy is the 7.7 lb printed", () => {
    expect(titlesFor("cg-forward-of-limit", text())).toContain("Add 7.7 lb of ballast at nose-ballast");
  });
  test("7.6964 lb bring the CG to 33 in, the fitted 7.7 lb to 33.0004 in", () => {
    expectPrinted(changed(text("7.6964 lb")).arm, "33.0000");
    expectPrinted(changed(text("7.7 lb")).arm, "33.0004");
  });
});

describe("whatever is changed", () => {
  const item = fc.tuple(
    fc.integer({ min: 1, max: 4000 }).map((tenths) => tenths / 10),
    fc.integer({ min: -1000, max: 3000 }).map((tenths) => tenths / 10),
  );
  const empty = fc.tuple(fc.integer({ min: 800, max: 20_000 }), fc.integer({ min: 20, max: 150 }));

  test("removing what was added gives back the aircraft", () => {
    fc.assert(
      fc.property(empty, fc.array(item, { minLength: 1, maxLength: 4 }), ([weight, arm], kit) => {
        const fitted = changed(recordOf([weight, arm], [], kit));
        const again = changed(recordOf([rounded(fitted.weight), rounded(fitted.arm)], kit, []));
        expect(again.weight).toBeCloseTo(weight, 6);
        expect(again.arm).toBeCloseTo(arm, 6);
      }),
      { numRuns: 25 },
    );
  });

  test("what comes in draws the CG towards it, what goes out lets it go", () => {
    fc.assert(
      fc.property(empty, item, ([weight, arm], [part, at]) => {
        if (Math.abs(at - arm) < 0.1) return;
        const toward = Math.sign(at - arm);
        expect(Math.sign(changed(recordOf([weight, arm], [], [[part, at]])).shift)).toBe(toward);
        expect(Math.sign(changed(recordOf([weight, arm], [[part, at]], [])).shift)).toBe(-toward);
      }),
      { numRuns: 25 },
    );
  });

  /** As a record can have it, without an exponent. */
  function rounded(value: number): number {
    return Number(value.toFixed(9));
  }
});
