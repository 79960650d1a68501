/** Sources at their limits, one-way, and in parallel ("physics": from their laws by hand). */
import { describe, expect, test } from "vitest";
import {
  current,
  expectLawful,
  ground,
  network,
  power,
  resistance,
  solve,
  solved,
  stiff,
  wire,
} from "./support";

const alternator = (node: number, mostAmps: number, volts = 28) =>
  stiff(node, volts, { mostAmps, oneWay: true });
const battery = (node: number, volts = 25, ohms = 0.02) => stiff(node, volts, { ohms, oneWay: true });

describe("alternator and battery on one bus", () => {
  const bus = (amps: number) =>
    network({ loads: [current(0, ground, amps)], sources: [alternator(0, 100), battery(0)] });

  test("below its limit the alternator gives all, the battery rests", () => {
    const answer = solved(bus(80));
    expect(answer.potentials).toEqual([28]);
    expect(answer.sourceAmps).toEqual([80, 0]);
    expect(answer.sourceStates).toEqual(["holding", "off"]);
  });

  test("at the limit exactly it still holds its voltage", () => {
    expect(solved(bus(100)).sourceStates).toEqual(["holding", "off"]);
  });

  test("above its limit the battery gives the rest, at the battery's voltage (physics)", () => {
    const answer = solved(bus(130));
    expect(answer.sourceAmps[0]).toBe(100);
    expect(answer.sourceAmps[1]).toBeCloseTo(30, 9);
    expect(answer.potentials[0]).toBeCloseTo(25 - 30 * 0.02, 12);
    expect(answer.sourceStates).toEqual(["at-limit", "holding"]);
    expectLawful(bus(130), answer);
  });

  test("constant power draws more where the voltage fell to the battery's", () => {
    const of = network({ loads: [power(0, ground, 3000)], sources: [alternator(0, 100), battery(0)] });
    const answer = solved(of);
    // V x (100 + (25 - V) / 0.02) = 3000, the upper root
    const volts = (27 + Math.sqrt(27 ** 2 - 4 * 0.02 * 3000)) / 2;
    expect(answer.potentials[0]).toBeCloseTo(volts, 10);
    expectLawful(of, answer);
  });

  test("a battery that may be charged is, by the drop between the voltages (physics)", () => {
    const of = network({
      loads: [current(0, ground, 20)],
      sources: [alternator(0, 200), stiff(0, 25, { ohms: 0.1 })],
    });
    const answer = solved(of);
    expect(answer.sourceAmps[1]).toBeCloseTo(-30, 10);
    expect(answer.sourceAmps[0]).toBeCloseTo(50, 10);
    expectLawful(of, answer);
  });

  test("a failed alternator leaves all to the battery", () => {
    const of = network({
      loads: [current(0, ground, 40)],
      sources: [{ node: 0, source: undefined }, battery(0)],
    });
    const answer = solved(of);
    expect(answer.sourceStates).toEqual(["off", "holding"]);
    expect(answer.sourceAmps[0]).toBe(0);
    expect(answer.sourceAmps[1]).toBeCloseTo(40, 10);
  });
});

describe("two alternators in parallel", () => {
  test("behind feeders they share by the feeders' resistances (physics)", () => {
    const of = network({
      branches: [wire(0, 2, 0.01), wire(1, 2, 0.03)],
      loads: [current(2, ground, 80)],
      sources: [alternator(0, 100), alternator(1, 100)],
    });
    const answer = solved(of);
    expect(answer.sourceAmps[0]).toBeCloseTo(60, 9);
    expect(answer.sourceAmps[1]).toBeCloseTo(20, 9);
    expect(answer.potentials[2]).toBeCloseTo(28 - 0.6, 12);
  });

  test("what one can't give the other does (physics)", () => {
    const of = network({
      branches: [wire(0, 2, 0.01), wire(1, 2, 0.03)],
      loads: [current(2, ground, 80)],
      sources: [alternator(0, 50), alternator(1, 100)],
    });
    const answer = solved(of);
    expect(answer.sourceAmps[0]).toBe(50);
    expect(answer.sourceAmps[1]).toBeCloseTo(30, 9);
    expect(answer.potentials[2]).toBeCloseTo(28 - 0.9, 12);
    expect(answer.potentials[0]).toBeCloseTo(28 - 0.9 + 0.5, 12);
    expectLawful(of, answer);
  });

  test("on one bus at one voltage the division is undetermined, the sum is not exceeded", () => {
    const bus = (amps: number) =>
      network({
        branches: [wire(0, 1, 0), wire(1, 2, 0.001)],
        loads: [current(2, ground, amps)],
        sources: [alternator(0, 60), alternator(1, 60)],
      });
    const answer = solved(bus(100));
    expect(answer.sourceAmps).toEqual([undefined, undefined]);
    expect(answer.sourceStates).toEqual(["holding", "holding"]);
    expect(answer.branchAmps[0]).toBeUndefined();
    expect(answer.branchAmps[1]).toBeCloseTo(100, 9);
    expect(answer.potentials[0]).toBe(28);
    expect(answer.residual.amps).toBeLessThan(1e-9);
    expect(solve(bus(121))).toEqual({ kind: "no-solution", reason: "overloaded", sources: [0, 1] });
  });

  test("on one bus the higher voltage gives all until its limit, then the lower one holds", () => {
    const bus = (amps: number) =>
      network({
        branches: [wire(0, 1, 0)],
        loads: [current(0, ground, amps)],
        sources: [alternator(0, 60, 27.8), alternator(1, 60, 28.2)],
      });
    const light = solved(bus(50));
    expect(light.potentials).toEqual([28.2, 28.2]);
    expect(light.sourceAmps).toEqual([0, 50]);
    expect(light.branchAmps).toEqual([-50]);
    const heavy = solved(bus(70));
    expect(heavy.potentials).toEqual([27.8, 27.8]);
    expect(heavy.sourceAmps).toEqual([10, 60]);
    expect(heavy.sourceStates).toEqual(["holding", "at-limit"]);
    expectLawful(bus(70), heavy);
  });
});

