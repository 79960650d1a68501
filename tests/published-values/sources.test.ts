/**
 * Alternators, batteries and how much of a source may be used. Beside each check: document, edition and place, or
 * that its numbers are constructed. No published curve of an aircraft alternator was found: the points are made up.
 */

import { describe, expect, it } from "vitest";
import {
  alternatorOutput,
  batteryEndurance,
  cyclicAverage,
  eightyPercentRule,
  leastEngineSpeed,
  type OutputPoint,
  rechargeTime,
} from "../../server/src/core/methods/sources";
import type { Source } from "../../server/src/core/source";
import type { Lookup } from "../../server/src/core/tables/lookup";
import { fc } from "../support/random";

const record: Source = { document: "made-up record", standing: "record" };

function readOff<T>(lookup: Lookup<T>): T {
  if (!lookup.covered) throw new Error(`not covered: ${JSON.stringify(lookup.reason)}`);
  expect(lookup.source).toBe(record);
  return lookup.value;
}

function gapOf(lookup: Lookup<unknown>) {
  if (lookup.covered) throw new Error(`covered: ${JSON.stringify(lookup.value)}`);
  expect(lookup.source).toBe(record);
  return lookup.reason;
}

/** Made up: no alternator has these points. */
const madeUp: readonly OutputPoint[] = [
  { rpm: 2000, amps: 10 },
  { rpm: 3000, amps: 40 },
  { rpm: 6000, amps: 60 },
];

