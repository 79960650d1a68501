import { describe, expect, test } from "vitest";
import {
  armOf,
  armToPercentMac,
  type Balance,
  combine,
  moment,
  type PointMass,
  usefulLoad,
} from "../../server/src/core/methods/balance";
import { type Envelope, limitAt } from "../../server/src/core/methods/envelope";
import { roundUp } from "../../server/src/core/quantities";
import { citeSource, type Source } from "../../server/src/core/source";
import { judgeNegligible, negligibleWeightChange } from "../../server/src/core/tables/negligible-change";
import { standardWeights } from "../../server/src/core/tables/standard-weights";
import { expectPrinted, expectPrintedBalance } from "./printed";

/**
 * Worked examples as documents print them. Each stands under its document, and the test's name says when an
 * example comes from memory, was computed here, or is an invention of this project.
 */
function example(id: string, title: string, source: Source, check: () => void): void {
  test(`${id} ${title} [${citeSource(source)}]`, check);
}

/** An item of which the document prints weight and moment. */
function withMoment(weight: number, itemMoment: number): PointMass {
  return { weight, arm: armOf(weight, itemMoment)! };
}

/** An example's [weight, arm] rows. */
function masses(...rows: [weight: number, arm: number][]): PointMass[] {
  return rows.map(([weight, arm]) => ({ weight, arm }));
}

const ac4313 = (at: string, note?: string): Source => ({
  document: "FAA AC 43.13-1B",
  edition: "9/8/98, Change 1 of 9/27/01",
  at: `chapter 10, ${at}`,
  standing: "published",
  ...(note === undefined ? {} : { note }),
});
const handbook8083_1: Source = {
  document: "FAA-H-8083-1",
  edition: "edition not recorded",
  standing: "memory",
};
const handbook8083_30: Source = {
  document: "FAA-H-8083-30",
  edition: "2008",
  at: "chapter 4",
  standing: "published",
};
const mechanicItem: Source = {
  document: "FAA aviation mechanic general knowledge test item",
  edition: "edition not recorded",
  standing: "published",
};
const constructed: Source = { document: "constructed for this project", standing: "derived" };

describe("standard weights", () => {
  example("weights", "as printed, oil also by the quart", handbook8083_30, () => {
    const { avgas, turbineFuel, oil, water, person } = standardWeights;
    expect([avgas.value, turbineFuel.value, oil.value, water.value]).toEqual([6, 6.7, 7.5, 8.35]);
    expect(oil.value / 4).toBe(1.875);
    expect(person.value).toBe(170);
  });
});

describe("weights of parts", () => {
  // Figure 10-10 carries the nine quarts as 17 lb.
  example("oil", "nine and eight quarts, as printed and rounded", ac4313("figure 10-10"), () => {
    const quarts = (count: number) => (count / 4) * standardWeights.oil.value;
    expectPrinted(quarts(9), "16.875");
    expectPrinted(quarts(9), "17");
    expectPrinted(quarts(8), "15.0");
  });
  example("useful load", "maximum weight less empty weight", ac4313("par. 10-2d and figure 10-10"), () => {
    expect(usefulLoad(2100, 1169)).toBe(931);
  });
});

