import { describe, expect, test } from "vitest";
import { type LimitSide, limitAt } from "../../server/src/core/methods/envelope";
import { excessAlong } from "../../server/src/core/methods/envelope-excess";
import { type BurnOrder, fuelBurnPath, type Loading } from "../../server/src/core/methods/fuel-burn";
import type { Loadable, LoadingProblem } from "../../server/src/core/methods/loadable";
import { type BoundaryCurves, boundaryCurves, violations } from "../../server/src/core/methods/loadings";
import { type LoadedPoint, pointAt } from "../../server/src/core/methods/moment-curve";
import { fc } from "../support/random";
import { envelope, loadable } from "./loadings.arbitraries";
import { cornersOf } from "./polytope";

/** Searched by brute force, and what physics demands. No published values here. */

const side = fc.constantFrom<LimitSide>("forward", "aft");
/** Where between the lightest and the heaviest loading. */
const part = fc.integer({ min: 0, max: 24 }).map((step) => step / 24);

function curvesOf(aircraft: Loadable): BoundaryCurves {
  const result = boundaryCurves(aircraft);
  if (!result.solved) throw new Error(JSON.stringify(result.problems));
  return result.curves;
}

function weightAt({ forward }: BoundaryCurves, part: number): number {
  const [lightest, heaviest] = [forward[0]!.weight, forward.at(-1)!.weight];
  return lightest + part * (heaviest - lightest);
}

const sumOf = (numbers: readonly number[]) => numbers.reduce((sum, each) => sum + each, 0);

/** The weights and arms of a loading added up again, and its limits looked at again. */
function expectLoadable({ fixed, stations, groups = [] }: Loadable, point: LoadedPoint): void {
  const load = new Map(point.loads.map(({ id, weight }) => [id, weight]));
  expect(point.loads).toHaveLength(stations.length);
  expect(fixed.weight + sumOf([...load.values()])).toBeCloseTo(point.weight, 9);
  const moments = stations.map(({ id, arm }) => arm * load.get(id)!);
  expect(fixed.moment + sumOf(moments)).toBeCloseTo(point.moment, 9);
  for (const { id, least, most } of stations) {
    expect(load.get(id)).toBeGreaterThanOrEqual(least - 1e-9);
    expect(load.get(id)).toBeLessThanOrEqual(most + 1e-9);
  }
  for (const { ids, most } of groups) {
    expect(sumOf(ids.map((id) => load.get(id)!))).toBeLessThanOrEqual(most + 1e-9);
  }
}

const excessOf = (cg: number, limit: number, side: LimitSide) => (side === "aft" ? cg - limit : limit - cg);

describe("extreme loadings", () => {
  test("are those of the corners of all loadings of the weight", () => {
    fc.assert(
      fc.property(loadable, part, (aircraft, where) => {
        const curves = curvesOf(aircraft);
        const weight = weightAt(curves, where);
        const [lowest, highest] = [pointAt(curves.forward, weight)!, pointAt(curves.aft, weight)!];
        const cgs = cornersOf(aircraft, weight).map(
          (corner) =>
            (aircraft.fixed.moment + sumOf(aircraft.stations.map(({ arm }, k) => arm * corner[k]!))) / weight,
        );
        expect(lowest.moment / weight).toBeCloseTo(Math.min(...cgs), 9);
        expect(highest.moment / weight).toBeCloseTo(Math.max(...cgs), 9);
        expectLoadable(aircraft, lowest);
        expectLoadable(aircraft, highest);
      }),
      { numRuns: 300 },
    );
  });

  test("reach the heaviest loading that there is, and no heavier one", () => {
    fc.assert(
      fc.property(loadable, (aircraft) => {
        const { forward, aft, full } = curvesOf(aircraft);
        expect(forward.at(-1)!.weight).toBeCloseTo(full, 9);
        expect(aft.at(-1)!.weight).toBeCloseTo(full, 9);
        expect(cornersOf(aircraft, full)).not.toHaveLength(0);
        expect(cornersOf(aircraft, full + 0.01)).toHaveLength(0);
        expect(pointAt(forward, full + 0.01)).toBeUndefined();
      }),
    );
  });

  test("do not depend on the order of stations and groups", () => {
    fc.assert(
      fc.property(loadable, part, (aircraft, where) => {
        const turned = {
          ...aircraft,
          stations: aircraft.stations.toReversed(),
          groups: aircraft.groups?.toReversed() ?? [],
        };
        const [here, there] = [curvesOf(aircraft), curvesOf(turned)];
        const weight = weightAt(here, where);
        for (const each of ["forward", "aft"] as const) {
          expect(pointAt(there[each], weight)?.moment).toBeCloseTo(pointAt(here[each], weight)!.moment, 9);
        }
      }),
    );
  });

  test("stop at a maximum weight and are the same below it", () => {
    fc.assert(
      fc.property(loadable, part, part, side, (aircraft, cut, where, each) => {
        const whole = curvesOf(aircraft);
        const maximum = weightAt(whole, cut);
        const capped = curvesOf({ ...aircraft, maximum });
        expect(capped[each].at(-1)!.weight).toBeCloseTo(maximum, 9);
        expect(capped.full).toBe(whole.full);
        const weight = weightAt(capped, where);
        expect(pointAt(capped[each], weight)?.moment).toBeCloseTo(pointAt(whole[each], weight)!.moment, 9);
      }),
    );
  });
});