describe("limits", () => {
  test("a resistive load on a source at its limit gets less voltage, not none (physics)", () => {
    const of = network({ loads: [resistance(0, ground, 0.5)], sources: [alternator(0, 40)] });
    const answer = solved(of);
    expect(answer.potentials[0]).toBeCloseTo(20, 12);
    expect(answer.sourceStates).toEqual(["at-limit"]);
  });

  test("constant currents above all limits: overloaded, by the sources that reach them", () => {
    const of = network({
      branches: [wire(0, 1, 0.01)],
      loads: [current(0, ground, 90), current(1, ground, 20)],
      sources: [
        alternator(0, 60),
        stiff(1, 24, { ohms: 0.1, mostAmps: 40, oneWay: true }),
        alternator(2, 500),
      ],
    });
    expect(solve(of)).toEqual({ kind: "no-solution", reason: "overloaded", sources: [0, 1] });
  });

  test("constant power above the limit: overloaded", () => {
    const bus = (watts: number) =>
      network({ loads: [power(0, ground, watts)], sources: [alternator(0, 100)] });
    expect(solve(bus(2800)).kind).toBe("solved");
    expect(solve(bus(2801))).toEqual({ kind: "no-solution", reason: "overloaded", sources: [0] });
  });

  test("a limit of zero is a source that gives nothing", () => {
    const of = network({
      loads: [current(0, ground, 5)],
      sources: [alternator(0, 0), battery(0)],
    });
    expect(solved(of).sourceStates).toEqual(["off", "holding"]);
  });

  test("a dead battery at 0 V gives nothing and holds nothing up", () => {
    const alone = network({ sources: [battery(0, 0), battery(1, 25)] });
    expect(solved(alone)).toMatchObject({ potentials: [0, 25], sourceAmps: [0, 0] });
    const beside = network({ loads: [current(0, ground, 10)], sources: [battery(0, 0), battery(0, 25)] });
    expect(solved(beside).sourceStates).toEqual(["off", "holding"]);
  });

  test("one-way sources that nothing is drawn from, but for rounding", () => {
    const of = network({
      branches: [wire(0, 1, 0.01), wire(1, 2, 0.015435226258314809)],
      loads: [power(0, ground, 452.864), power(1, ground, 1574.128)],
      sources: [alternator(0, 18.449, 25.58022)],
    });
    expect(solve(of)).toMatchObject({ reason: "overloaded" });
    const idle = { ...of, loads: of.loads.map((one) => ({ ...one, load: undefined })) };
    for (const volts of solved(idle).potentials) expect(volts).toBeCloseTo(25.58022, 12);
  });

  test("three sources that chase each other when all move at once (physics)", () => {
    // By hand: the first gives its 1 A, the third the last 0.01 A at 24.002 V, and 24.00199 V keep the second off.
    const of = network({
      branches: [wire(0, 1, 0.001), wire(0, 2, 0.001)],
      loads: [current(0, ground, 1.01)],
      sources: [
        stiff(2, 24.005, { ohms: 0.001, mostAmps: 1 }),
        stiff(0, 24, { ohms: 0.001, oneWay: true }),
        stiff(1, 24.002, { mostAmps: 1, oneWay: true }),
      ],
    });
    const answer = solved(of);
    expect(answer.sourceStates).toEqual(["at-limit", "off", "holding"]);
    expect(answer.potentials[0]).toBeCloseTo(24.00199, 9);
    expectLawful(of, answer);
  });

  test("stiff sources without limit, rigidly against each other or ground", () => {
    const opposed = network({ branches: [wire(0, 1, 0)], sources: [stiff(0, 24), stiff(1, 28)] });
    expect(solve(opposed)).toEqual({ kind: "no-solution", reason: "unlimited-current", sources: [1] });
    const shorted = network({ branches: [wire(0, ground, 0)], sources: [stiff(0, 28)] });
    expect(solve(shorted)).toEqual({ kind: "no-solution", reason: "unlimited-current", sources: [0] });
  });

  test("a source shorted by a rigid connection gives its limit, or what its resistance lets through", () => {
    const of = network({
      branches: [wire(0, ground, 0), wire(1, ground, 0)],
      sources: [alternator(0, 60), stiff(1, 24, { ohms: 0.02 })],
    });
    const answer = solved(of);
    expect(answer.sourceAmps).toEqual([60, 1200]);
    expect(answer.branchAmps).toEqual([60, 1200]);
    expect(answer.potentials).toEqual([0, 0]);
  });
});
