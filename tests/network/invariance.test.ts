/** What must not change an answer, and how answers of linear networks add up. */

import { describe, expect, test } from "vitest";
import { type Condition, prepare } from "../../server/src/core/methods/network";
import { fc } from "../support/random";
import { anyNetwork, runs } from "./arbitraries";
import {
  conditionOf,
  ground,
  type Network,
  network,
  power,
  solve,
  solved,
  stiff,
  topologyOf,
  wire,
} from "./support";

const mixed = anyNetwork({
  nodes: 40,
  kinds: ["current", "resistance", "power"],
  limited: true,
  rigid: true,
});
const close = (a: number | undefined, b: number | undefined, slack = 1e-8) => {
  expect(a === undefined).toBe(b === undefined);
  expect(Math.abs((a ?? 0) - (b ?? 0))).toBeLessThan(slack);
};
const closeLists = (
  a: readonly (number | undefined)[],
  b: readonly (number | undefined)[],
  slack?: number,
) => {
  expect(a.length).toBe(b.length);
  a.forEach((value, index) => {
    close(value, b[index], slack);
  });
};

/** Runs a check on random networks that have an answer; most must. */
function onSolved(
  check: (of: Network, answer: ReturnType<typeof solved>, dice: readonly number[]) => void,
  networks = mixed,
): void {
  let count = 0;
  const dice = fc.array(fc.integer({ min: 0, max: 1_000_000 }), { minLength: 100, maxLength: 100 });
  fc.assert(
    fc.property(networks, dice, (of, thrown) => {
      const answer = solve(of);
      if (answer.kind !== "solved") return;
      count += 1;
      check(of, answer, thrown);
    }),
    runs(150),
  );
  expect(count).toBeGreaterThan(100);
}

/** A permutation of 0 … size − 1. */
function shuffled(size: number, dice: readonly number[]): number[] {
  const order = [...new Array(size).keys()];
  for (let last = size - 1; last > 0; last--) {
    const other = dice[last % dice.length]! % (last + 1);
    [order[last], order[other]] = [order[other]!, order[last]!];
  }
  return order;
}