describe("violations", () => {
  test("no loading anywhere is worse than the worst, and the worst is a loading", () => {
    fc.assert(
      fc.property(loadable, envelope, side, (aircraft, limits, each) => {
        const curves = curvesOf(aircraft);
        const { worst, uncovered } = violations(curves, limits, each);
        expect(uncovered).toEqual([]);
        expect(worst).toBeDefined();
        const { weight, cg, limit, excess, loads } = worst!;
        expectLoadable(aircraft, { weight, moment: weight * cg, loads });
        expect(limitAt(limits[each], each, weight)).toMatchObject({ covered: true });
        expect(excessOf(cg, limit, each)).toBeCloseTo(excess, 9);
        for (let step = 0; step <= 40; step++) {
          const weight = weightAt(curves, step / 40);
          expect(excessAt(curves, limits[each], each, weight)).toBeLessThanOrEqual(excess + 1e-9);
        }
      }),
      { numRuns: 300 },
    );
  });

  test("the weights named are the weights beyond the limit, all of them", () => {
    fc.assert(
      fc.property(loadable, envelope, side, (aircraft, limits, each) => {
        const curves = curvesOf(aircraft);
        const report = violations(curves, limits, each);
        for (let step = 0; step <= 40; step++) {
          const weight = weightAt(curves, step / 40);
          const excess = excessAt(curves, limits[each], each, weight);
          const named = report.violations.find(({ from, to }) => from <= weight && weight <= to);
          if (excess > 1e-7) expect(named, `${weight} is beyond by ${excess}`).toBeDefined();
          // At a step the end of a stretch belongs to it, and so does a corner of the curve.
          const isInside = named && named.from < weight - 1e-7 && weight + 1e-7 < named.to;
          if (isInside) expect(excess).toBeGreaterThan(-1e-7);
        }
        for (const { from, to, worst } of report.violations) {
          expect(worst.excess).toBeGreaterThan(0);
          expect(from <= worst.weight && worst.weight <= to).toBe(true);
          expect(worst.excess).toBeLessThanOrEqual(report.worst!.excess);
        }
        const ends = report.violations.flatMap(({ from, to }) => [from, to]);
        expect(ends).toEqual(ends.toSorted((a, b) => a - b));
      }),
      { numRuns: 300 },
    );
  });

  test("a stretch ends on a limit at the datum, too", () => {
    const aircraft: Loadable = {
      fixed: { weight: 7, moment: -46 },
      stations: [{ id: "aft", arm: 15, least: 3, most: 7 }],
    };
    const atDatum = [
      { weight: 1, arm: 0 },
      { weight: 120, arm: 0 },
    ];
    const report = violations(curvesOf(aircraft), { forward: atDatum, aft: atDatum }, "forward");
    // -46 + 15 x = 0 at x = 46 / 15, and 7 lb are there without it.
    expect(report.violations.map(({ from, to }) => [from, to])).toEqual([
      [10, expect.closeTo(7 + 46 / 15, 12)],
    ]);
  });

  test("a stretch ends on the limit, at a step of the limit or at an end of the curve", () => {
    fc.assert(
      fc.property(loadable, envelope, side, (aircraft, limits, each) => {
        const curves = curvesOf(aircraft);
        const allowed = [
          weightAt(curves, 0),
          weightAt(curves, 1),
          ...limits[each].map((point) => point.weight),
        ];
        for (const { from, to } of violations(curves, limits, each).violations) {
          for (const end of [from, to]) {
            const isCorner = allowed.some((weight) => Math.abs(weight - end) < 1e-6);
            if (!isCorner) expect(excessAt(curves, limits[each], each, end)).toBeCloseTo(0, 6);
          }
        }
      }),
      { numRuns: 300 },
    );
  });

  test("do not move with the datum: lengths beyond the limit and weights stay", () => {
    const datum = fc.integer({ min: -50, max: 50 });
    fc.assert(
      fc.property(loadable, envelope, side, datum, (aircraft, limits, each, by) => {
        const moved: Loadable = {
          ...aircraft,
          fixed: {
            weight: aircraft.fixed.weight,
            moment: aircraft.fixed.moment + by * aircraft.fixed.weight,
          },
          stations: aircraft.stations.map((station) => ({ ...station, arm: station.arm + by })),
        };
        const further = limits[each].map((point) => ({ ...point, arm: point.arm + by }));
        const here = violations(curvesOf(aircraft), limits, each);
        const there = violations(curvesOf(moved), { forward: further, aft: further }, each);
        expect(there.worst?.excess).toBeCloseTo(here.worst!.excess, 8);
        expect(lengthOf(there.violations)).toBeCloseTo(lengthOf(here.violations), 5);
      }),
    );
  });

  test("made by hand: a hyperbola between two roots, with its turning point", () => {
    // 100 at 0, then up to 300 at arm 30: CG = 30 - 3000 / W. Aft limit 5 + W / 20: beyond from
    // W^2 - 500 W + 60000 = 0, that is 200 to 300; farthest where W^2 = 60000.
    const curve = [
      { weight: 100, moment: 0, loads: [{ id: "a", weight: 0 }] },
      { weight: 400, moment: 9000, loads: [{ id: "a", weight: 300 }] },
    ];
    const points = [
      { weight: 100, arm: 10 },
      { weight: 400, arm: 25 },
    ];
    const report = excessAlong(curve, points, "aft");
    expect(report.violations).toHaveLength(1);
    const [{ from, to, worst }] = report.violations as [(typeof report.violations)[0]];
    expect([from, to]).toEqual([expect.closeTo(200, 9), expect.closeTo(300, 9)]);
    expect(worst.weight).toBeCloseTo(Math.sqrt(60_000), 9);
    expect(worst.excess).toBeCloseTo(25 - 2 * Math.sqrt(150), 9);
    expect(worst.loads[0]?.weight).toBeCloseTo(Math.sqrt(60_000) - 100, 9);
  });

  test("weights without a limit are named and not judged", () => {
    const curve = [
      { weight: 100, moment: 1000, loads: [] },
      { weight: 200, moment: 9000, loads: [] },
    ];
    const points = [
      { weight: 120, arm: 20 },
      { weight: 150, arm: 20 },
    ];
    const { uncovered, violations } = excessAlong(curve, points, "aft");
    expect(uncovered.map(({ from, to, gap }) => [from, to, gap.reason])).toEqual([
      [100, 120, "below-lowest"],
      [150, 200, "above-highest"],
    ]);
    // CG is beyond 20 from 7000 / 60 = 116.7 on: at every weight that has a limit.
    expect(violations.map(({ from, to }) => [from, to])).toEqual([[120, 150]]);
    const nothing = excessAlong(curve, [], "aft");
    expect(nothing).toMatchObject({ worst: undefined, violations: [] });
    expect(nothing.uncovered.map(({ from, to, gap }) => [from, to, gap.reason])).toEqual([
      [100, 200, "no-points"],
    ]);
    const alone = excessAlong(curve.slice(0, 1), points, "aft");
    expect(alone.uncovered).toHaveLength(1);
  });
});

