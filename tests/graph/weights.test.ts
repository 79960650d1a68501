import { evaluate } from "mathjs";
import { describe, expect, test } from "vitest";
import { check, type Judgement } from "../../server/src/core/check";
import type { Rewriting } from "../../server/src/core/edits/change";
import type { Finding } from "../../server/src/core/findings/finding";
import { isPlace } from "../../server/src/core/findings/finding";
import { weightsOf } from "../../server/src/core/graph/derivations";
import type { Value } from "../../server/src/core/graph/value";
import type { Weights } from "../../server/src/core/graph/weights";
import { armOf } from "../../server/src/core/methods/balance";
import { limitAt } from "../../server/src/core/methods/envelope";
import type { Project, RecordSource } from "../../server/src/core/project";
import { loadRecord } from "../../server/src/core/records/record";
import { recordKindOf } from "../../server/src/core/records/schema";
import { ruleById } from "../../server/src/core/rules";
import { weightRules } from "../../server/src/core/rules/weights";
import { balanceExample } from "../../server/src/core/rules/weights/balance-example";
import { everyLoadingExample } from "../../server/src/core/rules/weights/every-loading-example";
import { weighingExample } from "../../server/src/core/rules/weights/weighing-example";
import { citeSource, type Source } from "../../server/src/core/source";
import { fc } from "../support/random";

type Texts = Readonly<Record<string, string>>;

function judge(text: string, others: Texts = {}): Judgement & { readonly project: Project } {
  const source: RecordSource = {
    resolve: (_, path) => path,
    load: (file) =>
      others[file] === undefined ? undefined : loadRecord(file, recordKindOf(file)!, others[file]),
  };
  const judgement = check(loadRecord("test.install.yaml", "install", text), source);
  return { ...judgement, project: judgement.project! };
}

const weightsIn = (text: string): Weights => weightsOf(judge(text).project);
const weightValuesIn = (text: string) => weightsOf.values(judge(text).project);

const weightRuleIds = new Set(weightRules.map((rule) => rule.id));
/** These records give no crew on purpose, and are told that not every loading was looked at. */
const findingsIn = (judgement: Judgement): Finding[] =>
  judgement.findings.filter(({ rule }) => weightRuleIds.has(rule) && rule !== "every-loading-not-checked");

/** The text that a finding points at. */
function pointedAt({ record }: Judgement, { anchor }: Finding): string {
  const span = isPlace(anchor) ? record.reading.spanOf(anchor.node) : anchor.span;
  return record.text.slice(span.start, span.end);
}

/** An aircraft and a change to it, in numbers. */
interface Change {
  readonly weight: number;
  readonly arm: number;
  readonly kit: readonly Item[];
  readonly added: readonly Item[];
  readonly removed: readonly Item[];
  readonly loads: readonly Item[];
  readonly forward: number;
  readonly aft: number;
  readonly takeoff: number;
}

interface Item {
  readonly id: string;
  readonly weight: number;
  readonly arm: number;
}

const change: Change = {
  weight: 2412,
  arm: 88.4,
  kit: [],
  added: [],
  removed: [],
  loads: [],
  forward: 82,
  aft: 95,
  takeoff: 3800,
};

/** Numbers as records have them: decimals, no exponent, and no noise. */
const decimal = (value: number) => String(Number(value.toFixed(6)));

