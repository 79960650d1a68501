/** An airframe record by itself is held to what its own loadings, weighing and stations say. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { check } from "../../server/src/core/check";
import type { RecordSource } from "../../server/src/core/project";
import { loadRecord } from "../../server/src/core/records/record";

const nothing: RecordSource = { resolve: () => undefined, load: () => undefined };
const demo = readFileSync(
  new URL("../../client/demo/brackenfell-0417.airframe.yaml", import.meta.url),
  "utf8",
);

function judged(text: string) {
  const { findings, assessments, record } = check(loadRecord("a.airframe.yaml", "airframe", text), nothing);
  const found = findings.map(({ rule, subject, what, todo, anchor }) => {
    const { start, end } = "node" in anchor ? record.reading.spanOf(anchor.node) : anchor.span;
    return { rule, subject, what, todo, at: text.slice(start, end) };
  });
  return { found, assessments };
}

const changed = (old: string, now: string) => {
  expect(demo.split(old)).toHaveLength(2);
  return demo.replace(old, now);
};

describe("the demo's airframe", () => {
  it("keeps its own limits, and its loadings were held against them", () => {
    const { found, assessments } = judged(demo);
    expect(found).toEqual([]);
    const rules = new Set(assessments.map(({ rule }) => rule));
    for (const rule of [
      "cg-aft-of-limit",
      "cg-forward-of-limit",
      "weight-above-limit",
      "station-above-limit",
    ])
      expect(rules).toContain(rule);
  });

  it("is told of a loading past its own weight, ramp and station limits, at the loading", () => {
    const { found } = judged(changed("volume: 84 gal", "volume: 184 gal"));
    expect(found.map(({ rule, subject, at }) => [rule, subject, at])).toEqual(
      expect.arrayContaining([
        ["weight-above-limit", "loading ferry", "ferry"],
        ["phase-weight-above-limit", "loading ferry", "ferry"],
        ["station-above-limit", "station main-tanks", "184 gal"],
      ]),
    );
    // There is no change that it could be compared with.
    for (const { what } of found) expect(what).not.toContain("before the change");
  });

  it("is told of a loading aft of its envelope", () => {
    const { found } = judged(changed("arm: 88.4 in", "arm: 98.4 in"));
    expect(found).toContainEqual(
      expect.objectContaining({ rule: "cg-aft-of-limit", subject: "loading pilot-alone", at: "pilot-alone" }),
    );
    // Nothing was changed that could be moved back.
    for (const { todo } of found) expect(todo).not.toContain("change adds");
  });
});

it("an airframe with blanks is told of nothing but them", () => {
  const { found } = judged(
    "aircraft: { type: Type 9, serial: B9-0500, kind: aeroplane }\nempty:\n  weight:\n  arm:\n",
  );
  expect(new Set(found.map(({ rule }) => rule))).toEqual(new Set(["key-missing", "value-missing"]));
});
