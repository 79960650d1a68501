/** Worked examples and published figures of the heat balance, with their source beside each. */
import { describe, expect, test } from "vitest";
import {
  airDensity,
  freshAirGain,
  freshAirMoisture,
  rejectedHeat,
  solarGain,
  steadyTemperature,
  timeToReach,
} from "../../server/src/core/methods/heat-balance";
import { convert } from "../../server/src/core/quantities";
import { type Activity, peopleHeat } from "../../server/src/core/tables/people-heat";

function expectWithin(found: number | undefined, wanted: number, share: number): void {
  expect(found).toBeDefined();
  expect(Math.abs(found! - wanted)).toBeLessThanOrEqual(share * Math.abs(wanted));
}

describe("ICAO standard atmosphere", () => {
  // Tabulated: ft, degC, kg/m3; tolerance half of the last digit.
  const tabulated: [number, number, number][] = [
    [0, 15, 1.225],
    [2000, 11.04, 1.1549],
    [4000, 7.08, 1.0879],
    [5000, 5.09, 1.0555],
    [6000, 3.11, 1.0239],
    [8000, -0.85, 0.9629],
    [10000, -4.81, 0.9046],
    [12000, -8.77, 0.8491],
    [18000, -20.66, 0.6981],
    [20000, -24.62, 0.6527],
  ];
  test.each(tabulated)("%d ft, %d degC: %d kg/m3", (feet, celsius, density) => {
    expect(Math.abs(airDensity(convert(feet, "ft", "m"), celsius)! - density)).toBeLessThanOrEqual(1e-4);
  });

  test("a hot day has the same pressure and thinner air", () => {
    const [standard, hot] = [airDensity(0, 15)!, airDensity(0, 35)!];
    expect(hot / standard).toBeCloseTo(288.15 / 308.15, 12);
  });

  test("not above 11 km", () => {
    expect(airDensity(11_001, -56)).toBeUndefined();
  });
});

describe("ASHRAE Fundamentals 2009/2013, ch. 18 Table 1: W each, adjusted, at 24 degC", () => {
  const printed: [Activity, number, number][] = [
    ["seated-at-rest", 65, 30],
    ["seated-very-light-work", 70, 45],
    ["moderate-office-work", 75, 55],
    ["standing-light-work", 75, 55],
    ["light-bench-work", 80, 140],
    ["heavy-work", 170, 255],
  ];
  test.each(printed)("%s: %d sensible, %d latent", (activity, sensible, latent) => {
    expect(peopleHeat(activity, 24)).toMatchObject({ covered: true, value: { sensible, latent } });
  });

  // The adjusted total of the same rows.
  test("sensible and latent heat come to the printed totals", () => {
    const totals = printed.map(([activity]) => {
      const lookup = peopleHeat(activity, 24);
      return lookup.covered ? lookup.value.sensible + lookup.value.latent : Number.NaN;
    });
    expect(totals).toEqual([95, 115, 130, 130, 220, 425]);
  });

  // D27, same table: two people seated at very light work, 24 and 27 degC.
  test("at 27 degC a fifth less sensible heat, the total unchanged", () => {
    const at = (celsius: number) => {
      const lookup = peopleHeat("seated-very-light-work", celsius);
      if (!lookup.covered) throw new Error("not covered");
      return { sensible: 2 * lookup.value.sensible, latent: 2 * lookup.value.latent };
    };
    expect(at(24)).toEqual({ sensible: 140, latent: 90 });
    expect(at(27).sensible).toBeCloseTo(112, 9);
    expect(at(27).latent).toBeCloseTo(118, 9);
    expect(at(25.5).sensible + at(25.5).latent).toBeCloseTo(230, 9);
  });

  test("nothing below 24 and above 27 degC", () => {
    expect(peopleHeat("seated-at-rest", 23.9).covered).toBe(false);
    expect(peopleHeat("seated-at-rest", 27.1).covered).toBe(false);
  });
});

