/**
 * Trees of ducts against a solver of another kind: where the one under test goes through resistances in closed
 * form, this one halves intervals of pressure and of flow, with a friction factor found by halves as well.
 */

import { describe, expect, it } from "vitest";
import {
  type DuctNetwork,
  type DuctSegment,
  type DuctSolution,
  solveDuct,
} from "../../server/src/core/methods/air/duct-network";
import { fc } from "../support/random";

const air = { density: 1.1, viscosity: 1.8e-5 };

function halved(low: number, high: number, isTooLow: (value: number) => boolean, rounds = 90): number {
  let [from, to] = [low, high];
  for (let round = 0; round < rounds; round++) {
    const middle = (from + to) / 2;
    if (isTooLow(middle)) from = middle;
    else to = middle;
  }
  return (from + to) / 2;
}

/** Colebrook by halves in 1/sqrt(f), laminar flow, and the straight line between. */
function factor(reynolds: number, roughness: number): number {
  if (reynolds <= 2300) return 64 / reynolds;
  if (reynolds < 4000) {
    const share = (reynolds - 2300) / 1700;
    return (1 - share) * (64 / 2300) + share * factor(4000, roughness);
  }
  const x = halved(1, 100, (x) => x < -2 * Math.log10(roughness / 3.7 + (2.51 * x) / reynolds));
  return 1 / x ** 2;
}

function lossIn(segment: DuctSegment, flow: number): number {
  if (flow === 0) return 0;
  const velocity = flow / segment.area;
  const f = factor(
    (air.density * velocity * segment.diameter) / air.viscosity,
    segment.roughness / segment.diameter,
  );
  return ((f * segment.length) / segment.diameter + segment.losses) * (air.density / 2) * velocity ** 2;
}

/** Flow into all that is fed at a pressure behind `after`, by nothing but pressure. */
function taken(network: DuctNetwork, after: number | undefined, pressure: number): number {
  let total = 0;
  for (const { on, area, loss } of network.outlets) {
    if (on === after) total += area * Math.sqrt((2 * pressure) / (air.density * loss));
  }
  for (const [index, segment] of network.segments.entries()) {
    if (segment.after === after) total += through(network, index, pressure);
  }
  return total;
}

function through(network: DuctNetwork, index: number, pressure: number): number {
  const segment = network.segments[index]!;
  const behind = halved(
    0,
    pressure,
    (left) => lossIn(segment, taken(network, index, left)) + left < pressure,
    60,
  );
  return taken(network, index, behind);
}

const sizes = fc.record({
  diameter: fc.double({ min: 0.02, max: 0.15, noNaN: true }),
  length: fc.double({ min: 0.1, max: 6, noNaN: true }),
  roughness: fc.constantFrom(0, 1.5e-6, 1.5e-4, 1e-3),
  losses: fc.double({ min: 0, max: 3, noNaN: true }),
});

function segmentOf({
  diameter,
  ...rest
}: {
  diameter: number;
  length: number;
  roughness: number;
  losses: number;
}) {
  return { ...rest, diameter, area: (Math.PI / 4) * diameter ** 2 };
}

/** Any tree of up to `most` segments, with an outlet on each leaf and on some others. */
function trees(most: number): fc.Arbitrary<Pick<DuctNetwork, "segments" | "outlets">> {
  return fc
    .array(
      fc.record({
        size: sizes,
        parent: fc.nat(),
        isOpen: fc.boolean(),
        loss: fc.double({ min: 0.5, max: 4, noNaN: true }),
      }),
      {
        minLength: 1,
        maxLength: most,
      },
    )
    .map((all) => {
      const segments = all.map(({ size, parent }, index) => ({
        ...segmentOf(size),
        after: index === 0 ? undefined : parent % index,
      }));
      const fed = new Set(segments.map(({ after }) => after));
      const outlets = all.flatMap(({ isOpen, loss }, index) =>
        isOpen || !fed.has(index) ? [{ on: index, area: segments[index]!.area / 2, loss }] : [],
      );
      return { segments, outlets };
    });
}

function solved(network: DuctNetwork): DuctSolution {
  const found = solveDuct(network);
  if (found.kind !== "solved") throw new Error(found.kind);
  return found;
}

describe("against the other solver", () => {
  it("any tree of up to three segments at a given pressure", () => {
    fc.assert(
      fc.property(trees(3), fc.double({ min: 1, max: 800, noNaN: true }), (tree, pressure) => {
        const network: DuctNetwork = { ...tree, supply: { kind: "pressure", pressure }, ...air };
        const other = taken(network, undefined, pressure);
        expect(Math.abs(solved(network).flow / other - 1)).toBeLessThanOrEqual(1e-7);
      }),
      { numRuns: 12 },
    );
  });
});