describe("loading", () => {
  const empty: PointMass = { weight: 1169, arm: 10.6 };
  const oil: PointMass = { weight: 17, arm: -49 };
  const pilot: PointMass = { weight: standardWeights.person.value, arm: 16 };
  const envelope: Envelope = {
    forward: [{ weight: 2100, arm: 8.5, orLess: true }],
    aft: [{ weight: 2100, arm: 21.9, orLess: true }],
  };
  const expectInside = ({ weight, arm }: Balance) => {
    for (const side of ["forward", "aft"] as const) {
      const limit = limitAt(envelope[side], side, weight);
      if (!limit.covered) throw new Error(limit.reason);
      if (side === "forward") expect(arm).toBeGreaterThanOrEqual(limit.arm);
      else expect(arm).toBeLessThanOrEqual(limit.arm);
    }
  };

  const fig1010 = ac4313("figure 10-10, page 10-13", "minimum fuel of 82.5 lb is printed as 83");
  example("D13", "most forward loading, fuel as printed", fig1010, () => {
    const loaded = combine([empty, oil, pilot, ...masses([83, 22])]);
    expectPrintedBalance(loaded, { weight: "1,439", moment: "16,104", arm: "11.2" });
    expectInside(loaded);
  });
  example("D13", "most forward loading, fuel unrounded", fig1010, () => {
    expectPrintedBalance(combine([empty, oil, pilot, ...masses([82.5, 22])]), {
      weight: "1,438.5",
      arm: "11.19",
    });
  });
  const fig1011 = ac4313("figure 10-11, par. 10-17", "totals as printed, CG computed here");
  example("figure 10-11", "most rearward loading", fig1011, () => {
    const loaded = combine([empty, oil, pilot, ...masses([340, 48], [240, 22], [100, 75.5])]);
    expectPrintedBalance(loaded, { weight: "2,036", moment: "43,428", arm: "21.33" });
    expectInside(loaded);
  });
  const fig1013 = ac4313("figure 10-13, page 10-17", "misprint: 38,466 / 2,100 is 18.3, printed 18.6");
  example("D14", "most passengers", fig1013, () => {
    const loaded = combine([empty, oil, pilot, ...masses([170, 16], [340, 48], [39 * 6, 22])]);
    expectPrintedBalance(loaded, { weight: "2,100", moment: "38,466", arm: "18.3" });
    expectInside(loaded);
  });
  example("figure 10-14", "most baggage", ac4313("figure 10-14, page 10-18"), () => {
    const loaded = combine([empty, oil, pilot, ...masses([170, 48], [170, 16], [240, 22], [100, 75.5])]);
    expectPrintedBalance(loaded, { weight: "2,036", moment: "37,988", arm: "18.7" });
    expectInside(loaded);
  });
  const d25: Source = {
    document: "loading example",
    edition: "document not recorded",
    standing: "memory",
    note: "items and result were read; empty weight and arms are from memory",
  };
  example("D25", "four-seat aeroplane inside its range", d25, () => {
    const fuel = 75 * standardWeights.avgas.value;
    const loaded = combine(masses([2100, 78.3], [340, 85], [350, 121], [fuel, 75], [80, 150]));
    expectPrintedBalance(loaded, { weight: "3,320", moment: "281,430", arm: "84.8" });
  });
  const helicopterManual: Source = {
    document: "MD900 rotorcraft flight manual",
    edition: "revision not recorded",
    at: "section 6, example I, page 6-8",
    standing: "published",
  };
  example("D26", "helicopter, zero fuel and gross", helicopterManual, () => {
    const zeroFuel = combine([
      withMoment(3272.8, 688_665),
      ...masses([170, 130.7], [170, 130.7], [170, 173], [170, 173], [170, 213], [170, 213]),
    ]);
    expectPrintedBalance(zeroFuel, { weight: "4,292.8", moment: "864,343", arm: "201.3" });
    const gross = combine([{ weight: zeroFuel.weight, arm: zeroFuel.arm! }, ...masses([994, 191.1])]);
    expectPrintedBalance(gross, { weight: "5,286.8", moment: "1,054,296", arm: "199.4" }, 1);
  });
  const aeroplaneManual = (edition: string): Source => ({
    document: "Maule M-7-260C flight manual, loading example",
    edition,
    standing: "published",
  });
  const d27 = (fuel: PointMass) =>
    combine([withMoment(1549, 17_349), withMoment(340, 6800), fuel, withMoment(125, 9000)]);
  example("D27a", "weights with moments, 73 gallons", aeroplaneManual("revision A"), () => {
    expectPrintedBalance(d27(withMoment(438, 10_512)), { weight: "2,452", moment: "43,661", arm: "17.8" });
  });
  example("D27b", "weights with moments, 70 gallons", aeroplaneManual("form 74"), () => {
    expectPrintedBalance(d27(withMoment(420, 10_080)), { weight: "2,434", moment: "43,229", arm: "17.8" });
  });
  example("D33", "lateral balance, left is negative", constructed, () => {
    const loaded = combine(masses([900, -0.3], [180, 12], [150, -12], [120, -11]));
    expectPrintedBalance(loaded, { weight: "1,350", moment: "-1,230", arm: "-0.91" });
  });
});

describe("levers", () => {
  const d19: Source = {
    ...mechanicItem,
    note: "published inputs, answer computed here; one copy prints 25 ft, a lost decimal point",
  };
  example("D19", "box that balances two weights", d19, () => {
    expectPrinted(armOf(20, combine(masses([10, 4], [5, 2])).moment), "2.5");
  });
  example("D30", "arm from weight and moment", mechanicItem, () => {
    expect(armOf(40, 1400)).toBe(35);
    expect(moment({ weight: 40, arm: 35 })).toBe(1400);
  });
  example("D31", "three weights on a board", handbook8083_1, () => {
    expect(combine(masses([100, 50], [100, 90], [200, 150]))).toEqual({
      weight: 400,
      moment: 44_000,
      arm: 110,
    });
  });
});

describe("quantities that must not fall short", () => {
  const fuelItem: Source = {
    document: "FAA pilot knowledge test items, fuel to drain",
    edition: "edition not recorded",
    standing: "published",
    note: "values read, the document's name is from memory",
  };
  example("D28", "gasoline to drain for 90 and 110 lb too much", fuelItem, () => {
    const gallons = (pounds: number) => pounds / standardWeights.avgas.value;
    expect(roundUp(gallons(90), 0.1)).toBeCloseTo(15, 9);
    expect(roundUp(gallons(110), 0.1)).toBeCloseTo(18.4, 9);
  });
});

