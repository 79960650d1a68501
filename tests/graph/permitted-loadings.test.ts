/** Every permitted loading, weighing, ballast and placards, as whole records. */

import { describe, expect, test } from "vitest";
import { check, type Judgement } from "../../server/src/core/check";
import { weightsOf } from "../../server/src/core/graph/derivations";
import type { Weights } from "../../server/src/core/graph/weights";
import { type AdverseCase, adverseLoading } from "../../server/src/core/methods/adverse-loading";
import { boundaryCurves, violations } from "../../server/src/core/methods/loadings";
import type { RecordSource } from "../../server/src/core/project";
import { roundUp } from "../../server/src/core/quantities";
import { loadRecord } from "../../server/src/core/records/record";
import { ruleById } from "../../server/src/core/rules";
import { everyLoadingExample } from "../../server/src/core/rules/weights/every-loading-example";
import { weighingExample } from "../../server/src/core/rules/weights/weighing-example";
import { hoverOn } from "../../server/src/core/views/hover";
import { fc } from "../support/random";

const alone: RecordSource = { resolve: () => undefined, load: () => undefined };

function judge(text: string): Judgement {
  return check(loadRecord("test.install.yaml", "install", text), alone);
}

function weightsIn(text: string): Weights {
  return weightsOf(judge(text).project!);
}

/** How far each side of each envelope is past its limit. */
function excesses({ permitted }: Weights): number[] {
  return permitted.flatMap(({ sides }) => sides.map(({ after }) => after!.excess));
}

const decimal = (value: number) => String(Number(value.toFixed(6)));

/** The same record with every arm that much more. */
function shifted(text: string, datum: number): string {
  return text.replace(
    /\b(arm|leading-edge|reference): (-?[\d.]+) in/g,
    (_, key: string, arm: string) => `${key}: ${decimal(Number(arm) + datum)} in`,
  );
}

/** The same record in kilograms and metres, each number to more digits than anybody reads. */
function metric(text: string): string {
  return text
    .replace(/(-?[\d.]+) lb\/gal/g, (_, n: string) => `${(Number(n) * 0.45359237) / 3.785411784} kg/L`)
    .replace(/(-?[\d.]+) lb\b/g, (_, n: string) => `${Number(n) * 0.45359237} kg`)
    .replace(/(-?[\d.]+) gal\b/g, (_, n: string) => `${Number(n) * 3.785411784} L`)
    .replace(/(-?[\d.]+) in\b/g, (_, n: string) => `${Number(n) * 0.0254} m`);
}

const heavy = { arm: "160.0 in" } as const;

