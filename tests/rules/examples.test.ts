/** Every example of every rule, executed: what it says that it finds, it finds, and nothing else of that rule. */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { Finding } from "../../server/src/core/findings/finding";
import { limits } from "../../server/src/core/limits";
import { ruleById, rules } from "../../server/src/core/rules";
import { airframeExample, recordExample, wireExample } from "../../server/src/core/rules/example-record";
import type { Example } from "../../server/src/core/rules/rule";
import { runExample } from "../../server/src/core/run-example";

const folder = new URL("../../server/src/core/rules/", import.meta.url);

/** Rules that no printable record brings up. Each has a test of its own below. */
const withoutFindingExample = new Set(["check-failed", "text-encoding-wrong", "text-too-large"]);

function findingsOf(example: Example): readonly Finding[] {
  return runExample(example).findings;
}

describe.each(rules.map((rule) => ({ id: rule.id, rule })))("$id", ({ rule }) => {
  it.each(rule.examples().map((example) => ({ title: example.title, example })))("$title", ({ example }) => {
    const own = findingsOf(example).filter((finding) => finding.rule === rule.id);
    expect(own.map((finding) => finding.what)).toEqual(
      example.finds.map((words) => expect.stringMatching(new RegExp(words, "u"))),
    );
    for (const { what, todo } of own) {
      expect(what).toMatch(/^\S.{0,138}\S$/u);
      expect(`${what} ${todo}`).not.toMatch(/approved|undefined|NaN|\[object/);
      expect(todo).toMatch(/^\S.*[.?]$/u);
    }
  });

  it("shows what it finds and what it lets pass", () => {
    const findsNothing = rule.examples().map((example) => example.finds.length === 0);
    const [finding, silent] = [findsNothing.includes(false), findsNothing.includes(true)];
    if (withoutFindingExample.has(rule.id)) expect(finding).toBe(false);
    else expect({ finding, silent }).toEqual({ finding: true, silent: true });
  });

  it("says what it is and why it matters", () => {
    expect(rule.id).toMatch(/^[a-z]+(-[a-z]+)*$/);
    expect(rule.title).toMatch(/^[A-Z].*[^.]$/u);
    expect(rule.why).toMatch(/^[A-Z].*\.$/u);
    expect(`${rule.title} ${rule.why}`).not.toMatch(/\bapproved\b/i);
  });
});

describe("the list of rules", () => {
  it("has each id once", () => {
    expect(rules.map((rule) => rule.id)).toEqual([...ruleById.keys()]);
  });

  it("has one rule for each file of a folder that defines one, under the file's name", () => {
    const areas = readdirSync(folder, { withFileTypes: true }).filter((entry) => entry.isDirectory());
    const defined = areas.flatMap(({ name: area }) =>
      readdirSync(new URL(`${area}/`, folder))
        .filter((file) => readFileSync(new URL(`${area}/${file}`, folder), "utf8").includes("defineRule<"))
        .map((file) => `${area}/${file.replace(/\.ts$/, "")}`),
    );
    expect(rules.map((rule) => `${rule.area}/${rule.id}`).sort()).toEqual(defined.sort());
  });

  it("is sorted by area, from the text to the aircraft, then by id", () => {
    const areas = [
      "text",
      "record",
      "wires",
      "protection",
      "sources",
      "weights",
      "cutouts",
      "structure",
      "air",
      "mounts",
      "placement",
      "lines",
      "climate",
      "eligibility",
      "deviations",
    ];
    const keys = rules.map((rule) => `${String(areas.indexOf(rule.area)).padStart(2, "0")} ${rule.id}`);
    expect(keys).toEqual([...keys].sort());
  });
});

describe("the record that examples change", () => {
  it.each([
    { title: "with no sections", text: recordExample() },
    { title: "with one wire", text: wireExample() },
    { title: "with its airframe beside it", text: recordExample({ airframe: "airframe: a.airframe.yaml" }) },
  ])("is sound $title", ({ title, text }) => {
    const found = findingsOf({ title, text, others: { "a.airframe.yaml": airframeExample() }, finds: [] });
    // It is small on purpose, and is told what was therefore not checked.
    expect(found.filter(({ severity }) => severity !== "information")).toEqual([]);
  });

  it("is a sound airframe record by itself", () => {
    const example = { title: "", file: "a.airframe.yaml", text: airframeExample(), finds: [] };
    expect(findingsOf(example)).toEqual([]);
  });
});

describe("rules without a printable example", () => {
  it("text-too-large: names the length and the limit, and nothing that follows from not reading", () => {
    const text = "#".repeat(limits.recordLength + 1);
    const findings = findingsOf({ title: "", text, finds: [] });
    expect(findings.map(({ rule, what }) => ({ rule, what }))).toEqual([
      {
        rule: "text-too-large",
        what: `This text has ${limits.recordLength + 1} characters, above the limit of ${limits.recordLength}; nothing in it is checked.`,
      },
    ]);
  });

  it.each(["utf16le", "utf-16le without its mark"])(
    "text-encoding-wrong: is the only finding of %s",
    (encoding) => {
      const mark = encoding === "utf16le" ? "\ufeff" : "";
      const text = Buffer.from(`${mark}${recordExample()}`, "utf16le").toString("utf8");
      expect(findingsOf({ title: "", text, finds: [] }).map(({ rule }) => rule)).toEqual([
        "text-encoding-wrong",
      ]);
    },
  );

  it("check-failed: names the check that failed, and blames the tool", () => {
    const { what, todo } = ruleById
      .get("check-failed")!
      .say({ rule: "cg-aft-of-limit", detail: "no such\nthing" });
    expect(what).toBe(
      "The check cg-aft-of-limit failed on this record: a fault of the tool, not of the record.",
    );
    expect(todo).toContain("no such thing");
  });
});
