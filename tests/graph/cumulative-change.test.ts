/**
 * Changes since the last weighing against the published thresholds: AMC1 CAT.POL.MAB.100(b), AMC1 SPO.POL.105(b) and
 * GM1 NCO.POL.105, 0.5 % of the maximum landing mass and 0.5 % of the mean aerodynamic chord.
 */
import { describe, expect, test } from "vitest";
import { everyLoadingExample } from "../../server/src/core/rules/weights/every-loading-example";
import { judge } from "../remedies/support";

type Parts = NonNullable<Parameters<typeof everyLoadingExample>[0]>;

function judged(past: string, parts: Parts = {}) {
  const airframe = `  history: { weighed: 2024-05-11, changes: [${past}] }`;
  const { assessments, findings } = judge(everyLoadingExample({ airframe, ...parts }));
  const of = (quantity: string) =>
    assessments.find((one) => one.rule === "cumulative-change-large" && one.value.quantity === quantity);
  return {
    weight: of("cumulative-weight-change"),
    cg: of("cumulative-cg-change"),
    whats: findings.filter(({ rule }) => rule === "cumulative-change-large").map(({ what }) => what),
  };
}

describe("weight", () => {
  // At the empty CG of 87 in, so that the CG has no part in it: 8 lb now and 11 lb before, of 0.5 % of 3800 lb.
  const rack = { rack: "8 lb", arm: "87 in" };

  test("19 lb of 3800 lb are just within", () => {
    const { weight, whats } = judged("{ weight: 11 lb, arm: 87 in }", rack);
    expect(weight).toMatchObject({ value: { value: 19, unit: "lb" }, limit: { value: 19 }, holds: true });
    expect(whats).toEqual([]);
  });

  test("19.1 lb are not", () => {
    const { whats } = judged("{ weight: 11.1 lb, arm: 87 in }", rack);
    expect(whats).toEqual([expect.stringContaining("the weight changed by 19.1 lb")]);
  });

  test("what was taken out counts against what was put in", () => {
    const { weight } = judged("{ weight: 11.1 lb, arm: 87 in }, { weight: -5 lb, arm: 87 in }", rack);
    expect(weight?.value.value).toBeCloseTo(14.1, 9);
  });

  test("the landing weight counts where it is lower", () => {
    const { weight } = judged("{ weight: 11 lb, arm: 87 in }", {
      ...rack,
      limits: "takeoff: 3800 lb, landing: 3600 lb",
    });
    expect(weight).toMatchObject({ limit: { value: 18 }, holds: false });
  });
});

describe("CG", () => {
  // 2 lb now at 87 in and 10 lb before at 155.8 in. Weighed: 2402 lb, and 2412 x 87 - 1558 = 208,286 lb in, which is
  // 86.7136 in. Now 87 in. The chord is 63 in: 0.2864 / 63 = 0.4547 %.
  test("0.45 % of the chord is within half a per cent, by hand", () => {
    const { cg } = judged("{ weight: 10 lb, arm: 155.8 in }", { rack: "2 lb", arm: "87 in" });
    expect(cg?.value.value).toBeCloseTo(0.4547, 3);
    expect(cg).toMatchObject({ limit: { value: 0.5, unit: "%" }, holds: true });
  });

  // The same at 165 in: 2412 x 87 - 1650 = 208,194; / 2402 = 86.6753; 0.3247 / 63 = 0.5154 %.
  test("0.52 % is not", () => {
    const { whats } = judged("{ weight: 10 lb, arm: 165 in }", { rack: "2 lb", arm: "87 in" });
    expect(whats).toEqual([expect.stringMatching(/the CG changed by 0\.515\d* % of the chord/)]);
  });
});