describe("mean aerodynamic chord", () => {
  const d24: Source = {
    document: "per cent MAC example",
    edition: "document not recorded",
    standing: "memory",
  };
  example("D24", "leading edge 144, trailing edge 206, CG 161", d24, () => {
    const chord = { leadingEdge: 144, length: 206 - 144 };
    expectPrinted(armToPercentMac(161, chord), "27.419");
  });
  const form: Source = {
    document: "weighing form with its chord printed in it",
    edition: "document not recorded",
    standing: "published",
    note: "the form was read, the arms are made up",
  };
  example("form", "per cent MAC is (CG - 25.90) / 0.5880", form, () => {
    const chord = { leadingEdge: 25.9, length: 58.8 };
    for (const arm of [20, 25.9, 40.6, 84.7]) {
      expect(armToPercentMac(arm, chord)).toBeCloseTo((arm - 25.9) / 0.588, 9);
    }
    expect(armToPercentMac(40.6, chord)).toBeCloseTo(25, 9);
  });
});

describe("envelope limits", () => {
  example("forward limit", "35.0 at 1,950 lb or less, straight to 38.5 at 2,300 lb", constructed, () => {
    const envelope: Envelope = {
      forward: [
        { weight: 1950, arm: 35, orLess: true },
        { weight: 2300, arm: 38.5 },
      ],
      aft: [{ weight: 2300, arm: 47.3, orLess: true }],
    };
    expect(limitAt(envelope.forward, "forward", 2150)).toEqual({ covered: true, arm: 37 });
    expect(limitAt(envelope.forward, "forward", 1500)).toEqual({ covered: true, arm: 35 });
  });
});

describe("negligible change", () => {
  const weightLimit = (emptyWeight: number) => {
    const limit = negligibleWeightChange(emptyWeight);
    return limit.covered ? [limit.value, limit.notes.length] : limit.reason.asked;
  };
  example(
    "weight",
    "bands of empty weight",
    ac4313("par. 10-2c, page 10-1", "middle band misprinted"),
    () => {
      expect(weightLimit(4999)).toEqual([1, 0]);
      expect(weightLimit(5001)).toEqual([2, 0]);
      expect(weightLimit(49_999)).toEqual([2, 0]);
      expect(weightLimit(50_001)).toEqual([5, 0]);
    },
  );
  example("weight", "no band has the edges: the stricter one, noted", ac4313("par. 10-2c, page 10-1"), () => {
    expect(weightLimit(5000)).toEqual([1, 1]);
    expect(weightLimit(50_000)).toEqual([2, 1]);
    const fromKilograms = (5000 * 0.45359237) / 0.45359237 + 1e-12;
    expect(weightLimit(fromKilograms)).toEqual([1, 1]);
  });
  test("no empty weight, no limit", () => {
    expect(weightLimit(0)).toBe(0);
    expect(weightLimit(-10)).toBe(-10);
    expect(weightLimit(Number.NaN)).toBeNaN();
    expect(weightLimit(Number.POSITIVE_INFINITY)).toBe(Number.POSITIVE_INFINITY);
  });

  const aeroplane = { aircraft: "fixed-wing", emptyWeight: 2000, reference: 60 } as const;
  const rotorcraft = { aircraft: "rotary-wing", emptyWeight: 2000, reference: 10 } as const;
  const verdict = (change: Parameters<typeof judgeNegligible>[0]) => judgeNegligible(change).negligible;

  example("verdict", "weight: one pound or less", ac4313("par. 10-2c, page 10-1"), () => {
    expect(verdict({ ...aeroplane, weightChange: 1, cgChange: 0 })).toBe(true);
    expect(verdict({ ...aeroplane, weightChange: -1, cgChange: 0 })).toBe(true);
    expect(verdict({ ...aeroplane, weightChange: -1.01, cgChange: 0 })).toBe(false);
  });
  example("verdict", "fixed wing: CG less than 0.05 % of the chord", ac4313("par. 10-2c, page 10-1"), () => {
    expect(verdict({ ...aeroplane, weightChange: 0, cgChange: -0.0299 })).toBe(true);
    expect(verdict({ ...aeroplane, weightChange: 0, cgChange: -0.03 })).toBe(false);
    expect(judgeNegligible({ ...aeroplane, weightChange: 0, cgChange: 0 }).cgLimit).toBeCloseTo(0.03, 12);
  });
  example("verdict", "rotary wing: CG less than 0.2 % of the range", ac4313("par. 10-2c, page 10-1"), () => {
    expect(verdict({ ...rotorcraft, weightChange: 0, cgChange: 0.0199 })).toBe(true);
    expect(verdict({ ...rotorcraft, weightChange: 0, cgChange: 0.02 })).toBe(false);
  });
  test("a chord that is not known leaves the verdict open, unless the weight decides", () => {
    const unknown = { ...aeroplane, reference: undefined, cgChange: 0.001 };
    expect(verdict({ ...unknown, weightChange: 0.5 })).toBeUndefined();
    expect(verdict({ ...unknown, weightChange: 2 })).toBe(false);
  });
});