/** The change as an install record; every arm is `datum` more. */
function recordOf(what: Change, datum = 0): string {
  const lb = (weight: number) => `${decimal(weight)} lb`;
  const inches = (arm: number) => `${decimal(arm + datum)} in`;
  const item = ({ id, weight, arm }: Item) => `{ id: ${id}, weight: ${lb(weight)}, arm: ${inches(arm)} }`;
  return [
    "document: { number: HM-0412, revision: A, status: draft }",
    "airframe:",
    "  aircraft: { type: Type 9, serial: B9-0417, kind: aeroplane, certification-basis: CAR 3 }",
    "  datum: A plane across the fuselage",
    `  empty: { weight: ${lb(what.weight)}, arm: ${inches(what.arm)} }`,
    `  limits: { takeoff: ${lb(what.takeoff)} }`,
    `  mac: { leading-edge: ${inches(72.5)}, length: 63.0 in }`,
    "  envelopes:",
    "    - id: normal",
    `      forward: [{ weight: 1000 lb, arm: ${inches(what.forward - 2)}, or-less: true }, { weight: 5000 lb, arm: ${inches(what.forward)} }]`,
    `      aft: [{ weight: 5000 lb, arm: ${inches(what.aft)}, or-less: true }]`,
    `  stations: [${what.loads.map(({ id, arm }) => `{ id: ${id}, kind: seat, arm: ${inches(arm)}, limit: 400 lb }`).join(", ")}]`,
    "  loadings:",
    "    - { id: bare, envelope: normal, load: [] }",
    `    - { id: all, envelope: normal, load: [${what.loads.map(({ id, weight }) => `{ station: ${id}, weight: ${lb(weight)} }`).join(", ")}] }`,
    `  equipment: [${what.removed.map(item).join(", ")}]`,
    "kit:",
    "  kit: { number: QSR-60, revision: C }",
    `  components: [${what.kit.map(({ id, weight }) => `{ id: ${id}, weight: ${lb(weight)} }`).join(", ")}]`,
    `placement: [${what.kit.map(({ id, arm }) => `{ component: ${id}, arm: ${inches(arm)} }`).join(", ")}]`,
    `added: [${what.added.map(item).join(", ")}]`,
    `removed: [${what.removed.map(({ id }) => `{ equipment: ${id} }`).join(", ")}]`,
    "",
  ].join("\n");
}

/** As printed: within half of the last digit. */
function expectPrinted(value: Value | undefined, printed: string): void {
  const decimals = printed.split(".")[1]?.length ?? 0;
  expect(value).toBeDefined();
  expect(Math.abs(value!.value - Number(printed.replaceAll(",", "")))).toBeLessThanOrEqual(
    0.5 * 10 ** -decimals * (1 + 1e-9),
  );
}

describe("worked examples, as whole records", () => {
  const mechanicItem: Source = {
    document: "FAA aviation mechanic general knowledge test item",
    edition: "edition not recorded",
    standing: "published",
  };

  test(`D10: two seats out; cabinet, seat and radio in [${citeSource(mechanicItem)}]`, () => {
    // Printed: empty moment 101,673.78 before, which is 2,886 lb at 35.23 in.
    const { units, change: found } = weightsIn(
      recordOf({
        ...change,
        weight: 2886,
        arm: 35.23,
        removed: [
          { id: "left-seat", weight: 15, arm: 71 },
          { id: "right-seat", weight: 15, arm: 71 },
        ],
        kit: [{ id: "CABINET", weight: 97, arm: 71 }],
        added: [
          { id: "seat-and-belt", weight: 20, arm: 71 },
          { id: "radio", weight: 30, arm: 94 },
        ],
      }),
    );
    expect(units).toMatchObject({ weight: "lb", arm: "in", moment: "lb in" });
    expectPrinted(found.emptyMomentBefore, "101,673.78");
    expectPrinted(found.weightChange, "117");
    expectPrinted(found.emptyWeight, "3,003");
    expectPrinted(found.emptyMoment, "110,670.78");
    expectPrinted(found.emptyCg, "36.85");
    expectPrinted(found.cgChange, "1.62");
  });

  test(`D11: one item out, three in [${citeSource(mechanicItem)}]`, () => {
    const {
      change: found,
      usefulLoad,
      usefulLoadChange,
    } = weightsIn(
      recordOf({
        ...change,
        weight: 1500,
        arm: 28.4,
        takeoff: 2300,
        removed: [{ id: "old-radio", weight: 24, arm: 68.5 }],
        kit: [
          { id: "RADIO", weight: 28, arm: 73 },
          { id: "POWER-UNIT", weight: 30, arm: 70.5 },
        ],
        added: [{ id: "bracket", weight: 25, arm: 85 }],
      }),
    );
    expectPrinted(found.emptyWeight, "1,559");
    expectPrinted(found.emptyMoment, "47,240");
    expectPrinted(found.emptyCg, "30.30");
    // One copy says that the CG moves forward; it moves aft.
    expect(found.cgChange!.value).toBeGreaterThan(0);
    // Not printed: AC 43.13-1B (9/8/98, Change 1 of 9/27/01) par. 10-2d says what a useful load is.
    expect(usefulLoad!.value).toBe(2300 - 1559);
    expect(usefulLoadChange!.value).toBe(-59);
  });

  test("the same in kilograms and millimetres is the same aircraft", () => {
    const imperial = recordOf({
      ...change,
      weight: 1500,
      arm: 28.4,
      kit: [{ id: "RADIO", weight: 28, arm: 73 }],
    });
    const metric = imperial.replace(
      "empty: { weight: 1500 lb, arm: 28.4 in }",
      "empty: { weight: 680.388555 kg, arm: 721.36 mm }",
    );
    expect(metric).not.toBe(imperial);
    const [here, there] = [weightsIn(imperial), weightsIn(metric)];
    expect(there.units).toMatchObject({ weight: "kg", arm: "mm", moment: "kg mm" });
    expect(there.change.emptyWeight!.value).toBeCloseTo(here.change.emptyWeight!.value * 0.45359237, 9);
    expect(there.change.emptyCg!.value).toBeCloseTo(here.change.emptyCg!.value * 25.4, 9);
    expect(there.change.emptyMoment!.unit).toBe("kg mm");
    expect(there.loadings[0]!.after.forward!.value).toBeCloseTo(
      here.loadings[0]!.after.forward!.value * 25.4,
      9,
    );
  });
});