describe("worked examples, derived from physics", () => {
  // D28: sun 1.2 m2 at 900 W/m2 and 0.7; UA 4 x 6 W/K, 12 K; .010 m3/s at 1.15 kg/m3; 2 people; 150 W.
  test("heat balance of a cabin: 1562.8 W", () => {
    const parts = [
      solarGain(1.2, 0.7, 1, 900),
      4 * 6 * 12,
      freshAirGain(1.15, 0.01, 37, 25),
      2 * (70 + 45),
      150,
    ];
    for (const [index, wanted] of [756, 288, 138.8, 230, 150].entries()) {
      expectWithin(parts[index], wanted, 5e-3);
    }
    expectWithin(
      parts.reduce((sum, one) => sum + one, 0),
      1562.8,
      5e-3,
    );
  });

  // D29: C 60 kJ/K, UA 40 W/K, 35 degC outside, G 1000 W, Q 3000 W, from 60 to 25 degC.
  test("pull-down: settles at -15 degC, tau 1500 s, 943 s", () => {
    const steady = steadyTemperature(35, 40, 1000 - 3000);
    expect(steady).toBe(-15);
    expect(60_000 / 40).toBe(1500);
    expectWithin(timeToReach(60_000, 40, { from: 60, to: 25, steady }), 943, 1e-2);
  });

  // D30: a pull-down constant of t_p / ln|T0 - Tc|, from memory of SAE 2013-01-1507: 148.4 s for 600 s from 80 to
  // 23 degC, and 3541 W at the start for air of 1.2 kg/m3 in 3.0 m3 and 5600 J/K of the rest. That constant is the
  // one with which an exponential fall comes within 1 K in the time given, which is what this solution has to say.
  test("a fall from 80 degC that comes within 1 K of 23 degC in 600 s begins with 3541 W", () => {
    const held = 1.2 * 3 * 1005 + 5600;
    const constant = 600 / Math.log(80 - 23);
    expect(Math.abs(constant - 148.4)).toBeLessThan(0.05);
    const exchange = held / constant;
    expectWithin(timeToReach(held, exchange, { from: 80, to: 24, steady: 23 }), 600, 1e-9);
    const firstSecond = 80 - 57 / 148.4;
    expectWithin(timeToReach(held, exchange, { from: 80, to: firstSecond, steady: 23 }), 1, 1e-2);
    expectWithin((held * 57) / constant, 3541, 1e-2);
  });

  // D31: R-134a between 5 and 55 degC, ideal cycle with saturated ends: 122.0 kJ/kg for 30.1 kJ/kg of work, of which
  // a compressor of 0.70 takes 43.0: coefficient 2.839, and 1.352 times the capacity to reject; tolerance .02.
  test("a cooling unit rejects what it takes out and what drives it", () => {
    const [taken, work] = [122, 30.1 / 0.7];
    expect(Math.abs(taken / work - 2.839)).toBeLessThan(0.02);
    expect(Math.abs(rejectedHeat(taken, work) / taken - 1.352)).toBeLessThan(0.02);
  });

  test("never, where it settles short of what is wanted", () => {
    expect(timeToReach(60_000, 40, { from: 60, to: 25, steady: 26 })).toBeUndefined();
    expect(timeToReach(60_000, 40, { from: 60, to: 25, steady: 25 })).toBeUndefined();
    expect(timeToReach(60_000, 40, { from: -20, to: 20, steady: 10 })).toBeUndefined();
  });

  // The trade's forms for standard air, 1.2 kg/m3: 1.08 x cfm x degF and 4840 x cfm x difference of humidity, Btu/h.
  test("fresh air by the cubic foot", () => {
    const flow = convert(100, "cfm", "m3/s");
    const inside = 24;
    const outside = inside + convert(20, "degF", "K", "temperature-difference");
    const sensible = freshAirGain(1.2, flow, outside, inside);
    expectWithin(convert(sensible, "W", "Btu/h"), 1.08 * 100 * 20, 2e-3);
    const latent = freshAirMoisture(1.2, flow, 0.015, 0.01);
    expectWithin(convert(latent, "W", "Btu/h"), 4840 * 100 * 0.005, 3e-3);
  });

  test("dry outside air takes nothing off the load", () => {
    expect(freshAirMoisture(1.2, 0.01, 0.004, 0.01)).toBe(0);
    // 1.2 kg/m3 x .01 m3/s x 4 g/kg x 2.5 MJ/kg = 120 W
    expect(freshAirMoisture(1.2, 0.01, 0.014, 0.01)).toBeCloseTo(120, 9);
  });
});
