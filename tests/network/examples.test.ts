/** Networks whose answer follows by hand from Ohm's and Kirchhoff's laws ("physics"). */
import { describe, expect, test } from "vitest";
import { current, expectLawful, ground, network, power, resistance, solved, stiff, wire } from "./support";

describe("resistors", () => {
  test("two in series share the voltage as their resistances (physics)", () => {
    const of = network({
      branches: [wire(0, 1, 2), wire(1, ground, 4)],
      sources: [stiff(0, 12)],
    });
    const answer = solved(of);
    expect(answer.branchAmps).toEqual([2, 2]);
    expect(answer.potentials).toEqual([12, 8]);
    expectLawful(of, answer);
  });

  test("two in parallel share the current against their resistances (physics)", () => {
    const of = network({
      branches: [wire(0, ground, 3), wire(0, ground, 6)],
      sources: [stiff(0, 12)],
    });
    const answer = solved(of);
    expect(answer.branchAmps).toEqual([4, 2]);
    expect(answer.sourceAmps).toEqual([6]);
    expectLawful(of, answer);
  });

  test("a balanced Wheatstone bridge carries nothing across, an unbalanced one does (physics)", () => {
    const bridge = (last: number) =>
      network({
        branches: [
          wire(0, 1, 100),
          wire(0, 2, 200),
          wire(1, ground, 150),
          wire(2, ground, last),
          wire(1, 2, 50),
        ],
        sources: [stiff(0, 10)],
      });
    expect(solved(bridge(300)).branchAmps[4]).toBeCloseTo(0, 15);
    // Open bridge: 10 V x 150 / 250 = 6 V and 10 V x 100 / 300 = 10/3 V; seen from the gap the bridge is
    // 100 || 150 + 200 || 100 = 60 + 200/3 ohm.
    expect(solved(bridge(100)).branchAmps[4]).toBeCloseTo((6 - 10 / 3) / (60 + 200 / 3 + 50), 14);
  });

  test("a source with internal resistance into a matched load: half the voltage (physics)", () => {
    const of = network({
      loads: [resistance(0, ground, 0.1)],
      sources: [stiff(0, 28, { ohms: 0.1 })],
    });
    const answer = solved(of);
    expect(answer.potentials[0]).toBeCloseTo(14, 12);
    expect(answer.sourceAmps[0]).toBeCloseTo(140, 10);
  });
});

describe("feeders", () => {
  test("parallel feeders with a shared return (physics)", () => {
    // 28 V bus; feeders of 0.02 and 0.03 ohm to one point, 50 A there, back through 0.01 ohm.
    const of = network({
      branches: [wire(0, 1, 0.02), wire(0, 1, 0.03), wire(2, ground, 0.01)],
      loads: [current(1, 2, 50)],
      sources: [stiff(0, 28)],
    });
    const answer = solved(of);
    expect(answer.branchAmps[0]).toBeCloseTo(30, 10);
    expect(answer.branchAmps[1]).toBeCloseTo(20, 10);
    expect(answer.potentials[1]).toBeCloseTo(28 - 0.6, 12);
    expect(answer.potentials[2]).toBeCloseTo(0.5, 12);
    expect(answer.loadVolts[0]).toBeCloseTo(26.9, 12);
    expectLawful(of, answer);
  });

  test("two loads on one return lift each other's ground (physics)", () => {
    const of = network({
      branches: [wire(1, ground, 0.02)],
      loads: [current(0, 1, 10), current(0, 1, 15)],
      sources: [stiff(0, 14)],
    });
    expect(solved(of).loadVolts).toEqual([13.5, 13.5]);
  });

  test("a load of constant power behind a wire: the upper root of V² − E V + R P (physics)", () => {
    const of = network({
      branches: [wire(0, 1, 0.05)],
      loads: [power(1, ground, 1000)],
      sources: [stiff(0, 28)],
    });
    const answer = solved(of);
    expect(answer.loadVolts[0]).toBeCloseTo((28 + Math.sqrt(28 ** 2 - 4 * 0.05 * 1000)) / 2, 12);
    expectLawful(of, answer);
  });
});