describe("every value explains itself", () => {
  const texts: Texts = {
    "rack, bench and bracket": balanceExample({
      removed: ["aft-bench"],
      added: ["{ id: bracket, weight: 12 oz, arm: 2.9 m }", "{ id: harness, weight: 2.1 lb, arm: 100 in }"],
      mac: "{ leading-edge: 72.5 in, length: 63 in }",
    }),
    "only something out": balanceExample({ rack: "0 lb", placement: [], removed: ["aft-bench"] }),
    "no change": balanceExample({ rack: "0 lb", placement: [] }),
    metric: balanceExample({ removed: ["aft-bench"] })
      .replace("weight: 2412 lb", "weight: 1094 kg")
      .replace("arm: 88.4 in", "arm: 2.245 m"),
  };

  test.each(Object.entries(texts))("%s: formulas give the values", (_, text) => {
    const values = weightValuesIn(text);
    expect(values.length).toBeGreaterThan(20);
    for (const value of values.filter((one) => !one.isMethod)) {
      const scope: Record<string, number | number[]> = {};
      for (const { symbol, value: number } of value.inputs) {
        const known = scope[symbol];
        scope[symbol] = known === undefined ? number : [known, number].flat();
      }
      const computed: unknown = evaluate(value.formula, scope);
      const size = Math.max(1, ...value.inputs.map((input) => Math.abs(input.value)));
      expect(
        Math.abs((computed as number) - value.value),
        `${value.quantity}: ${value.formula}`,
      ).toBeLessThan(1e-12 * size);
    }
  });

  test.each(Object.entries(texts))("%s: limits are the envelope's at the loading's weight", (_, text) => {
    const limits = weightValuesIn(text).filter(({ quantity }) => /^(forward|aft)-limit/.test(quantity));
    expect(limits.length).toBe(8); // two sides of two loadings, before and after
    for (const { inputs, quantity, value } of limits) {
      const of = (symbol: string) => inputs.filter((one) => one.symbol === symbol).map((one) => one.value);
      const arms = of("x_i");
      const points = of("W_i").map((weight, index) => ({ weight, arm: arms[index]!, orLess: index === 0 }));
      const side = quantity.startsWith("forward") ? "forward" : "aft";
      expect(limitAt(points, side, of("W")[0]!)).toEqual({ covered: true, arm: value });
    }
  });

  test("a value has one name in one loading", () => {
    for (const text of Object.values(texts)) {
      const keys = weightValuesIn(text).map(
        ({ subject, quantity, condition }) => `${subject.kind} ${subject.id} ${quantity} ${condition ?? ""}`,
      );
      expect(new Set(keys).size).toBe(keys.length);
    }
  });

  test("loads at one station count together, by weight and by volume", () => {
    const text = balanceExample({
      loadings: [
        "{ id: mixed, envelope: normal, load: [{ station: main-tanks, volume: 10 gal }, { station: front-seats, weight: 170 lb }, { station: main-tanks, weight: 30 lb }] }",
      ],
    });
    const { stations, after } = weightsIn(text).loadings[0]!;
    expect(stations.map((one) => [one.id, one.weight!.value])).toEqual([
      ["main-tanks", 90],
      ["front-seats", 170],
    ]);
    expect(after.weight!.value).toBeCloseTo(2412 + 31.2 + 260, 9);
  });
});