describe("fuel burn", () => {
  const tank = fc.record({ arm: fc.integer({ min: -20, max: 20 }), weight: fc.integer({ min: 0, max: 30 }) });
  const loading: fc.Arbitrary<Loading> = fc
    .tuple(
      fc.array(tank, { minLength: 1, maxLength: 4 }),
      fc.integer({ min: 5, max: 40 }),
      fc.integer({ min: -400, max: 400 }),
    )
    .map(([tanks, weight, moment]) => ({
      fixed: { weight, moment },
      loads: [
        ...tanks.map((each, index) => ({ id: `t${index}`, ...each })),
        { id: "seat", arm: 3, weight: 17 },
      ],
    }));
  const order = fc.constantFrom<BurnOrder>("in-order", "proportional");
  const tanksOf = ({ loads }: Loading) => loads.map(({ id }) => id).filter((id) => id !== "seat");

  /** The loaded aircraft after this part of the fuel is burnt, tank by tank. */
  function burnt({ fixed, loads }: Loading, order: BurnOrder, part: number) {
    let toBurn = part * sumOf(loads.filter(({ id }) => id !== "seat").map(({ weight }) => weight));
    const left = loads.map((load) => {
      if (load.id === "seat") return load;
      const used = order === "in-order" ? Math.min(toBurn, load.weight) : part * load.weight;
      toBurn -= used;
      return { ...load, weight: load.weight - used };
    });
    return {
      weight: fixed.weight + sumOf(left.map(({ weight }) => weight)),
      moment: fixed.moment + sumOf(left.map(({ arm, weight }) => arm * weight)),
    };
  }

  test("passes through every state between full and empty", () => {
    fc.assert(
      fc.property(loading, order, part, (loaded, order, part) => {
        const path = fuelBurnPath(loaded, tanksOf(loaded), order);
        const state = burnt(loaded, order, part);
        const point = pointAt(path, state.weight);
        expect(point?.moment).toBeCloseTo(state.moment, 6);
        const cg = state.moment / state.weight;
        const corners = path.map((corner) => corner.moment / corner.weight);
        expect(cg).toBeGreaterThanOrEqual(Math.min(...corners) - 1e-9);
        expect(cg).toBeLessThanOrEqual(Math.max(...corners) + 1e-9);
      }),
    );
  });

  test("no state on the way is farther beyond a limit than the worst of the path", () => {
    fc.assert(
      fc.property(loading, order, part, envelope, side, (loaded, order, part, limits, each) => {
        const path = fuelBurnPath(loaded, tanksOf(loaded), order);
        const state = burnt(loaded, order, part);
        const limit = limitAt(limits[each], each, state.weight);
        if (!limit.covered) return;
        const { worst } = excessAlong(path, limits[each], each);
        expect(excessOf(state.moment / state.weight, limit.arm, each)).toBeLessThanOrEqual(
          worst!.excess + 1e-7,
        );
      }),
    );
  });

  test("names that carry nothing or are named twice change nothing", () => {
    fc.assert(
      fc.property(loading, order, (loaded, order) => {
        const tanks = tanksOf(loaded);
        expect(fuelBurnPath(loaded, [...tanks, "nowhere", ...tanks], order)).toEqual(
          fuelBurnPath(loaded, tanks, order),
        );
      }),
    );
  });
});