describe("what must hold whatever the aircraft", () => {
  test.each([-200, -87, 13.5, 1000])("a datum moved by %d in leaves every excess as it is", (datum) => {
    const text = everyLoadingExample({ ...heavy, butt: "8 in" });
    const [here, there] = [excesses(weightsIn(text)), excesses(weightsIn(shifted(text, datum)))];
    expect(here).toHaveLength(4);
    for (const [index, excess] of here.entries()) expect(there[index]).toBeCloseTo(excess, 8);
  });

  test("a datum moved asks for the same ballast", () => {
    const ballast = (text: string) => weightOfBallast(judge(text));
    expect(ballast(everyLoadingExample(heavy))).toBe(ballast(shifted(everyLoadingExample(heavy), -300)));
  });

  test("kilograms and metres come to the same", () => {
    const text = everyLoadingExample({ ...heavy, butt: "8 in" });
    const [pounds, kilograms] = [excesses(weightsIn(text)), excesses(weightsIn(metric(text)))];
    for (const [index, excess] of pounds.entries()) expect(kilograms[index]).toBeCloseTo(excess * 0.0254, 9);
  });

  test("one item split in two, in either order, comes to the same", () => {
    const one = everyLoadingExample({ sections: "added: [{ id: A, weight: 12 lb, arm: 130 in }]" });
    const parts = ["{ id: A, weight: 8 lb, arm: 127 in }", "{ id: B, weight: 4 lb, arm: 136 in }"];
    const two = everyLoadingExample({ sections: `added: [${parts.join(", ")}]` });
    const turned = everyLoadingExample({ sections: `added: [${parts.toReversed().join(", ")}]` });
    const whole = excesses(weightsIn(one));
    for (const text of [two, turned]) {
      for (const [index, excess] of excesses(weightsIn(text)).entries())
        expect(excess).toBeCloseTo(whole[index]!, 9);
    }
  });

  test("what comes out and goes in again changes nothing", () => {
    const again = everyLoadingExample({
      rack: "0 lb",
      sections: "removed: [{ equipment: aft-bench }]\nadded: [{ id: bench, weight: 38.5 lb, arm: 118.0 in }]",
    });
    const { permitted } = weightsIn(again);
    for (const { before, after } of permitted.flatMap(({ sides }) => sides)) {
      expect(after!.excess).toBeCloseTo(before!.excess, 9);
    }
  });

  test("the published adverse loading is never worse than the worst of every loading", () => {
    const whole = (min: number, max: number) => fc.integer({ min, max });
    const item = fc.record({ arm: whole(-40, 160), most: whole(0, 300) });
    fc.assert(
      fc.property(
        fc.array(item, { minLength: 1, maxLength: 4 }),
        fc.array(fc.record({ arm: whole(60, 110), capacity: whole(50, 400) }), {
          minLength: 1,
          maxLength: 2,
        }),
        whole(70, 95),
        fc.constantFrom("forward" as const, "aft" as const),
        (items, tanks, limit, side) => {
          const aircraft: AdverseCase = {
            empty: { weight: 1500, arm: 82 },
            pilot: { id: "pilot", weight: 170, arms: [85] },
            items: items.map((one, index) => ({ id: `i${index}`, ...one })),
            tanks: tanks.map((one, index) => ({ id: `t${index}`, ...one })),
            minimumFuel: 0,
            maximumWeight: Number.MAX_SAFE_INTEGER,
          };
          const points = [{ weight: 10_000, arm: limit, orLess: true }];
          const sheet = adverseLoading(aircraft, points, side)!;
          const result = boundaryCurves({
            fixed: { weight: 1670, moment: 1500 * 82 + 170 * 85 },
            stations: [
              ...aircraft.items.map(({ id, arm, most }) => ({ id, arm, least: 0, most })),
              ...aircraft.tanks.map(({ id, arm, capacity }) => ({ id, arm, least: 0, most: capacity })),
            ],
          });
          if (!result.solved) throw new Error(JSON.stringify(result.problems));
          const { worst } = violations(result.curves, { forward: points, aft: points }, side);
          expect(sheet.excess!).toBeLessThanOrEqual(worst!.excess + 1e-9);
        },
      ),
    );
  });
});

/** What the candidate remedy adds at the ballast station. */
function weightOfBallast(judgement: Judgement): number {
  const assessment = judgement.assessments.find((one) => one.rule === "loading-made-illegal" && !one.holds)!;
  const all = [...ruleById.get("loading-made-illegal")!.remedies!(assessment, judgement.project!)];
  const { title } = all.find((one) => one.title.includes("of ballast"))!;
  return Number.parseFloat(title.replace("Add ", ""));
}

describe("ballast", () => {
  test("is the exact weight for the limit, rounded up to what is weighed off", () => {
    const judgement = judge(everyLoadingExample(heavy));
    const { after } = weightsOf(judgement.project!).permitted[0]!.sides.find(({ side }) => side === "aft")!;
    const { weight, cg, limit } = after!;
    // AC 43.13-1B (9/8/98), par. 10-22: weight times what is missing, over the ballast's distance from the limit.
    const exact = (weight.value * (limit.value - cg.value)) / (-20 - limit.value);
    expect(weightOfBallast(judgement)).toBe(roundUp(exact, 0.1));
  });

  test("that much mends it, and a tenth of a pound less does not", () => {
    const needed = weightOfBallast(judge(everyLoadingExample(heavy)));
    const rulesWith = (weight: number) =>
      judge(
        everyLoadingExample({
          ...heavy,
          sections: `ballast: [{ id: B, station: nose-ballast, weight: ${decimal(weight)} lb }]`,
        }),
      ).findings.map(({ rule }) => rule);
    expect(rulesWith(needed)).not.toContain("loading-made-illegal");
    expect(rulesWith(needed - 0.1)).toContain("loading-made-illegal");
  });
});