describe("what is not known is not left out of a sum", () => {
  const sound = balanceExample({
    removed: ["aft-bench"],
    added: ["{ id: bracket, weight: 1 lb, arm: 100 in }"],
  });
  const broken: Texts = {
    "a component without a place": sound.replace("  - { component: RACK, arm: 112.0 in }\n", "  []\n"),
    "a component in two places": sound.replace(
      "  - { component: RACK, arm: 112.0 in }\n",
      "  - { component: RACK, arm: 112.0 in }\n  - { component: RACK, arm: 112.0 in }\n",
    ),
    "a placement without an arm": sound.replace("RACK, arm: 112.0 in", "RACK"),
    "a component without a weight": sound.replace("{ id: RACK, weight: 31.2 lb }", "{ id: RACK }"),
    "a component that can't be read": sound.replace(
      "[{ id: RACK, weight: 31.2 lb }]",
      "[{ id: RACK, weight: 31.2 lb }, 7]",
    ),
    "a kit without components": sound.replace("  components: [{ id: RACK, weight: 31.2 lb }]\n", ""),
    "a kit that is not there": sound.replace(/kit:\n(.*\n){2}/, "kit: other.kit.yaml\n"),
    "equipment that is not on the list": sound.replace("equipment: aft-bench", "equipment: bench"),
    "equipment without a weight": sound.replace("id: aft-bench, weight: 38.5 lb", "id: aft-bench"),
    "an added item without a weight": sound.replace("id: bracket, weight: 1 lb", "id: bracket"),
    "an added item with a weight that can't be read": sound.replace("weight: 1 lb", "weight: 1 inch"),
    "an added item that can't be read": sound.replace(
      "{ id: bracket, weight: 1 lb, arm: 100 in }",
      "bracket",
    ),
    "a list that is none": sound.replace("  - { equipment: aft-bench }", "  aft-bench"),
  };

  test("all is known in the sound record", () => {
    const { change: found, loadings, usefulLoad } = weightsIn(sound);
    expect(found.emptyCg).toBeDefined();
    expect(usefulLoad).toBeDefined();
    expect(loadings[0]!.after.cg).toBeDefined();
  });

  test.each(Object.entries(broken))("%s", (_, text) => {
    expect(text).not.toBe(sound);
    const judgement = judge(text);
    const { change: found, loadings, usefulLoad } = weightsOf(judgement.project);
    expect([found.emptyCg, found.emptyMoment, found.cgChange]).toEqual([undefined, undefined, undefined]);
    expect(loadings.map((one) => one.after.cg)).toEqual([undefined, undefined]);
    expect(loadings.map((one) => one.before.cg)).not.toContain(undefined);
    if (!text.includes("RACK }")) expect([found.weightChange, usefulLoad]).toEqual([undefined, undefined]);
    expect(judgement.assessments.filter(({ rule }) => rule.startsWith("cg-"))).toEqual([]);
    expect(judgement.findings.filter(({ severity }) => severity === "error")).not.toEqual([]);
  });

  test.each([
    ["without a weight", balanceExample({ density: "" })],
    ["that can't be read", balanceExample().replaceAll("load: [", "load: [7, ")],
  ])("a load %s leaves its loading open, before and after", (_, text) => {
    const { loadings, change: found } = weightsIn(text);
    expect(loadings.length).toBe(2);
    expect(found.emptyCg).toBeDefined();
    for (const { before, after } of loadings)
      expect([before.weight, after.weight]).toEqual([undefined, undefined]);
  });

  test("equipment listed twice is taken off once", () => {
    const once = weightsIn(balanceExample({ removed: ["aft-bench"] }));
    const twice = weightsIn(balanceExample({ removed: ["aft-bench", "aft-bench"] }));
    expect(twice.change.emptyCg!.value).toBe(once.change.emptyCg!.value);
  });
});

const tenths = (min: number, max: number) => fc.integer({ min: min * 10, max: max * 10 }).map((n) => n / 10);
const itemsOf = (prefix: string, weight: fc.Arbitrary<number>, maxLength: number) =>
  fc
    .array(fc.record({ weight, arm: tenths(-40, 260) }), { maxLength })
    .map((items) => items.map((item, index) => ({ ...item, id: `${prefix}${index}` })));
