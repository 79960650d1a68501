/** Loads of constant power up to the point where the network can't carry them. */

import { describe, expect, test } from "vitest";
import { fc } from "../support/random";
import { anyNetwork, runs } from "./arbitraries";
import {
  current,
  expectLawful,
  ground,
  type Network,
  network,
  power,
  solve,
  solved,
  stiff,
  wire,
} from "./support";

const scaled = (of: Network, factor: number): Network => ({
  ...of,
  loads: of.loads.map((one) =>
    one.load?.kind === "power" ? { ...one, load: { kind: "power", watts: one.load.watts * factor } } : one,
  ),
});

describe("one load behind one resistance: at most E² / 4R, at half the voltage (physics)", () => {
  const limit = 28 ** 2 / (4 * 0.05);
  const of = (watts: number) =>
    network({ branches: [wire(0, 1, 0.05)], loads: [power(1, ground, watts)], sources: [stiff(0, 28)] });

  test.each([1e-3, 1e-6, 1e-9, 1e-11])("a share of %s below it there is an answer", (gap) => {
    const answer = solved(of(limit * (1 - gap)));
    // V = E/2 x (1 + root of the gap)
    expect(answer.loadVolts[0]).toBeCloseTo(14 * (1 + Math.sqrt(gap)), 6);
    expectLawful(of(limit * (1 - gap)), answer, 1e-6);
  });

  test.each([1e-9, 1e-6, 1e-3, 1, 1e6])("a share of %s above it there is none", (gap) => {
    expect(solve(of(limit * (1 + gap)))).toMatchObject({ reason: "voltage-collapse", load: 0 });
  });

  test("wire on both sides, source inside resistance: the sum of the resistances counts", () => {
    const loop = (watts: number) =>
      network({
        branches: [wire(0, 1, 0.02), wire(2, ground, 0.02)],
        loads: [power(1, 2, watts)],
        sources: [stiff(0, 28, { ohms: 0.01 })],
      });
    expect(solve(loop(limit * (1 - 1e-9))).kind).toBe("solved");
    expect(solve(loop(limit * (1 + 1e-9)))).toMatchObject({ reason: "voltage-collapse" });
  });
});

describe("collapse", () => {
  test("names the load that is worst off", () => {
    const of = network({
      branches: [wire(0, 1, 0.01), wire(0, 2, 0.5), wire(0, 3, 0.02)],
      loads: [power(1, ground, 1000), power(2, ground, 600), power(3, ground, 500)],
      sources: [stiff(0, 28)],
    });
    expect(solve(of)).toMatchObject({ reason: "voltage-collapse", load: 1 });
  });

  test("a constant current that its wire can't carry is one too", () => {
    const of = network({
      branches: [wire(0, 1, 1), wire(0, 2, 0.01)],
      loads: [current(1, ground, 28.1), current(2, ground, 5)],
      sources: [stiff(0, 28)],
    });
    expect(solve(of)).toEqual({ kind: "no-solution", reason: "voltage-collapse", load: 0, ratio: 0 });
  });

  test("a constant current may starve because of another load's power", () => {
    const of = (watts: number) =>
      network({
        branches: [wire(0, 1, 0.02), wire(1, 2, 2.7)],
        loads: [power(1, ground, watts), current(2, ground, 10)],
        sources: [stiff(0, 28)],
      });
    expect(solved(of(0)).loadVolts[1]).toBeCloseTo(0.8, 12);
    expect(solve(of(2000))).toEqual({ kind: "no-solution", reason: "voltage-collapse", load: 1, ratio: 0 });
  });

  test("an idle battery is called on before the network is given up", () => {
    // Alone the far source carries 28² / (4 x 0.1) = 1960 W; the battery at the load carries the rest.
    const of = network({
      branches: [wire(0, 1, 0.1)],
      loads: [power(1, ground, 2500)],
      sources: [stiff(0, 28, { oneWay: true }), stiff(1, 13, { ohms: 0.01, oneWay: true })],
    });
    const answer = solved(of);
    expect(answer.sourceStates).toEqual(["holding", "holding"]);
    expectLawful(of, answer);
  });

  test("an idle battery elsewhere doesn't hide a collapse", () => {
    const of = network({
      branches: [wire(0, 1, 0.1), wire(0, 2, 0.1)],
      loads: [power(1, ground, 2000)],
      sources: [stiff(0, 28, { oneWay: true }), stiff(2, 24, { ohms: 0.01, oneWay: true })],
    });
    expect(solve(of)).toMatchObject({ reason: "voltage-collapse", load: 0 });
  });
});

test("to the last digit it is the network that gives way, not the method (random networks)", () => {
  let collapses = 0;
  fc.assert(
    fc.property(anyNetwork({ nodes: 20, kinds: ["resistance", "power"] }), (of) => {
      if (!of.loads.some(({ load }) => load?.kind === "power" && load.watts > 0)) return;
      let [low, high] = [0, 1024];
      for (let round = 0; round < 60; round++) {
        const middle = (low + high) / 2;
        const answer = solve(scaled(of, middle));
        if (answer.kind === "solved") low = middle;
        else {
          high = middle;
          expect(answer.reason).toBe("voltage-collapse");
        }
      }
      if (high < 1024) collapses += 1;
    }),
    runs(100),
  );
  expect(collapses).toBeGreaterThan(50);
});

test("whatever is asked for less than what can be had can be had (random networks)", () => {
  let collapses = 0;
  fc.assert(
    fc.property(anyNetwork({ nodes: 40, kinds: ["current", "resistance", "power"], limited: true }), (of) => {
      if (!of.loads.some(({ load }) => load?.kind === "power" && load.watts > 0)) return;
      const carries = (factor: number) => solve(scaled(of, factor)).kind === "solved";
      if (!carries(0)) return;
      let high = 1;
      while (high < 1e6 && carries(high)) high *= 2;
      let low = high === 1 ? 0 : high / 2;
      if (high >= 1e6) return;
      while (high - low > 1e-9 * high) {
        const middle = (low + high) / 2;
        if (carries(middle)) low = middle;
        else high = middle;
      }
      collapses += 1;
      for (const share of [0.01, 0.3, 0.7, 0.9, 0.99, 0.9999]) {
        const less = scaled(of, low * share);
        expectLawful(less, solved(less), 1e-7);
      }
      // Not convergence that fails there, but the network.
      for (const share of [1.0001, 1.01, 1.5, 20]) {
        expect(solve(scaled(of, low * share))).toMatchObject({
          reason: expect.stringMatching("voltage-collapse|overloaded"),
        });
      }
    }),
    runs(100),
  );
  expect(collapses).toBeGreaterThan(50);
});