describe("the answer is the same", () => {
  test("with other numbers for the nodes and another order of the branches", () => {
    onSolved((of, answer, dice) => {
      const nodes = shuffled(of.nodeCount, dice);
      const branches = shuffled(of.branches.length, dice.toReversed());
      const at = (node: number) => (node === ground ? ground : nodes[node]!);
      const moved = <T extends { from: number; to: number }>(one: T) => {
        return { ...one, from: at(one.from), to: at(one.to) };
      };
      const other = solved({
        nodeCount: of.nodeCount,
        branches: branches.map((branch) => moved(of.branches[branch]!)),
        loads: of.loads.map(moved),
        sources: of.sources.map((one) => ({ ...one, node: at(one.node) })),
      });
      closeLists(
        of.branches.map((_, branch) => other.branchAmps[branches.indexOf(branch)]),
        answer.branchAmps,
        1e-6,
      );
      closeLists(
        nodes.map((node) => other.potentials[node]),
        answer.potentials,
      );
      closeLists(other.sourceAmps, answer.sourceAmps, 1e-6);
      expect(other.sourceStates).toEqual(answer.sourceStates);
    });
  });

  test("with a branch turned round, but for its current's sign", () => {
    onSolved((of, answer) => {
      const turned = of.branches.map((one) => ({ ...one, from: one.to, to: one.from }));
      const other = solved({ ...of, branches: turned });
      closeLists(other.potentials, answer.potentials);
      closeLists(
        other.branchAmps.map((amps) => amps && -amps),
        answer.branchAmps,
        1e-6,
      );
    });
  });

  test("with every branch in two halves", () => {
    onSolved((of, answer) => {
      const halves = of.branches.flatMap(({ from, to, ohms }, index) => {
        const middle = of.nodeCount + index;
        return [
          { from, to: middle, ohms: ohms / 2 },
          { from: middle, to, ohms: ohms / 2 },
        ];
      });
      const other = solved({ ...of, nodeCount: of.nodeCount + of.branches.length, branches: halves });
      closeLists(other.potentials.slice(0, of.nodeCount), answer.potentials);
      closeLists(
        of.branches.map((_, index) => other.branchAmps[2 * index]),
        answer.branchAmps,
        1e-6,
      );
    });
  });

  test("with two branches of twice the resistance for each", () => {
    onSolved((of, answer) => {
      const doubled = of.branches.flatMap((one) => {
        const twice = { ...one, ohms: one.ohms * 2 };
        return [twice, twice];
      });
      const other = solved({ ...of, branches: doubled });
      closeLists(other.potentials, answer.potentials);
      of.branches.forEach(({ ohms }, index) => {
        const [one, two] = [other.branchAmps[2 * index], other.branchAmps[2 * index + 1]];
        // Two rigid connections in parallel: nobody can say which carries what.
        if (ohms === 0) expect([one, two]).toEqual([undefined, undefined]);
        else close(one! + two!, answer.branchAmps[index], 1e-6);
      });
    });
  });

  test("with rigid connections, or with their nodes merged", () => {
    onSolved((of, answer) => {
      const names = [...new Array(of.nodeCount).keys()];
      const name = (node: number): number =>
        node === ground || names[node] === node ? node : name(names[node]!);
      for (const { from, to, ohms } of of.branches) {
        const [a, b] = [name(from), name(to)].sort((one, two) => one - two);
        if (ohms === 0 && a !== b) names[b!] = a!;
      }
      const renamed = <T extends { from: number; to: number }>(one: T) => {
        return { ...one, from: name(one.from), to: name(one.to) };
      };
      const other = solved({
        nodeCount: of.nodeCount,
        branches: of.branches.filter(({ ohms }) => ohms > 0).map(renamed),
        loads: of.loads.map(renamed),
        sources: of.sources.map((one) => ({ ...one, node: name(one.node) })),
      });
      closeLists(
        names.map((_, node) => (name(node) === ground ? 0 : other.potentials[name(node)])),
        answer.potentials,
      );
      closeLists(other.loadAmps, answer.loadAmps);
    });
  });

  test("with rigid connections, or with a millionth of an ohm", () => {
    onSolved((of, answer) => {
      const branches = of.branches.map((one) => ({ ...one, ohms: one.ohms || 1e-6 }));
      const other = solved({ ...of, branches });
      closeLists(other.potentials, answer.potentials, 0.01);
      closeLists(other.branchAmps, answer.branchAmps, 1);
    });
  });

  test("whatever was solved before, with a branch open, a load off and a source off", () => {
    const networks = fc.array(fc.nat(3), { minLength: 4, maxLength: 4 });
    fc.assert(
      fc.property(mixed, networks, (of, order) => {
        const condition = conditionOf(of);
        const without = (one: number): Condition => ({
          ohms: condition.ohms.map((ohms, branch) => (branch === one ? Number.POSITIVE_INFINITY : ohms)),
          loads: condition.loads.map((load, index) => (index === one % 2 ? undefined : load)),
          sources: condition.sources.map((source, index) => (index === one - 1 ? undefined : source)),
        });
        const prepared = prepare(topologyOf(of));
        for (const one of order) {
          expect(prepared.solve(without(one))).toEqual(prepare(topologyOf(of)).solve(without(one)));
        }
      }),
      runs(60),
    );
  });
});

test("superposition: what sources and loads cause one by one adds up (physics)", () => {
  const linear = anyNetwork({ nodes: 40, kinds: ["current", "resistance"] });
  onSolved((of, answer) => {
    // A source that is not counted stays as its resistance: at 0 V. A current that is not counted is 0.
    const only = (load: number, source: number): Network => ({
      ...of,
      loads: of.loads.map((one, index) =>
        one.load?.kind === "current" && index !== load ? { ...one, load: { kind: "current", amps: 0 } } : one,
      ),
      sources: of.sources.map((one, index) =>
        one.source && index !== source ? { ...one, source: { ...one.source, volts: 0 } } : one,
      ),
    });
    const sum = new Array<number>(of.nodeCount).fill(0);
    const add = (part: Network, factor: number) => {
      solved(part).potentials.forEach((volts, node) => {
        sum[node]! += factor * volts!;
      });
    };
    // All sources together and one load, less the sources alone: a current without a voltage can't be drawn.
    const sourcesOnly = { ...only(-1, -1), sources: of.sources };
    of.sources.forEach((_, source) => {
      add(only(-1, source), 1);
    });
    of.loads.forEach(({ load }, index) => {
      if (load?.kind !== "current") return;
      add({ ...only(index, -1), sources: of.sources }, 1);
      add(sourcesOnly, -1);
    });
    closeLists(sum, answer.potentials);
  }, linear);
});

test("resistances twelve decades apart lose nothing", () => {
  const of = network({
    branches: [
      wire(0, 1, 1e-6),
      wire(1, 2, 1e-6),
      wire(2, 3, 1e6),
      wire(3, ground, 1e6),
      wire(2, ground, 1e-6),
    ],
    loads: [power(1, ground, 100)],
    sources: [stiff(0, 28)],
  });
  const answer = solved(of);
  expect(answer.potentials[3]! / answer.potentials[2]!).toBeCloseTo(0.5, 14);
  expect(answer.branchAmps[2]! / (answer.potentials[3]! / 1e6)).toBeCloseTo(1, 12);
});