describe("alternator output against speed (made-up points)", () => {
  it.each([
    [2000, 10],
    [2500, 25],
    [3000, 40],
    [4500, 50],
    [6000, 60],
  ])("at %i rpm is %d A", (rpm, amps) => {
    expect(readOff(alternatorOutput(madeUp, rpm, record))).toBe(amps);
    expect(readOff(alternatorOutput(madeUp.toReversed(), rpm, record))).toBe(amps);
  });

  it("is not covered outside the points", () => {
    for (const rpm of [0, 1999, 6001, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(gapOf(alternatorOutput(madeUp, rpm, record))).toEqual({
        quantity: "alternator speed",
        asked: rpm,
        unit: "rpm",
        covers: { kind: "range", from: 2000, to: 6000 },
      });
    }
  });

  it("takes a speed beside an end by the last bit as that end", () => {
    expect(readOff(alternatorOutput(madeUp, 6000 * (1 + Number.EPSILON), record))).toBe(60);
    expect(readOff(alternatorOutput(madeUp, 2000 * (1 - Number.EPSILON), record))).toBe(10);
  });

  it("takes the lesser of two outputs at one speed", () => {
    const doubled = [{ rpm: 3000, amps: 45 }, ...madeUp, { rpm: 3000, amps: 42 }];
    expect(readOff(alternatorOutput(doubled, 3000, record))).toBe(40);
  });

  it("covers nothing without points, or with one that is not finite", () => {
    for (const points of [[], [...madeUp, { rpm: 4000, amps: Number.NaN }]]) {
      expect(gapOf(alternatorOutput(points, 3000, record)).covers).toEqual({ kind: "list", values: [] });
      expect(gapOf(leastEngineSpeed(points, 2, 5, record)).covers).toEqual({ kind: "list", values: [] });
    }
  });
});

describe("least engine speed for a need (made-up points; alternator speed = engine speed x ratio, derived)", () => {
  it("is the inverse of the output, through the drive ratio", () => {
    // 25 A at 2500 rpm of the alternator; a ratio of 2.5 makes that 1000 rpm of the engine.
    expect(readOff(leastEngineSpeed(madeUp, 2.5, 25, record))).toEqual({
      isReached: true,
      engineRpm: 1000,
      alternatorRpm: 2500,
      isLowestGiven: false,
    });
  });

  it("says when the lowest speed given already does, and when the highest does not", () => {
    expect(readOff(leastEngineSpeed(madeUp, 2, 10, record))).toMatchObject({
      engineRpm: 1000,
      isLowestGiven: true,
    });
    expect(readOff(leastEngineSpeed(madeUp, 2, 60, record))).toMatchObject({ engineRpm: 3000 });
    expect(readOff(leastEngineSpeed(madeUp, 2, 60.1, record))).toEqual({
      isReached: false,
      ampsAtHighest: 60,
    });
  });

  it("looks past a hump: the need must hold at every higher speed", () => {
    const sagging = [
      { rpm: 1000, amps: 50 },
      { rpm: 2000, amps: 30 },
      { rpm: 4000, amps: 70 },
    ];
    expect(readOff(leastEngineSpeed(sagging, 1, 40, record))).toMatchObject({ engineRpm: 2500 });
    const falling = [...sagging, { rpm: 5000, amps: 35 }];
    expect(readOff(leastEngineSpeed(falling, 1, 40, record))).toEqual({
      isReached: false,
      ampsAtHighest: 35,
    });
  });

  it("is not covered without a drive ratio above zero", () => {
    for (const ratio of [0, -1, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(gapOf(leastEngineSpeed(madeUp, ratio, 20, record)).quantity).toBe("drive ratio");
    }
  });

  it("holds the need from there on and misses it just below, for any curve", () => {
    const point = fc.record({
      rpm: fc.integer({ min: 500, max: 9000 }),
      amps: fc.integer({ min: 0, max: 100 }),
    });
    const points = fc.uniqueArray(point, { minLength: 1, maxLength: 8, selector: ({ rpm }) => rpm });
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(points, fc.integer({ min: 0, max: 100 }), share, (points, need, share) => {
        const least = readOff(leastEngineSpeed(points, 1, need, record));
        const highest = points.reduce((a, b) => (b.rpm > a.rpm ? b : a));
        expect(least.isReached).toBe(highest.amps >= need);
        if (!least.isReached) return;
        const above = least.alternatorRpm + share * (highest.rpm - least.alternatorRpm);
        expect(readOff(alternatorOutput(points, above, record))).toBeGreaterThanOrEqual(need - 1e-6);
        if (least.isLowestGiven) return;
        expect(readOff(alternatorOutput(points, least.alternatorRpm - 0.01, record))).toBeLessThan(need);
      }),
    );
  });
});

describe("3.2 battery endurance: manuals 190-01007-A3 rev. 4 fig. 3-19 and 190-02246-10 rev. 11 p. 3-38", () => {
  const loads = { ratedAmpHours: 24, cruiseAmps: 30, emergencyCruiseAmps: 20, emergencyLandingAmps: 33 };

  it("24 Ah lasts 45.0 min: enough for 30 min, not for 60 (constructed example, derived)", () => {
    const endurance = batteryEndurance(loads);
    expect(endurance).toEqual({
      usable: 1080,
      recognition: 150,
      landing: 330,
      remaining: 600,
      emergencyCruiseMinutes: 30,
      totalMinutes: 45,
    });
  });

  it("gives no time, rather than a negative one, when recognition and landing take more than is usable", () => {
    // 10 Ah: 450 A·min usable against 480 A·min.
    expect(batteryEndurance({ ...loads, ratedAmpHours: 10 })).toEqual({
      usable: 450,
      recognition: 150,
      landing: 330,
      remaining: -30,
      emergencyCruiseMinutes: undefined,
      totalMinutes: undefined,
    });
    expect(batteryEndurance({ ...loads, ratedAmpHours: Number.NaN }).totalMinutes).toBeUndefined();
  });

  it("lasts the fixed 15 min when just nothing remains, binary noise aside", () => {
    // 0.75 x 2.3 x 60 = 103.49999999999999 in doubles, against 5 x 0.1 + 10 x 10.3 = 103.5.
    const bare = { ratedAmpHours: 2.3, cruiseAmps: 0.1, emergencyCruiseAmps: 1, emergencyLandingAmps: 10.3 };
    expect(batteryEndurance(bare)).toMatchObject({ remaining: 0, totalMinutes: 15 });
  });

  it("has no end without a load in emergency cruise", () => {
    expect(batteryEndurance({ ...loads, emergencyCruiseAmps: 0 }).totalMinutes).toBe(
      Number.POSITIVE_INFINITY,
    );
  });
});

describe("recharge time (derived; constructed)", () => {
  it("is charge over spare current, and longer with losses", () => {
    expect(rechargeTime({ takenAmpHours: 6, spareAmps: 12 })).toBe(0.5);
    expect(rechargeTime({ takenAmpHours: 6, spareAmps: 12, efficiency: 0.8 })).toBeCloseTo(0.625, 12);
  });

  it("never ends without spare current, unless nothing was taken", () => {
    expect(rechargeTime({ takenAmpHours: 6, spareAmps: 0 })).toBe(Number.POSITIVE_INFINITY);
    expect(rechargeTime({ takenAmpHours: 6, spareAmps: -2 })).toBe(Number.POSITIVE_INFINITY);
    expect(rechargeTime({ takenAmpHours: 0, spareAmps: 0 })).toBe(0);
  });
});

describe("1.14 eighty per cent: AC 43.13-1B (9/8/98, Change 1 of 9/27/01) par. 11-35a", () => {
  const judge = (demandAmps: number, more: { isMonitored?: boolean; landingLightOffAmps?: number } = {}) =>
    eightyPercentRule({ ratingAmps: 60, demandAmps, isMonitored: false, ...more });

  it("a 60 A alternator: 47 A is 78.3 %, within; 50 A is 83.3 %, above (constructed examples, derived)", () => {
    const [within, above] = [judge(47), judge(50)];
    expect(within).toHaveLength(1);
    expect(within[0]).toMatchObject({ loadCase: "continuous", limitAmps: 48, limitShare: 0.8, holds: true });
    expect(within[0]!.share * 100).toBeCloseTo(78.3, 1);
    expect(above[0]!.holds).toBe(false);
    expect(above[0]!.share * 100).toBeCloseTo(83.3, 1);
    expect(above[0]!.source).toMatchObject({ at: "par. 11-35a", standing: "published" });
  });

  it("includes its limit", () => {
    expect(judge(48)[0]!.holds).toBe(true);
    expect(judge(48.001)[0]!.holds).toBe(false);
  });

  it("does not bind a monitored source, which may be loaded up to its rating (red line: memory)", () => {
    const [check] = judge(60, { isMonitored: true, landingLightOffAmps: 59 });
    expect(check).toMatchObject({ loadCase: "continuous", limitAmps: 60, holds: true });
    expect(check!.source.standing).toBe("memory");
    expect(judge(60.1, { isMonitored: true })[0]!.holds).toBe(false);
  });

  // Manuals 190-01007-A3 rev. 4 p. 3-40, 190-00734-17 rev. 1 p. 3-24, 190-01810-10 rev. 1 p. 16; amperes constructed.
  it.each([
    [57, 48, true, true],
    [57.1, 48, false, true],
    [57, 48.1, true, false],
    [50, 45, true, true],
  ])("take-off and landing: %d A with landing light, %d A without", (on, off, onHolds, offHolds) => {
    expect(judge(on, { landingLightOffAmps: off })).toMatchObject([
      { loadCase: "landing-light-on", limitShare: 0.95, limitAmps: 57, holds: onHolds },
      { loadCase: "landing-light-off", limitShare: 0.8, limitAmps: 48, holds: offHolds },
    ]);
  });

  it("a source without a rating above zero carries nothing", () => {
    for (const ratingAmps of [0, -60, Number.NaN]) {
      expect(eightyPercentRule({ ratingAmps, demandAmps: 1, isMonitored: false })[0]!.holds).toBe(false);
    }
  });
});

describe("cyclic average: I avg = Σ (I t) / T (standard definition; constructed)", () => {
  const pump = [
    { amps: 30, seconds: 10 },
    { amps: 6, seconds: 20 },
  ];

  it("averages over the parts, or over a longer interval with nothing in the rest", () => {
    expect(cyclicAverage(pump)).toBe(14);
    expect(cyclicAverage(pump, 60)).toBe(7);
  });

  it("is no number over no time, or over less than the parts take", () => {
    expect(cyclicAverage([])).toBeNaN();
    expect(cyclicAverage([{ amps: 5, seconds: 0 }])).toBeNaN();
    expect(cyclicAverage(pump, 29)).toBeNaN();
  });
});
