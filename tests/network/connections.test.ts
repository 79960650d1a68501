/** What is rigidly connected, and what isn't connected at all. */
import { describe, expect, test } from "vitest";
import { prepare } from "../../server/src/core/methods/network";
import {
  current,
  expectLawful,
  ground,
  listed,
  network,
  power,
  resistance,
  solved,
  stiff,
  wire,
} from "./support";

const open = Number.POSITIVE_INFINITY;

describe("rigid connections", () => {
  test("in a tree carry what lies beyond them", () => {
    // Source, contactor, bus, shunt, second bus; loads on both, one of them grounded by a rigid strap.
    const of = network({
      branches: [wire(0, 1, 0), wire(1, 2, 0), wire(3, ground, 0)],
      loads: [current(1, ground, 4), current(2, 3, 7), resistance(2, ground, 14)],
      sources: [stiff(0, 28)],
    });
    const answer = solved(of);
    expect(answer.branchAmps).toEqual([13, 9, 7]);
    expectLawful(of, answer);
  });

  test("in a loop are undetermined, those that lead to the loop are not", () => {
    const of = network({
      branches: [wire(0, 1, 0), wire(1, 2, 0), wire(2, 3, 0), wire(3, 1, 0), wire(3, 4, 0)],
      loads: [current(2, ground, 4), current(4, ground, 5)],
      sources: [stiff(0, 28)],
    });
    expect(solved(of).branchAmps).toEqual([9, undefined, undefined, undefined, 5]);
  });

  test("between two loops are determined", () => {
    const of = network({
      branches: [wire(0, 1, 0), wire(0, 1, 0), wire(1, 2, 0), wire(2, 3, 0), wire(3, 2, 0)],
      loads: [current(3, ground, 5)],
      sources: [stiff(0, 28)],
    });
    expect(solved(of).branchAmps).toEqual([undefined, undefined, 5, undefined, undefined]);
  });

  test("take all current from a resistance in parallel", () => {
    const of = network({
      branches: [wire(0, 1, 0), wire(0, 1, 0.5)],
      loads: [current(1, ground, 5)],
      sources: [stiff(0, 28)],
    });
    expect(solved(of).branchAmps).toEqual([5, 0]);
  });

  test("of a node with itself: undetermined when rigid, nothing when not", () => {
    const of = network({ branches: [wire(0, 0, 0), wire(0, 0, 1)], sources: [stiff(0, 28)] });
    expect(solved(of).branchAmps).toEqual([undefined, 0]);
  });
});