describe("a placard", () => {
  const most = (sections?: string) =>
    weightsIn(everyLoadingExample(sections ? { ...heavy, sections } : heavy)).stationLimits.get(
      "aft-baggage",
    )!;

  test("lowers what the station may carry after the change, and not before it", () => {
    const { before, after } = most("placards: [{ id: P, station: aft-baggage, limit: 60 lb }]");
    expect([before!.value, after!.value]).toEqual([120, 60]);
  });

  test("takes least away that does it", () => {
    const rulesAt = (limit: number) =>
      judge(
        everyLoadingExample({
          ...heavy,
          sections: `placards: [{ id: P, station: aft-baggage, limit: ${limit} lb }]`,
        }),
      ).findings.map(({ rule }) => rule);
    const judgement = judge(everyLoadingExample(heavy));
    const assessment = judgement.assessments.find(
      (one) => one.rule === "loading-made-illegal" && !one.holds,
    )!;
    const titles = [...ruleById.get("loading-made-illegal")!.remedies!(assessment, judgement.project!)];
    const placarded = Number(
      /Placard aft-baggage at (\d+) lb/.exec(titles.map(({ title }) => title).join())![1],
    );
    expect(rulesAt(placarded)).not.toContain("loading-made-illegal");
    expect(rulesAt(placarded + 1)).toContain("loading-made-illegal");
  });
});

describe("the floor of a compartment", () => {
  test("FAA mechanic test item, from memory: 76 x 74 in pallet at 176 lb/ft2, pallet 77 lb, tie-downs 29 lb", () => {
    const { stationLimits } = weightsIn(
      everyLoadingExample({ baggage: "floor-area: 5624 in2, floor-limit: 176 lb/ft2" }),
    );
    // Printed: 6,767.8 lb of cargo.
    expect(stationLimits.get("aft-baggage")!.after!.value - 77 - 29).toBeCloseTo(6767.8, 1);
  });
});

describe("a weighing", () => {
  test("comes to the empty weight by the certification basis: CAR 3 leaves drainable oil out", () => {
    const sheet = weightsIn(weighingExample({ oil: "on-board: true" })).change.before.weighing!;
    expect(sheet.items.map(({ treatment }) => treatment)).toEqual(["remove"]);
    expect(sheet.emptyWeight!.value).toBeCloseTo(2412 - 15, 9);
  });

  test("the same with a later basis keeps it", () => {
    const text = weighingExample({ oil: "on-board: true" }).replace("CAR 3", "14 CFR 23 before Amdt 23-64");
    const sheet = weightsIn(text).change.before.weighing!;
    expect(sheet.items.map(({ treatment }) => treatment)).toEqual(["keep"]);
    expect(sheet.emptyWeight!.value).toBeCloseTo(2412, 9);
  });

  test("is the starting point where there is no statement", () => {
    const text = weighingExample().replace(/^ {2}empty: .*\n/m, "");
    const { change } = weightsIn(text);
    expect(change.emptyWeight!.value).toBeCloseTo(2412 + 31.2, 9);
    expect(judge(text).findings.filter(({ severity }) => severity === "error")).toEqual([]);
  });

  test("with neither there is one finding, and no number made up", () => {
    const text = everyLoadingExample().replace(/^ {2}empty: .*\n/m, "");
    const { findings } = judge(text);
    expect(findings.map(({ rule }) => rule)).toContain("key-choice");
    expect(weightsIn(text).change.emptyWeight).toBeUndefined();
  });
});

describe("hover on an item of the change", () => {
  test.each(["id", "arm"] as const)("shows its moment and what it does to the CG: on its %s", (where) => {
    const text = everyLoadingExample({ sections: "added: [{ id: CRATE, weight: 12 lb, arm: 130 in }]" });
    const judgement = judge(text);
    const [crate] = judgement.project!.install.added!;
    const node = (where === "id" ? crate!.id : crate!.arm)!.place.node;
    const { markdown } = hoverOn("test.install.yaml", node, [judgement])!;
    // 12 lb at 130 in; the empty aircraft with the rack alone has its CG at 87.064 in.
    expect(markdown).toMatch(/item moment, CRATE: \*\*1560 lb in\*\*/);
    expect(markdown).toMatch(/item CG effect, CRATE: \*\*0\.20\d+ in\*\*/);
  });
});