const anyChange: fc.Arbitrary<Change> = fc.record({
  weight: tenths(1500, 3000),
  arm: tenths(80, 96),
  kit: itemsOf("K", tenths(1, 200), 4),
  added: itemsOf("a", tenths(1, 50), 4),
  removed: itemsOf("e", tenths(1, 100), 3),
  loads: itemsOf("s", tenths(0, 420), 4),
  forward: tenths(80, 90),
  aft: tenths(90, 100),
  takeoff: tenths(2500, 4500),
});

/** Everything that a finding says that must not depend on the datum. */
function essence(judgement: Judgement): string[] {
  return findingsIn(judgement)
    .map((finding) => {
      const { rule, subject, assessment } = finding;
      const { wasKept, item } = assessment?.facts ?? {};
      const place = pointedAt(judgement, finding).replace(/^-?[\d.]+ in$/, "an arm");
      return JSON.stringify({ rule, subject, wasKept, item, place });
    })
    .sort();
}

/** Distance to the limit of every assessment, by rule and subject. */
function margins({ assessments }: Judgement): Map<string, number> {
  return new Map(
    assessments
      .filter(({ rule }) => weightRuleIds.has(rule))
      .map(({ rule, subject, value, limit, facts }) => [
        `${rule} ${subject.kind} ${subject.id} ${facts.loading}`,
        limit.value - value.value,
      ]),
  );
}

function expectSameMargins(here: Judgement, there: Judgement): void {
  const [before, after] = [margins(here), margins(there)];
  expect([...after.keys()].sort()).toEqual([...before.keys()].sort());
  for (const [key, margin] of before) expect(after.get(key), key).toBeCloseTo(margin, 6);
}

describe("what findings compare is a value of the graph", () => {
  const one = (text: string, quantity: string) =>
    weightValuesIn(text).filter((value) => value.quantity === quantity);

  test("all ballast at one station", () => {
    const sections =
      "ballast: [{ id: B1, station: nose-ballast, weight: 12 lb }, { id: B2, station: nose-ballast, weight: 8 lb }]";
    expect(one(everyLoadingExample({ sections }), "ballast-weight").map(({ value }) => value)).toEqual([20]);
    const halfTyped = sections.replace("8 lb", "8 lbb");
    expect(one(everyLoadingExample({ sections: halfTyped }), "ballast-weight")).toEqual([]);
  });

  test("the weighing with the changes since: 2412 lb at 87 in and 12 lb at 160 in are 2424 lb at 87.36 in (by hand)", () => {
    const text = weighingExample().replace(
      "  weighing:",
      "  history: { changes: [{ weight: 12 lb, arm: 160 in }] }\n  weighing:",
    );
    expect(one(text, "statement-due-weight")[0]!.value).toBeCloseTo(2424, 9);
    expect(one(text, "statement-due-cg")[0]!.value).toBeCloseTo((2412 * 87 + 12 * 160) / 2424, 9);
    expect(judge(text).findings.map(({ rule }) => rule)).toContain("weighing-disagrees");
    expect(one(text.replace("weight: 12 lb", "weight: twelve"), "statement-due-weight")).toEqual([]);
  });
});

describe("lines and ducts", () => {
  const hose = (installed: string) =>
    everyLoadingExample({
      sections: `lines: [{ id: L1, kind: hose, fluid: water, dash: 6${installed} }]\nducts: [{ id: D1, flow: 90 cfm, segments: [{ id: S1, length: 3 ft, diameter: 4 in }], outlets: [{ id: O1, after: S1 }], installed-weight: { weight: 3 lb, arm: 120 in } }]`,
    });

  test("count with the weight that is recorded, and not at all without one", () => {
    const both = weightsIn(hose(", installed-weight: { weight: 2 ± 0.5 lb, arm: 110 in }"));
    // By hand: 2412 + 31.2 + 2 + 3 lb; 2412 x 87 + 31.2 x 92 + 2 x 110 + 3 x 120 lb in.
    expect(both.change.emptyWeight!.value).toBeCloseTo(2448.2, 9);
    expect(both.change.emptyMoment!.value).toBeCloseTo(213_294.4, 9);
    expect(both.change.tolerance!.weight!.value).toBeCloseTo(0.5, 9);
    expect(weightsIn(hose("")).change.emptyWeight!.value).toBeCloseTo(2446.2, 9);
  });

  test("leave the total open while a weight can't be read", () => {
    const faulty = weightsIn(hose(", installed-weight: { weight: 2 lbb, arm: 110 in }"));
    expect(faulty.change.emptyWeight).toBeUndefined();
    expect(weightsIn(hose(", installed-weight: 2 lb")).change.emptyWeight).toBeUndefined();
  });
});

