/** Resistances that depend on their own current. */

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
  resistance,
  solve,
  solved,
  stiff,
  wire,
} from "./support";

const withOhms = (of: Network, ohms: readonly (number | undefined)[]): Network => ({
  ...of,
  branches: of.branches.map((one, branch) => ({ ...one, ohms: ohms[branch]! })),
});

test("a wire that warms with the square of its current, constant current: by hand (physics)", () => {
  const of = network({
    branches: [wire(0, 1, 0.1)],
    loads: [current(1, ground, 10)],
    sources: [stiff(0, 28)],
  });
  const answer = solved(of, (_, amps) => 0.1 * (1 + 0.002 * amps ** 2));
  expect(answer.branchOhms[0]).toBeCloseTo(0.12, 12);
  expect(answer.potentials[1]).toBeCloseTo(28 - 1.2, 12);
});

test("a wire that warms, resistive load: the root of a cubic (physics)", () => {
  const of = network({
    branches: [wire(0, 1, 0.1)],
    loads: [resistance(1, ground, 0.9)],
    sources: [stiff(0, 28)],
  });
  const answer = solved(of, (_, amps) => 0.1 + 0.001 * amps ** 2);
  const amps = answer.branchAmps[0]!;
  expect(0.001 * amps ** 3 + amps).toBeCloseTo(28, 6);
  expect(answer.residual.ohms).toBeLessThan(1e-8);
});

test("random networks: the resistances agree with the currents, and the answer with the resistances", () => {
  let count = 0;
  fc.assert(
    fc.property(
      anyNetwork({ nodes: 40, kinds: ["current", "resistance", "power"], limited: true, rigid: true }),
      (of) => {
        const warm = (branch: number, amps: number) =>
          of.branches[branch]!.ohms * (1 + 0.4 * (1 - Math.exp(-amps / 20)));
        const answer = solve(of, warm);
        if (answer.kind !== "solved") return;
        count += 1;
        of.branches.forEach(({ ohms }, branch) => {
          const found = answer.branchOhms[branch]!;
          if (ohms === 0) expect(found).toBe(0);
          else
            expect(Math.abs(warm(branch, Math.abs(answer.branchAmps[branch]!)) / found - 1)).toBeLessThan(
              1e-7,
            );
        });
        expectLawful(withOhms(of, answer.branchOhms), answer);
      },
    ),
    runs(150),
  );
  expect(count).toBeGreaterThan(100);
});

test("where the search starts doesn't matter", () => {
  let count = 0;
  const start = fc.array(fc.constantFrom(0.1, 0.3, 1, 3, 10), { minLength: 60, maxLength: 60 });
  fc.assert(
    fc.property(
      anyNetwork({ nodes: 20, kinds: ["current", "power"], limited: true }),
      start,
      (of, factors) => {
        const warm = (branch: number, amps: number) =>
          of.branches[branch]!.ohms * (1 + 0.4 * (1 - Math.exp(-amps / 20)));
        const elsewhere = withOhms(
          of,
          of.branches.map(({ ohms }, branch) => ohms * factors[branch]!),
        );
        const answer = solve(of, warm);
        const other = solve(elsewhere, warm);
        if (answer.kind !== "solved" || other.kind !== "solved") return;
        count += 1;
        answer.potentials.forEach((volts, node) => {
          expect(Math.abs(other.potentials[node]! - volts!)).toBeLessThan(1e-5);
        });
      },
    ),
    runs(300),
  );
  expect(count).toBeGreaterThan(150);
});

test("the callback is asked for branches that can warm only, with the size of the current", () => {
  const of = network({
    branches: [wire(0, 1, 0), wire(2, 1, 0.1), wire(1, 3, Number.POSITIVE_INFINITY)],
    loads: [current(2, ground, 10)],
    sources: [stiff(0, 28)],
  });
  const asked: [number, number][] = [];
  const answer = solved(of, (branch, amps) => {
    asked.push([branch, Math.round(amps)]);
    return 0.1;
  });
  expect(asked).toEqual([[1, 10]]);
  expect(answer.branchAmps[1]).toBeCloseTo(-10, 12);
});

test("a steep resistance is found by smaller steps", () => {
  const of = network({
    branches: [wire(0, 1, 0.1)],
    loads: [resistance(1, ground, 0.1)],
    sources: [stiff(0, 28)],
  });
  // Far more than any wire: at 140 A it asks for ten times the resistance, which then asks for next to none.
  const answer = solved(of, (_, amps) => 0.1 + 0.9 * (amps / 140) ** 4);
  const amps = answer.branchAmps[0]!;
  expect(amps * (0.2 + 0.9 * (amps / 140) ** 4)).toBeCloseTo(28, 5);
});

describe("no answer", () => {
  test("warm wires may collapse what cold ones carry", () => {
    const of = network({
      branches: [wire(0, 1, 0.05)],
      loads: [power(1, ground, 3500)],
      sources: [stiff(0, 28)],
    });
    expect(solve(of).kind).toBe("solved");
    expect(solve(of, (_, amps) => 0.05 * (1 + 0.00002 * amps ** 2))).toMatchObject({
      reason: "voltage-collapse",
      load: 0,
    });
  });

  test("a resistance that jumps to and fro has no fixed point: the last change is reported", () => {
    const of = network({
      branches: [wire(0, 1, 0.1)],
      loads: [resistance(1, ground, 1)],
      sources: [stiff(0, 28)],
    });
    const answer = solve(of, (_, amps) => (amps > 20 ? 1 : 0.1));
    expect(answer).toMatchObject({ kind: "no-solution", reason: "did-not-converge" });
    if (answer.kind === "no-solution" && answer.reason === "did-not-converge") {
      expect(answer.residual.ohms).toBeGreaterThan(0.01);
      expect(answer.iterations).toBeLessThan(1000);
    }
  });

  test.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])("a callback that answers %s", (value) => {
    const of = network({ branches: [wire(0, ground, 2)], sources: [stiff(0, 28)] });
    expect(solve(of, () => value)).toEqual({
      kind: "no-solution",
      reason: "invalid-input",
      problems: [{ kind: "figure-impossible", of: "branch", index: 0, figure: "resistanceAt", value }],
    });
  });
});
