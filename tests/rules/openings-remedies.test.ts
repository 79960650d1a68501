/** Remedies of openings, brackets and air: each that a rule knows mends its own example, checked again with it. */
import { describe, expect, it } from "vitest";
import { check } from "../../server/src/core/check";
import { applyEdits } from "../../server/src/core/edits/text-edit";
import { loadRecord } from "../../server/src/core/records/record";
import { proveRemedy } from "../../server/src/core/remedies";
import { airRules } from "../../server/src/core/rules/air";
import { airExample } from "../../server/src/core/rules/air/air-example";
import { structureRules } from "../../server/src/core/rules/structure";
import { runExample } from "../../server/src/core/run-example";

const nothing = { resolve: () => undefined, load: () => undefined };

/** What a rule's example, the first of them, is mended by, and what is left of the rule afterwards. */
function mended(rule: string, example = 0): { title: string; left: number } | undefined {
  const found = [...structureRules, ...airRules].find(({ id }) => id === rule)!;
  const judgement = runExample(found.examples()[example]!);
  const finding = judgement.findings.find((one) => one.rule === rule)!;
  const remedy = proveRemedy(finding, judgement, nothing);
  if (!remedy) return undefined;
  const { record } = judgement;
  const text = applyEdits(record.text, remedy.edits);
  const after = check(loadRecord(record.file, record.kind, text), nothing);
  return { title: remedy.title, left: after.findings.filter((one) => one.rule === rule).length };
}

describe("the smallest change that does", () => {
  it.each([
    ["doubler-too-thin", "Make the reinforcement 0.032 in thick"],
    ["doubler-fasteners-too-few", "Set 14 fasteners on each side"],
    ["doubler-total-too-few", "Set 28 fasteners in all"],
    ["doubler-overlap-too-short", "Make the doubler's width 6 in"],
    ["doubler-fasteners-too-many", "Set the fasteners 0.56 in apart"],
    ["doubler-edge-distance", "Keep 0.25 in to every edge"],
    ["fastener-pitch-too-close", "Space the fasteners 0.5 in apart"],
    ["fastener-pitch-too-wide", "Space the fasteners 1 in apart"],
    ["fastener-rows-too-close", "Set the rows 0.32 in apart"],
    ["cutout-stiffener-distance", "Move the opening to y -0.25 in"],
    ["rivet-too-large", "Take 1/8 in rivets"],
    ["rivet-too-small", "Take 3/16 in rivets"],
    ["duct-outlet-short", "Widen segment D2 to 2 in"],
    ["bracket-bend-too-tight", "Bend BK-1 round 0.19 in"],
  ])("%s: %s", (rule, title) => {
    expect(mended(rule)).toEqual({ title, left: 0 });
  });

  it("an opening grows by half an inch until the air does", () => {
    // The third of its examples: 1.75 in across.
    expect(mended("cooling-air-short", 2)).toEqual({ title: "Make the diameter of C-OUT 3 in", left: 0 });
    const smaller = airExample({ outlet: "shape: circle, diameter: 2.5 in" });
    const { findings } = runExample({ title: "", text: smaller, finds: [] });
    expect(findings.map(({ rule }) => rule)).toContain("cooling-air-short");
  });

  it("is none where the fan is too weak for any opening", () => {
    expect(mended("cooling-air-short", 0)).toBeUndefined();
  });

  it("is known for every rule that says it has one", () => {
    const withRemedy = [...structureRules, ...airRules]
      .filter(({ remedies }) => remedies)
      .map(({ id }) => id);
    expect(withRemedy.length).toBe(15);
  });

  it("a total is set to what the places come to; twice the count of a side is for the drawing to say", () => {
    expect(mended("doubler-fastener-places-differ", 1)).toEqual({
      title: "Count the 14 that are placed",
      left: 0,
    });
    expect(mended("doubler-fastener-places-differ", 0)).toBeUndefined();
  });
});