describe("the tolerance of the empty weight statement itself", () => {
  const text = (empty: string, more: Parameters<typeof everyLoadingExample>[0] = {}) =>
    everyLoadingExample(more).replace(/empty: \{[^}]*\}/, `empty: { ${empty} }`);

  test("is part of the worst case, with that of the change (against every corner, by hand)", () => {
    const { change } = weightsIn(text("weight: 2412 ± 10 lb, arm: 87.0 ± 0.2 in", { rack: "31.2 ± 1 lb" }));
    expect(change.tolerance!.weight!.value).toBeCloseTo(11, 9);
    const corners = [-1, 1].flatMap((w) =>
      [-1, 1].flatMap((x) =>
        [-1, 1].map((r) => {
          const [empty, arm, rack] = [2412 + 10 * w, 87 + 0.2 * x, 31.2 + r];
          return (empty * arm + rack * 92) / (empty + rack);
        }),
      ),
    );
    expect(change.tolerance!.foremost!.value).toBeCloseTo(Math.min(...corners), 9);
    expect(change.tolerance!.aftmost!.value).toBeCloseTo(Math.max(...corners), 9);
  });

  test("counts where nothing else has one, and to the side too", () => {
    const { change, permitted } = weightsIn(
      text("weight: 2412 ± 10 lb, arm: 87.0 in, butt-line: 0 in", { rack: "31.2 lb", butt: "110 in" }),
    );
    expect(change.tolerance!.weight!.value).toBeCloseTo(10, 9);
    const right = permitted[0]!.sides.find(({ side }) => side === "right")!;
    // The crew of 170 lb on the centreline, and nothing else: 31.2 x 110 / (2402 + 31.2 + 170).
    expect(right.after!.cg.value).toBeCloseTo((31.2 * 110) / (2412 + 31.2 + 170), 9);
    expect(right.tolerance!.cg.value).toBeCloseTo((31.2 * 110) / (2402 + 31.2 + 170), 9);
  });

  test("is shown in the change table, and pointed at where it leaves most open", () => {
    const judgement = judge(text("weight: 2412 lb, arm: 87.0 ± 1.5 in"));
    const finding = judgement.findings.find(({ rule }) => rule === "limit-within-tolerance");
    expect(pointedAt(judgement, finding!)).toBe("2412 lb");
    expect(
      judge(text("weight: 2412 lb, arm: 87.0 ± 0.01 in")).findings.map(({ rule }) => rule),
    ).not.toContain("limit-within-tolerance");
  });
});

describe("a different datum", () => {
  test("changes no finding and no margin", () => {
    let seen = 0;
    fc.assert(
      fc.property(anyChange, tenths(-400, 400), (what, datum) => {
        const [here, there] = [judge(recordOf(what)), judge(recordOf(what, datum))];
        seen += findingsIn(here).length;
        expect(essence(there)).toEqual(essence(here));
        expectSameMargins(here, there);
        const [a, b] = [weightsOf(here.project).change, weightsOf(there.project).change];
        expect(b.cgChange!.value).toBeCloseTo(a.cgChange!.value, 6);
        expect(b.cgChangeMac!.value).toBeCloseTo(a.cgChangeMac!.value, 6);
        expect(b.emptyCg!.value).toBeCloseTo(a.emptyCg!.value + datum, 6);
      }),
      { numRuns: 100 },
    );
    expect(seen).toBeGreaterThan(50);
  });

  test.each([0, -95, -95.3, 1000, -1e4])("a CG exactly on its limit stays legal: datum %d in", (datum) => {
    // 3 lb 0.1 in aft of the limit balance 1 lb 0.3 in ahead of it, but 3 x 0.1 - 0.3 is not 0 in binary.
    const kit = [
      { id: "A", weight: 3, arm: 95.1 },
      { id: "B", weight: 1, arm: 94.7 },
    ];
    const on = { ...change, arm: 95, kit };
    expect(findingsIn(judge(recordOf(on, datum)))).toEqual([]);
    const past = { ...on, kit: [{ id: "A", weight: 3, arm: 95.2 }, kit[1]!] };
    const found = findingsIn(judge(recordOf(past, datum)));
    expect(found.map(({ rule }) => rule)).toEqual(["cg-aft-of-limit", "cg-aft-of-limit"]);
  });
});

