/** Input that is none: named, never thrown. */

import { describe, expect, test } from "vitest";
import { prepare } from "../../server/src/core/methods/network";
import { fc } from "../support/random";
import { runs } from "./arbitraries";
import { current, ground, network, power, resistance, solve, stiff, topologyOf, wire } from "./support";

describe("problems", () => {
  test.each([
    [
      network({ nodeCount: 1, branches: [wire(0, 1, 1)] }),
      { kind: "node-unknown", of: "branch", index: 0, node: 1 },
    ],
    [
      network({ nodeCount: 1, loads: [current(-2, 0, 1)] }),
      { kind: "node-unknown", of: "load", index: 0, node: -2 },
    ],
    [
      network({ nodeCount: 1, sources: [stiff(0.5, 1)] }),
      { kind: "node-unknown", of: "source", index: 0, node: 0.5 },
    ],
    [network({ nodeCount: -1 }), { kind: "node-count-impossible", value: -1 }],
    [network({ nodeCount: 1e9 }), { kind: "node-count-impossible", value: 1e9 }],
    [
      network({ branches: [wire(0, ground, -1)] }),
      { kind: "figure-impossible", of: "branch", index: 0, figure: "ohms", value: -1 },
    ],
    [
      network({ branches: [wire(0, ground, 1e-8)] }),
      { kind: "figure-impossible", of: "branch", index: 0, figure: "ohms", value: 1e-8 },
    ],
    [
      network({ loads: [current(0, ground, -1)] }),
      { kind: "figure-impossible", of: "load", index: 0, figure: "amps", value: -1 },
    ],
    [
      network({ loads: [resistance(0, ground, 0)] }),
      { kind: "figure-impossible", of: "load", index: 0, figure: "ohms", value: 0 },
    ],
    [
      network({ loads: [power(0, ground, Number.NaN)] }),
      { kind: "figure-impossible", of: "load", index: 0, figure: "watts", value: Number.NaN },
    ],
    [
      network({ sources: [stiff(0, -28)] }),
      { kind: "figure-impossible", of: "source", index: 0, figure: "volts", value: -28 },
    ],
    [
      network({ sources: [stiff(0, 28, { ohms: -1 })] }),
      { kind: "figure-impossible", of: "source", index: 0, figure: "ohms", value: -1 },
    ],
    [
      network({ sources: [stiff(0, 28, { mostAmps: -1 })] }),
      { kind: "figure-impossible", of: "source", index: 0, figure: "mostAmps", value: -1 },
    ],
  ])("%j", (of, problem) => {
    expect(solve(of)).toEqual({ kind: "no-solution", reason: "invalid-input", problems: [problem] });
  });

  test("a condition of another topology", () => {
    const of = network({
      branches: [wire(0, ground, 1)],
      loads: [current(0, ground, 1)],
      sources: [stiff(0, 28)],
    });
    expect(prepare(topologyOf(of)).solve({ ohms: [], loads: [], sources: [undefined, undefined] })).toEqual({
      kind: "no-solution",
      reason: "invalid-input",
      problems: [
        { kind: "count-differs", of: "branch", expected: 1, given: 0 },
        { kind: "count-differs", of: "load", expected: 1, given: 0 },
        { kind: "count-differs", of: "source", expected: 1, given: 2 },
      ],
    });
  });
});

test("anything at all gets an answer, and a solved one adds up", () => {
  const node = fc.integer({ min: -1, max: 4 });
  const number = fc.oneof(
    { weight: 6, arbitrary: fc.constantFrom(0, 1e-7, 1e-3, 0.1, 1, 28, 100, 1e6) },
    { weight: 1, arbitrary: fc.double({ min: 0, max: 1e12, noNaN: true }) },
  );
  const anything = fc.record({
    nodeCount: fc.constant(5),
    branches: fc.array(
      fc.record({ from: node, to: node, ohms: fc.oneof(number, fc.constant(Number.POSITIVE_INFINITY)) }),
      { maxLength: 10 },
    ),
    loads: fc.array(
      fc.record({
        from: node,
        to: node,
        load: fc.oneof(
          fc.record({ kind: fc.constant("current" as const), amps: number }),
          fc.record({ kind: fc.constant("resistance" as const), ohms: number }),
          fc.record({ kind: fc.constant("power" as const), watts: number }),
        ),
      }),
      { maxLength: 5 },
    ),
    sources: fc.array(
      fc.record({
        node,
        source: fc
          .record({ volts: number, ohms: number, oneWay: fc.boolean(), mostAmps: fc.option(number) })
          .map(({ mostAmps, ...source }) => ({ ...source, ...(mostAmps !== null && { mostAmps }) })),
      }),
      { maxLength: 4 },
    ),
  });
  const seen = new Set<string>();
  fc.assert(
    fc.property(anything, (of) => {
      const answer = solve(of);
      seen.add(answer.kind === "solved" ? answer.kind : answer.reason);
      if (answer.kind !== "solved") return;
      const numbers = [
        answer.potentials,
        answer.branchAmps,
        answer.loadAmps,
        answer.loadVolts,
        answer.sourceAmps,
      ];
      for (const value of numbers.flat()) if (value !== undefined) expect(Number.isFinite(value)).toBe(true);
    }),
    runs(3000),
  );
  expect(seen).toEqual(
    new Set([
      "solved",
      "invalid-input",
      "unlimited-current",
      "voltage-collapse",
      "overloaded",
      "did-not-converge",
    ]),
  );
});
