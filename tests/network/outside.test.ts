/** Random networks against mathjs, and against the laws of circuits. */

import { describe, expect, test } from "vitest";
import { fc } from "../support/random";
import { anyNetwork, runs } from "./arbitraries";
import { type Found, solveLinear, substitute } from "./outside";
import { expectLawful, type Network, type Solved, solve } from "./support";

function expectSame(of: Network, answer: Solved, found: Found, slack = 1e-7): void {
  answer.potentials.forEach((volts, node) => {
    expect(Math.abs(volts! - found.potentials[node]!)).toBeLessThan(slack);
  });
  const rigid = answer.branchAmps.filter((_, branch) => of.branches[branch]!.ohms === 0);
  rigid.forEach((amps, index) => {
    expect(Math.abs(amps! - found.rigidAmps[index]!)).toBeLessThan(slack * 1000);
  });
}

test("up to eight sources that take over from each other: the laws hold, which they do for one answer only", () => {
  const networks = anyNetwork({ nodes: 30, kinds: ["current", "resistance"], limited: true, mostSources: 8 });
  let count = 0;
  fc.assert(
    fc.property(networks, (of) => {
      const answer = solve(of);
      if (answer.kind === "solved") {
        count += 1;
        expectLawful(of, answer);
      } else expect(["voltage-collapse", "overloaded"]).toContain(answer.reason);
    }),
    runs(1000),
  );
  expect(count).toBeGreaterThan(900);
});

describe("against mathjs", () => {
  test("constant currents and resistances, plain sources, up to 40 nodes", () => {
    const seen = { solved: 0, refused: 0 };
    fc.assert(
      fc.property(anyNetwork({ nodes: 40, kinds: ["current", "resistance"], rigid: true }), (of) => {
        const answer = solve(of);
        const found = solveLinear(of)!;
        if (answer.kind === "solved") {
          seen.solved += 1;
          expectSame(of, answer, found);
          expectLawful(of, answer);
        } else {
          seen.refused += 1;
          expect(answer.reason).toBe("voltage-collapse");
        }
      }),
      runs(300),
    );
    expect(seen.refused).toBe(0);
  });

  test("current limits and one-way sources", () => {
    const seen = { solved: 0, refused: 0 };
    fc.assert(
      fc.property(
        anyNetwork({ nodes: 10, kinds: ["current", "resistance"], limited: true, rigid: true }),
        (of) => {
          const answer = solve(of);
          const found = solveLinear(of);
          if (answer.kind === "solved") {
            seen.solved += 1;
            expectSame(of, answer, found!);
            expectLawful(of, answer);
          } else {
            seen.refused += 1;
            expect(["voltage-collapse", "overloaded"]).toContain(answer.reason);
          }
        },
      ),
      runs(1000),
    );
    expect(Math.min(seen.solved, seen.refused)).toBeGreaterThan(10);
  });

  test("constant power: the highest voltages, found by substitution", () => {
    const seen = { found: 0, none: 0, "too-slow": 0 };
    fc.assert(
      fc.property(
        anyNetwork({ nodes: 8, kinds: ["current", "resistance", "power"], limited: true }),
        (of) => {
          const answer = solve(of);
          const other = substitute(of);
          seen[other.kind] += 1;
          if (other.kind === "found") {
            expect(answer.kind).toBe("solved");
            if (answer.kind === "solved") {
              expectSame(of, answer, other.found);
              expectLawful(of, answer);
            }
          } else if (other.kind === "none") {
            expect(answer.kind).toBe("no-solution");
          }
        },
      ),
      runs(600),
    );
    expect(Math.min(seen.found, seen.none)).toBeGreaterThan(20);
    expect(seen["too-slow"]).toBeLessThan(5);
  });
});