describe("the order of items", () => {
  test("does not matter", () => {
    const shuffled = anyChange.chain((what) =>
      fc.record({
        what: fc.constant(what),
        other: fc.record({
          kit: shuffle(what.kit),
          added: shuffle(what.added),
          removed: shuffle(what.removed),
          loads: shuffle(what.loads),
        }),
      }),
    );
    fc.assert(
      fc.property(shuffled, ({ what, other }) => {
        // Of two that weigh the same, either may be pointed at.
        const weights = [...what.kit, ...what.added].map(({ weight }) => weight);
        fc.pre(new Set(weights).size === weights.length);
        const [here, there] = [judge(recordOf(what)), judge(recordOf({ ...what, ...other }))];
        expect(essence(there)).toEqual(essence(here));
        expectSameMargins(here, there);
      }),
      { numRuns: 100 },
    );
  });

  function shuffle<T>(items: readonly T[]): fc.Arbitrary<T[]> {
    return fc.shuffledSubarray([...items], { minLength: items.length });
  }
});

describe("findings", () => {
  const heavyAft = { rack: "96 lb", arm: "150.0 in" };

  test("point at the arm of the item that brings the CG there, and name the loading", () => {
    const judgement = judge(
      balanceExample({ ...heavyAft, added: ["{ id: rails, weight: 4 lb, arm: 155 in }"] }),
    );
    const [finding] = findingsIn(judgement);
    expect(finding).toMatchObject({
      rule: "cg-aft-of-limit",
      severity: "error",
      subject: "loading full-aft",
    });
    expect(pointedAt(judgement, finding!)).toBe("150.0 in");
    expect(finding!.related.map(({ words }) => words)).toEqual(["loading full-aft"]);
    expect(finding!.todo).toMatch(
      /On board: front-seats 170 lb, rear-seats 340 lb, baggage 120 lb and main-tanks 120 lb\.$/,
    );
  });

  test("tell when a loading was beyond its limit before, and that the change has no part in it", () => {
    const nose = balanceExample({ rack: "10 lb", arm: "60 in" }).replace("arm: 95.0 in", "arm: 93.0 in");
    const judgement = judge(nose);
    const [finding] = findingsIn(judgement);
    expect(finding!.what).toMatch(/; before the change it was past the limit too, by 0\.495 in\.$/);
    expect(finding!.todo).toMatch(/^Nothing that the change adds or takes out brings the CG aft/);
    expect(pointedAt(judgement, finding!)).toBe("full-aft");
  });

  test("know that taking something out moves the CG away from it", () => {
    const what: Change = { ...change, removed: [{ id: "nose-weight", weight: 200, arm: 10 }] };
    const judgement = judge(recordOf(what));
    const [finding] = findingsIn(judgement);
    expect(finding).toMatchObject({ rule: "cg-aft-of-limit" });
    expect(finding!.todo).toMatch(/^Taking out nose-weight brings the CG aft most/);
    expect(pointedAt(judgement, finding!)).toBe("nose-weight");
  });

  test("point at the heaviest item where a weight is above its limit, and at the vaguest where tolerances decide", () => {
    const sections =
      "added: [{ id: rails, weight: 4 ± 3 lb, arm: 92 in }, { id: plate, weight: 6 lb, arm: 92 in }]";
    const limits = "takeoff: 3800 lb, zero-fuel: 2780 lb";
    const heavy = judge(everyLoadingExample({ limits, sections }));
    const tooHeavy = heavy.findings.find(({ rule }) => rule === "phase-weight-above-limit");
    expect(pointedAt(heavy, tooHeavy!)).toBe("RACK");
    // By hand: 2412 + 31.2 + 10 + 340 + 240 lb are 3033.2 lb, and 3 lb more in the worst case.
    const vague = judge(everyLoadingExample({ limits: "takeoff: 3035 lb", sections }));
    const within = vague.findings.find(({ rule }) => rule === "limit-within-tolerance");
    expect(within!.what).toMatch(/the weight is 3036 lb, past the limit of 3035 lb/);
    expect(pointedAt(vague, within!)).toBe("rails");
  });

  test("go to the link when the airframe is another record", () => {
    const text = balanceExample({ baggage: "100 lb", density: "" });
    const [, airframe] = /airframe:\n((?: {2}.*\n)+)/.exec(text)!;
    const linked = text.replace(/airframe:\n(?: {2}.*\n)+/, "airframe: one.airframe.yaml\n");
    const judgement = judge(linked, { "one.airframe.yaml": airframe!.replaceAll(/^ {2}/gm, "") });
    const found = findingsIn(judgement);
    expect(found.map(({ rule }) => rule).sort()).toEqual([
      "load-without-weight",
      "load-without-weight",
      "station-above-limit",
    ]);
    for (const finding of found) {
      expect(pointedAt(judgement, finding)).toBe("one.airframe.yaml");
      expect(finding.related.map(({ place }) => place.file)).toEqual(["one.airframe.yaml"]);
    }
  });

  test("a remedy moves the item no further than it takes", () => {
    const text = balanceExample(heavyAft);
    const { assessments, project } = judge(text);
    const assessment = assessments.find((one) => one.rule === "cg-aft-of-limit" && !one.holds)!;
    const [remedy] = [...ruleById.get("cg-aft-of-limit")!.remedies!(assessment, project)];
    const [change] = remedy!.changes as Rewriting[];
    expect(change!.place).toBe(assessment.place);
    const rulesAt = (arm: string) =>
      findingsIn(judge(balanceExample({ ...heavyAft, arm }))).map(({ rule }) => rule);
    expect(rulesAt(change!.text)).toEqual([]);
    expect(rulesAt(`${Number.parseFloat(change!.text) + 0.1} in`)).toEqual(["cg-out-as-fuel-burns"]);
    // By hand: the limit is 95 in at 3,138 lb, the 120 lb of fuel at 90 in burned, and all but the rack has
    // 295,630.8 lb in less the fuel's.
    const dry = 3138 * 95 - (295_630.8 - 120 * 90);
    expect(change!.text).toBe(`${Math.floor(armOf(96, dry)! * 10) / 10} in`);
  });

  test("no remedy takes an item out of the aircraft", () => {
    const text = balanceExample({ rack: "2 lb", arm: "150 in" }).replace("arm: 95.0 in", "arm: 93.0 in");
    const { assessments, project } = judge(text);
    const assessment = assessments.find((one) => one.rule === "cg-aft-of-limit" && !one.holds)!;
    expect(assessment.facts.item).toBe("RACK");
    expect([...ruleById.get("cg-aft-of-limit")!.remedies!(assessment, project)]).toEqual([]);
  });

  test("the envelope ends: each gap is told once, with its boundary", () => {
    const text = balanceExample({
      forward: "{ weight: 2900 lb, arm: 82 in }, { weight: 3000 lb, arm: 83 in }",
    });
    const found = findingsIn(judge(text)).map(({ rule, severity, what }) => [rule, severity, what]);
    expect(found).toEqual([
      [
        "loading-not-covered",
        "warning",
        "Loading pilot-alone is not covered: the forward limit of envelope normal begins at 2900 lb, above its 2733 lb.",
      ],
      [
        "loading-not-covered",
        "warning",
        "Loading full-aft is not covered: the forward limit of envelope normal ends at 3000 lb, below its 3193 lb.",
      ],
    ]);
  });

  test("a change is called negligible only where both of its parts are", () => {
    // AC 43.13-1B, 9/8/98, Change 1 of 9/27/01, par. 10-2c: 1 lb or less below 5,000 lb; CG less than 0.05 % MAC.
    const rules = (kit: Item) =>
      findingsIn(judge(recordOf({ ...change, kit: [kit] }))).map(({ rule }) => rule);
    expect(rules({ id: "SWITCH", weight: 1, arm: 90 })).toEqual(["weight-change-negligible"]);
    expect(rules({ id: "SWITCH", weight: 1.001, arm: 90 })).toEqual([]);
    // 1 lb in 2,413 lb shifts the CG of 88.4 in by 0.0315 in, 0.05 % of 63 in, from 88.4 + 76.0095 in.
    expect(rules({ id: "SWITCH", weight: 1, arm: 164.409 })).toEqual(["weight-change-negligible"]);
    expect(rules({ id: "SWITCH", weight: 1, arm: 164.41 })).toEqual([]);
  });
});