describe("what every solution has to hold", () => {
  /** Flows add up at each joint, and along every way the losses come to the pressure of the supply. */
  function balances(network: DuctNetwork, solution: DuctSolution): void {
    for (const [index, { flow }] of solution.segments.entries()) {
      const out = network.outlets.reduce(
        (sum, { on }, outlet) => sum + (on === index ? solution.outlets[outlet]! : 0),
        0,
      );
      const on = network.segments.reduce(
        (sum, { after }, other) => sum + (after === index ? solution.segments[other]!.flow : 0),
        0,
      );
      expect(Math.abs(flow - out - on)).toBeLessThanOrEqual(1e-12 * solution.flow);
    }
    for (const [outlet, { on, area, loss }] of network.outlets.entries()) {
      let total = ((loss * air.density) / 2) * (solution.outlets[outlet]! / area) ** 2;
      for (let at: number | undefined = on; at !== undefined; at = network.segments[at]!.after) {
        total += lossIn(network.segments[at]!, solution.segments[at]!.flow);
      }
      expect(Math.abs(total / solution.pressure - 1)).toBeLessThanOrEqual(1e-9);
    }
  }

  it("any tree of up to thirty segments, fed by a pressure, a flow or a fan", () => {
    const supplies = fc.oneof(
      fc.record({
        kind: fc.constant("pressure" as const),
        pressure: fc.double({ min: 0.5, max: 2000, noNaN: true }),
      }),
      fc.record({
        kind: fc.constant("flow" as const),
        flow: fc.double({ min: 1e-5, max: 0.4, noNaN: true }),
      }),
      fc.constant({
        kind: "fan" as const,
        curve: [
          { flow: 0, pressure: 300 },
          { flow: 0.05, pressure: 220 },
          { flow: 50, pressure: 0 },
        ],
      }),
    );
    fc.assert(
      fc.property(trees(30), supplies, (tree, supply) => {
        const network: DuctNetwork = { ...tree, supply, ...air };
        balances(network, solved(network));
      }),
      { numRuns: 150 },
    );
  });

  it("eight outlets on one line: the last gets least, and a wider line evens them out", () => {
    const line = (diameter: number): DuctNetwork => ({
      segments: Array.from({ length: 8 }, (_, index) => ({
        ...segmentOf({ diameter, length: 0.6, roughness: 0.0015, losses: 0.2 }),
        after: index === 0 ? undefined : index - 1,
      })),
      outlets: Array.from({ length: 8 }, (_, on) => ({ on, area: 0.0012, loss: 1.5 })),
      supply: { kind: "flow", flow: 0.06 },
      ...air,
    });
    const [narrow, wide] = [solved(line(0.07)), solved(line(0.12))];
    balances(line(0.07), narrow);
    expect(narrow.outlets).toEqual([...narrow.outlets].sort((a, b) => b - a));
    const spread = ({ outlets }: DuctSolution) => outlets[0]! / outlets.at(-1)!;
    expect(spread(wide)).toBeLessThan(spread(narrow));
    expect(narrow.outlets.reduce((sum, one) => sum + one, 0)).toBeCloseTo(0.06, 12);
  });
});

describe("what can't be solved is told", () => {
  const one = { ...segmentOf({ diameter: 0.1, length: 1, roughness: 1e-4, losses: 0 }), after: undefined };
  const out = { on: 0, area: 0.005, loss: 1 };
  const supply = { kind: "pressure", pressure: 100 } as const;

  it.each([
    [
      "a loop",
      {
        segments: [
          { ...one, after: 1 },
          { ...one, after: 0 },
        ],
        outlets: [out],
        supply,
      },
      { kind: "loop", segment: 0 },
    ],
    ["no outlet", { segments: [one], outlets: [], supply }, { kind: "no-way-out" }],
    [
      "an outlet without loss",
      { segments: [one], outlets: [{ ...out, loss: 0 }], supply },
      { kind: "no-resistance", outlet: 0 },
    ],
    [
      "a fan too small",
      {
        segments: [one],
        outlets: [out],
        supply: {
          kind: "fan",
          curve: [
            { flow: 0, pressure: 100 },
            { flow: 1e-4, pressure: 99 },
          ],
        },
      },
      { kind: "outside-curve", side: "beyond-curve" },
    ],
  ] as const)("%s", (_, network, problem) => {
    expect(solveDuct({ ...network, ...air })).toEqual(problem);
  });

  it("any numbers at all come to a value", () => {
    const any = fc.double();
    const segment = fc.record({
      length: any,
      diameter: any,
      area: any,
      roughness: any,
      losses: any,
      after: fc.option(fc.integer({ min: -1, max: 4 }), { nil: undefined }),
    });
    fc.assert(
      fc.property(
        fc.array(segment, { maxLength: 5 }),
        fc.array(fc.record({ on: fc.integer({ min: -1, max: 5 }), area: any, loss: any }), { maxLength: 5 }),
        any,
        (segments, outlets, pressure) => {
          expect(
            typeof solveDuct({ segments, outlets, supply: { kind: "pressure", pressure }, ...air }).kind,
          ).toBe("string");
        },
      ),
      { numRuns: 500 },
    );
  });
});