describe("islands", () => {
  test("loads behind an open contactor are dead and listed; the rest is solved", () => {
    const of = network({
      branches: [wire(0, 1, open), wire(1, 2, 0.1), wire(0, 3, 0.1)],
      loads: [current(2, ground, 5), power(1, ground, 60), current(3, ground, 10)],
      sources: [stiff(0, 28)],
    });
    const answer = solved(of);
    expect(answer.islands).toEqual([{ nodes: [1, 2], loads: [0, 1], lacks: "source" }]);
    expect(answer.potentials).toEqual([28, undefined, undefined, 27]);
    expect(answer.loadAmps).toEqual([0, 0, 10]);
    expect(answer.loadVolts).toEqual([undefined, undefined, 27]);
    expect(answer.branchAmps[0]).toBe(0);
    expect(answer.branchAmps[1]).toBe(0);
    expect(answer.branchAmps[2]).toBeCloseTo(10, 12);
  });

  test("the same topology with the contactor closed", () => {
    const topology = {
      nodeCount: 2,
      branches: [{ from: 0, to: 1 }],
      loads: [{ from: 1, to: ground }],
      sources: [{ node: 0 }],
    };
    const condition = {
      loads: [{ kind: "current", amps: 5 }],
      sources: [{ volts: 28, ohms: 0, oneWay: true }],
    } as const;
    const prepared = prepare(topology);
    for (const [ohms, amps] of [
      [0, 5],
      [open, 0],
      [0.1, 5],
      [0, 5],
    ] as const) {
      expect(listed(prepared.solve({ ...condition, ohms: [ohms] }))).toMatchObject({ loadAmps: [amps] });
    }
  });

  test("a load without a way back", () => {
    const of = network({
      branches: [wire(1, 2, 0.1)],
      loads: [current(0, 1, 5), current(0, ground, 3)],
      sources: [stiff(0, 28)],
    });
    const answer = solved(of);
    expect(answer.islands).toEqual([{ nodes: [1, 2], loads: [0], lacks: "return" }]);
    expect(answer.loadAmps).toEqual([0, 3]);
    expect(answer.sourceAmps).toEqual([3]);
  });

  test("a return by a wire of its own is one, whether it carries or not", () => {
    const of = (watts: number) =>
      network({
        branches: [wire(1, ground, 0.1)],
        loads: [power(0, 1, watts)],
        sources: [stiff(0, 28)],
      });
    expect(solved(of(100)).islands).toEqual([]);
    expect(solved(of(100)).potentials[1]).toBeGreaterThan(0.3);
    expect(solved(of(0)).potentials).toEqual([28, 0]);
  });

  test("a resistive load on a bus without a source is dead, at the ground's potential", () => {
    const of = network({
      loads: [resistance(0, ground, 5), resistance(1, ground, 14)],
      sources: [stiff(1, 28)],
    });
    const answer = solved(of);
    expect(answer.islands).toEqual([{ nodes: [0], loads: [0], lacks: "source" }]);
    expect(answer.loadAmps).toEqual([0, 2]);
    expect(answer.potentials).toEqual([0, 28]);
  });

  test("resistive loads in series pass the current on; nothing is an island", () => {
    const of = network({ loads: [resistance(0, 1, 10), resistance(1, ground, 4)], sources: [stiff(0, 28)] });
    const answer = solved(of);
    expect(answer.loadAmps[0]).toBeCloseTo(2, 14);
    expect(answer.loadAmps[1]).toBeCloseTo(2, 14);
    expect(answer.islands).toEqual([]);
  });

  test("a resistive load may be the way back of another load (physics)", () => {
    const of = network({
      loads: [current(0, 1, 3), resistance(1, ground, 2)],
      sources: [stiff(0, 28)],
    });
    const answer = solved(of);
    expect(answer.islands).toEqual([]);
    expect(answer.loadAmps).toEqual([3, 3]);
    expect(answer.loadVolts).toEqual([22, 6]);
  });

  test("a spare terminal is an island without loads; a switched-off load is none at all", () => {
    const of = network({
      nodeCount: 2,
      loads: [{ from: 0, to: ground, load: undefined }],
      sources: [stiff(0, 28)],
    });
    const answer = solved(of);
    expect(answer.islands).toEqual([{ nodes: [1], loads: [], lacks: "source" }]);
    expect(answer.loadAmps).toEqual([0]);
    expect(answer.loadVolts).toEqual([28]);
  });

  test("without any source all is one, and nothing flows", () => {
    const of = network({
      branches: [wire(0, 1, 0), wire(1, 2, 0.1)],
      loads: [power(2, ground, 50)],
      sources: [{ node: 0, source: undefined }],
    });
    const answer = solved(of);
    expect(answer.islands).toEqual([{ nodes: [0, 1, 2], loads: [0], lacks: "source" }]);
    expect(answer.branchAmps).toEqual([0, 0]);
  });

  test("two systems that share the ground only", () => {
    const of = network({
      branches: [wire(0, 1, 0.1), wire(2, 3, 0.2)],
      loads: [current(1, ground, 10), current(3, ground, 10)],
      sources: [stiff(0, 28), stiff(2, 14)],
    });
    expect(solved(of).potentials).toEqual([28, 27, 14, 12]);
  });

  test("an empty network", () => {
    expect(solved(network({}))).toMatchObject({ potentials: [], branchAmps: [], islands: [] });
  });
});
