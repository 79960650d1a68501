/** Weights of wires and of the harness, and how they enter the weight change; remedies of installed wires. */
import { describe, expect, test } from "vitest";
import { check, type Judgement } from "../../server/src/core/check";
import { valuesOf, weightsOf, wiringOf } from "../../server/src/core/graph/derivations";
import type { Project } from "../../server/src/core/project";
import { loadRecord } from "../../server/src/core/records/record";
import { proveRemedy } from "../../server/src/core/remedies";
import { circuitExample } from "../../server/src/core/rules/wires/circuit-example";

const alone = { resolve: () => undefined, load: () => undefined };

function judge(text: string): Judgement & { readonly project: Project } {
  const judgement = check(loadRecord("test.install.yaml", "install", text), alone);
  return { ...judgement, project: judgement.project! };
}

const counted = (how: string) => [`harness: { arm: 96 in, counted: ${how} }`];

/** 12 ft of 10 AWG out and 2 ft back; a rack of 31.2 lb at 142 in; 2412 lb at 88.4 in empty. */
const computed = circuitExample({ sections: counted("computed") });

describe("weight of a wire", () => {
  const weightOfFeeder = (text: string) => wiringOf(judge(text).project).runs[0]!.weight;

  test("by its maker's weight per length: 81 lb/1000 ft over 12 ft (arithmetic)", () => {
    const weight = weightOfFeeder(circuitExample({ keys: "weight-per-length: 81 lb/1000 ft" }))!;
    expect(weight).toMatchObject({ quantity: "wire-weight", unit: "lb", notes: [] });
    expect(weight.value).toBeCloseTo(0.972, 12);
  });

  test.each([
    // The conductor of AC 43.13-1B (9/8/98, Change 1 of 9/27/01) Table 11-9, in copper (derived): lb per 1000 ft.
    ["10 AWG", 28.3],
    ["8 AWG", 51.4],
    ["4/0 AWG", 638],
  ])("else by its conductor: %s is %d lb per 1000 ft, and the note says what is missing", (gauge, pounds) => {
    const weight = weightOfFeeder(circuitExample({ gauge, length: "1000 ft" }))!;
    expect(Number(weight.value.toPrecision(3))).toBe(pounds);
    const conductor = weight.inputs[0]!.derivedFrom!;
    expect(conductor).toMatchObject({ quantity: "conductor-weight", unit: "lb/1000 ft" });
    expect(conductor.notes).toEqual([expect.stringContaining("insulation is not in it")]);
  });

  test("is not made up where no table has the conductor", () => {
    const aluminium = circuitExample({ gauge: "8 AWG", material: "aluminium" });
    expect(weightOfFeeder(aluminium)).toBeUndefined();
    expect(wiringOf(judge(aluminium).project).harnessWeight).toBeUndefined();
    expect(weightOfFeeder(circuitExample({ gauge: "3 AWG" }))).toBeUndefined();
  });

  test("the same in kilograms is the same wire", () => {
    for (const keys of ["", "weight-per-length: 81 lb/1000 ft"]) {
      const here = weightOfFeeder(circuitExample({ keys }))!;
      const there = weightOfFeeder(
        circuitExample({ keys }).replace("weight: 2412 lb, arm: 88.4 in", "weight: 1094 kg, arm: 2.245 m"),
      )!;
      expect(there.unit).toBe("kg");
      expect(there.value).toBeCloseTo(here.value * 0.45359237, 12);
    }
  });
});