describe("aircraft whose loadings cannot be found", () => {
  const seat = { id: "seat", arm: 10, least: 0, most: 100 };
  const rest = { id: "rest", arm: 20, least: 30, most: 100 };
  const box = { id: "box", arm: 30, least: 0, most: 50 };
  const sound: Loadable = { fixed: { weight: 500, moment: 5000 }, stations: [seat, rest, box] };
  const problemsOf = (change: Partial<Loadable>): readonly LoadingProblem[] => {
    const result = boundaryCurves({ ...sound, ...change });
    return result.solved ? [] : result.problems;
  };
  const cases: [string, Partial<Loadable>, LoadingProblem[]][] = [
    ["nothing wrong", {}, []],
    [
      "crossing groups",
      {
        groups: [
          { ids: ["seat", "rest"], most: 90 },
          { ids: ["rest", "box"], most: 90 },
        ],
      },
      [{ reason: "crossing-groups", groups: [0, 1] }],
    ],
    [
      "nested and equal groups",
      {
        groups: [
          { ids: ["seat", "rest"], most: 90 },
          { ids: ["rest", "seat"], most: 80 },
          { ids: ["rest"], most: 70 },
        ],
      },
      [],
    ],
    [
      "a group of a station that is none",
      { groups: [{ ids: ["nose"], most: 90 }] },
      [{ reason: "unknown-station", station: "nose", group: 0 }],
    ],
    [
      "a group that its least loads overfill",
      { groups: [{ ids: ["rest", "box"], most: 20 }] },
      [{ reason: "least-above-group", group: 0 }],
    ],
    [
      "one id twice",
      { stations: [seat, rest, { ...box, id: "seat" }] },
      [{ reason: "repeated-station", station: "seat" }],
    ],
    [
      "least above most",
      { stations: [{ ...seat, least: 101 }] },
      [{ reason: "least-above-most", station: "seat" }],
    ],
    [
      "a load below nothing",
      { stations: [{ ...seat, least: -1 }] },
      [{ reason: "negative-load", station: "seat" }],
    ],
    [
      "a station without limit",
      { stations: [{ ...seat, most: Number.POSITIVE_INFINITY }] },
      [{ reason: "not-finite", station: "seat" }],
    ],
    ["no number", { fixed: { weight: Number.NaN, moment: 0 } }, [{ reason: "not-finite" }]],
    ["no weight", { fixed: { weight: -30, moment: 0 } }, [{ reason: "no-weight" }]],
    [
      "a maximum below the lightest loading",
      { maximum: 529 },
      [{ reason: "lightest-above-maximum", lightest: 530, maximum: 529 }],
    ],
    ["a maximum at the lightest loading", { maximum: 530 }, []],
  ];
  test.each(cases)("%s", (_, change, problems) => expect(problemsOf(change)).toEqual(problems));
});

function excessAt(
  curves: BoundaryCurves,
  points: Parameters<typeof limitAt>[0],
  side: LimitSide,
  weight: number,
): number {
  const point = pointAt(curves[side], weight)!;
  const limit = limitAt(points, side, weight);
  if (!limit.covered) throw new Error(`no limit at ${weight}`);
  return excessOf(point.moment / weight, limit.arm, side);
}

function lengthOf(stretches: readonly { readonly from: number; readonly to: number }[]): number {
  return sumOf(stretches.map(({ from, to }) => to - from));
}
