/**
 * The extreme loadings against a general-purpose solver of linear programmes (HiGHS, compiled to WebAssembly). It
 * knows nothing of filling stations in the order of their arms: it is told the programme as it stands.
 */

import createSolver, { type Highs } from "highs";
import { beforeAll, expect, test } from "vitest";
import type { Loadable } from "../../server/src/core/methods/loadable";
import { boundaryCurves } from "../../server/src/core/methods/loadings";
import { pointAt } from "../../server/src/core/methods/moment-curve";
import { fc } from "../support/random";
import { loadable } from "./loadings.arbitraries";

let solver: Highs;

beforeAll(async () => {
  solver = await createSolver();
});

/** Least or greatest moment of all loadings of one weight; undefined where there is none. */
function momentOf(
  { fixed, stations, groups = [], maximum }: Loadable,
  weight: number,
  goal: "Minimize" | "Maximize",
): number | undefined {
  const sum = (terms: readonly (readonly [factor: number, id: string])[]) =>
    terms.map(([factor, id]) => `${factor < 0 ? "-" : "+"} ${Math.abs(factor)} ${id}`).join(" ");
  const all = stations.map(({ id }) => [1, id] as const);
  const result = solver.solve(
    [
      goal,
      ` moment: ${sum(stations.map(({ arm, id }) => [arm, id]))}`,
      "Subject To",
      ` total: ${sum(all)} = ${weight - fixed.weight}`,
      ...(maximum === undefined ? [] : [` maximum: ${sum(all)} <= ${maximum - fixed.weight}`]),
      ...groups.map(({ ids, most }, index) => ` group${index}: ${sum(ids.map((id) => [1, id]))} <= ${most}`),
      "Bounds",
      ...stations.map(({ id, least, most }) => ` ${least} <= ${id} <= ${most}`),
      "End",
    ].join("\n"),
  );
  return result.Status === "Optimal" ? fixed.moment + result.ObjectiveValue : undefined;
}

test("at each weight the lowest and the highest CG are those of the linear programme", () => {
  let compared = 0;
  fc.assert(
    fc.property(loadable, fc.integer({ min: 0, max: 24 }), (aircraft, step) => {
      const result = boundaryCurves(aircraft);
      if (!result.solved) throw new Error(JSON.stringify(result.problems));
      const { forward, aft } = result.curves;
      const [lightest, heaviest] = [forward[0]!.weight, forward.at(-1)!.weight];
      const weight = lightest + (step / 24) * (heaviest - lightest);
      expect(pointAt(forward, weight)!.moment).toBeCloseTo(momentOf(aircraft, weight, "Minimize")!, 6);
      expect(pointAt(aft, weight)!.moment).toBeCloseTo(momentOf(aircraft, weight, "Maximize")!, 6);
      compared++;
    }),
    { numRuns: 60 },
  );
  expect(compared).toBeGreaterThanOrEqual(60);
});

test("beyond the heaviest loading that is found there is none", () => {
  fc.assert(
    fc.property(loadable, (aircraft) => {
      const result = boundaryCurves(aircraft);
      if (!result.solved) throw new Error(JSON.stringify(result.problems));
      const heaviest = result.curves.forward.at(-1)!.weight;
      expect(momentOf(aircraft, heaviest + 0.5, "Minimize")).toBeUndefined();
    }),
    { numRuns: 25 },
  );
});