describe("the harness in the weight change", () => {
  const changeOf = (text: string) => weightsOf(judge(text).project).change;

  test.each(["", "harness: { arm: 96 in }", "harness: { arm: 96 in, counted: recorded }"])(
    "is left to the added items: '%s'",
    (section) => {
      const { items, weightChange, emptyCg } = changeOf(circuitExample({ sections: [section] }));
      expect(items.map(({ subject }) => subject.id)).toEqual(["RACK"]);
      expect(weightChange!.value).toBe(31.2);
      expect(emptyCg).toBeDefined();
    },
  );

  test("is the sum of its wires at its arm where it is counted so", () => {
    const { items, weightChange, emptyMoment, emptyCg } = changeOf(computed);
    expect(items.map(({ subject, sense }) => [subject.kind, subject.id, sense])).toEqual([
      ["component", "RACK", "added"],
      ["harness", "harness", "added"],
    ]);
    // By hand: 0.0030269 × 9354 lb per 1000 ft over 12 ft + 2 ft.
    const harness = (0.0030269 * 9354 * 14) / 1000;
    expect(weightChange!.value).toBeCloseTo(31.2 + harness, 10);
    expect(emptyMoment!.value).toBeCloseTo(2412 * 88.4 + 31.2 * 142 + harness * 96, 6);
    expect(emptyCg!.value).toBeCloseTo(
      (2412 * 88.4 + 31.2 * 142 + harness * 96) / (2412 + 31.2 + harness),
      10,
    );
  });

  test("without wires adds nothing, and leaves nothing open", () => {
    const { items, emptyCg } = changeOf(computed.replace(/wires:\n(?: {2}- .*\n)+/, "wires: []\n"));
    expect(items.map(({ subject }) => subject.id)).toEqual(["RACK"]);
    expect(emptyCg).toBeDefined();
  });

  test.each<[what: string, text: string]>([
    ["a wire of unknown weight", circuitExample({ material: "aluminium", sections: counted("computed") })],
    ["a wire without a length", computed.replace(", length: 2 ft", "")],
    ["a wire that can't be read", computed.replace("wires:\n", "wires:\n  - 7\n")],
    ["a wire without an id", computed.replace("id: P2N, ", "")],
    ["no arm", computed.replace("arm: 96 in, ", "")],
    ["a word that is no choice", computed.replace("counted: computed", "counted: computing")],
    ["a harness that can't be read", computed.replace("{ arm: 96 in, counted: computed }", "96 in")],
  ])("leaves the empty CG open, and a finding says why: %s", (_, text) => {
    expect(text).not.toBe(computed);
    const judgement = judge(text);
    expect(weightsOf(judgement.project).change.emptyCg).toBeUndefined();
    expect(judgement.findings.filter(({ severity }) => severity === "error")).not.toEqual([]);
  });

  test("each of its values has one name", () => {
    const names = valuesOf(judge(computed).project).map(
      ({ subject, quantity, condition }) => `${subject.kind} ${subject.id} ${quantity} ${condition}`,
    );
    expect(new Set(names).size).toBe(names.length);
  });
});

describe("remedies of installed wires are the smallest that do", () => {
  const remedyOf = (rule: string, text: string) => {
    const judgement = judge(text);
    const finding = judgement.findings.find((one) => one.rule === rule)!;
    return proveRemedy(finding, judgement, alone)?.edits[0]?.newText;
  };
  const withKeys = (keys: string) => circuitExample({ keys });

  test.each([
    ["wire-support-spacing", "support-spacing: 30 in", "24 in"],
    ["wire-support-spacing", "support-spacing: 1 m", "0.609 m"],
    ["wire-support-spacing", "support-spacing: 700 mm", "609 mm"],
    ["wire-marking-interval", "marking-interval: 2 ft", "1.25 ft"],
    ["wire-marking-interval", "marking: sleeve, marking-interval: 8 ft", "6 ft"],
    ["wire-bend-too-tight", "outside-diameter: 0.135 in, bend-radius: 1 in", "1.35 in"],
    ["wire-bend-too-tight", "outside-diameter: 0.135 in, bend-radius: 30 mm", "35 mm"],
  ])("%s: %s becomes %s", (rule, keys, text) => {
    expect(remedyOf(rule, withKeys(keys))).toBe(text);
  });

  test("a gauge goes up to the first that will do", () => {
    const thin = (device: string) =>
      circuitExample({
        gauge: "24 AWG",
        current: "0.2 A",
        device: `{ id: CB-20, kind: breaker, ${device} }`,
      });
    expect(remedyOf("wire-gauge-too-thin", thin("rating: 3 A"))).toBe("22 AWG");
    // Behind 20 A every finding on the gauge goes at once with 14 AWG: it is the chart's for that breaker.
    expect(remedyOf("wire-gauge-too-thin", thin("rating: 20 A"))).toBe("14 AWG");
    expect(remedyOf("aluminium-too-thin", circuitExample({ material: "aluminium" }))).toBe("8 AWG");
  });

  test("a short run of aluminium becomes copper", () => {
    const short = circuitExample({ material: "aluminium", gauge: "8 AWG", length: "2 ft" });
    expect(remedyOf("aluminium-run-too-short", short)).toBe("copper");
  });

  test("that the identification no longer fits keeps no wire thin", () => {
    const text = circuitExample({
      wires: ["{ id: P101A22, from: CB-RACK, to: RACK, gauge: 22 AWG, length: 12 ft, rating: 150 degC }"],
    });
    // 16 AWG would lose 18 A × 12 ft × 4.81 ohm/1000 ft = 1.04 V of the 1 V allowed.
    expect(remedyOf("wire-over-ampacity", text)).toBe("14 AWG");
  });
});

test("a limit from memory warns; one that was read fails", () => {
  const severities = (keys: string) =>
    judge(circuitExample({ keys }))
      .findings.filter(({ rule, severity }) => rule.startsWith("wire-") && severity !== "information")
      .map(({ rule, severity }) => [rule, severity]);
  expect(severities("passes: [{ by: control-cable, distance: 1 in }]")).toEqual([
    ["wire-too-near", "warning"],
  ]);
  expect(severities("passes: [{ by: fuel-line, distance: 1 in }]")).toEqual([["wire-too-near", "error"]]);
  expect(severities("splices: 2")).toEqual([["wire-splices-too-many", "warning"]]);
});
