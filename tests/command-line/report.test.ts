/** What `check` prints: the published report, and its short form. */
import Ajv from "ajv/dist/2020";
import { describe, expect, it } from "vitest";
import { rules } from "../../server/src/core/rules";
import { findingsOf, type ReportedFinding, report, tailcone } from "../support/command-line";
import { exampleFiles } from "../support/examples";
import { once } from "../support/once";
import {
  demo,
  demoRecords,
  demoWorkspace,
  planted,
  plantedWorkspace,
  replaceOnce,
  Workspace,
} from "../support/workspace";

const point = {
  type: "object",
  required: ["line", "column"],
  additionalProperties: false,
  properties: { line: { type: "integer", minimum: 1 }, column: { type: "integer", minimum: 1 } },
};

/** What the report holds besides the contract. */
const beyondContract = {
  remedy: { type: "string" },
  field: { type: "string" },
  which: { type: "string" },
  fingerprint: { type: "string", pattern: "^[0-9a-f]{32}$" },
  accepted: { type: ["object", "null"] },
  known: { type: "boolean" },
};

/** What is told of a file besides the contract. */
const ofFile = {
  repositoryPath: { type: "string", pattern: "^[^\\\\]+$" },
  leftOut: { type: "integer", minimum: 0 },
  held: { type: "integer", minimum: 0 },
  breaches: { type: "array" },
  least: {
    anyOf: [
      { type: "null" },
      {
        type: "object",
        properties: { electrical: { type: ["number", "null"] }, cg: { type: ["number", "null"] } },
        required: ["electrical", "cg"],
        additionalProperties: false,
      },
    ],
  },
};

const contract = {
  type: "object",
  required: ["version", "files"],
  additionalProperties: false,
  properties: {
    version: { type: "string", pattern: "^\\d+\\.\\d+\\.\\d+" },
    files: {
      type: "array",
      items: {
        type: "object",
        required: ["path", "findings"],
        additionalProperties: false,
        properties: {
          path: { type: "string", pattern: "^[^\\\\]+\\.(airframe|kit|install)\\.ya?ml$" },
          ...ofFile,
          findings: {
            type: "array",
            items: {
              type: "object",
              required: [
                "rule",
                "severity",
                "subject",
                "path",
                "start",
                "end",
                "message",
                "value",
                "limit",
                "unit",
                "source",
              ],
              additionalProperties: false,
              properties: {
                rule: { enum: rules.map(({ id }) => id) },
                severity: { enum: ["error", "warning", "information"] },
                subject: { type: "string" },
                path: { type: "string" },
                start: point,
                end: point,
                message: { type: "string", minLength: 1, pattern: "^[^\\n]*$" },
                value: { type: ["number", "null"] },
                limit: { type: ["number", "null"] },
                unit: { type: ["string", "null"] },
                source: { type: "array", items: { type: "string", minLength: 1 } },
                ...beyondContract,
              },
            },
          },
        },
      },
    },
  },
};

/** Made once, and looked at by several tests. */
const reportOfPlanted = once(() => report([planted], plantedWorkspace().folder));
const textOfPlanted = once(() => tailcone(["check", planted], plantedWorkspace().folder));
const everything = { ...demoRecords(), ...exampleFiles() };
const reportOfEverything = once(() => report(["."], new Workspace(everything).folder));

/** The text that a finding's start and end enclose, by the columns of an editor. */
function covered(text: string, { start, end }: ReportedFinding): string {
  const lines = text.split(/\r\n|\n|\r/);
  if (start.line === end.line) return lines[start.line - 1]!.slice(start.column - 1, end.column - 1);
  return [
    lines[start.line - 1]!.slice(start.column - 1),
    ...lines.slice(start.line, end.line - 1),
    lines[end.line - 1]!.slice(0, end.column - 1),
  ].join("\n");
}

describe("check --report json", () => {
  it("has the published shape, for the demo and every example of every rule", async () => {
    const { code, ...found } = await reportOfEverything();
    const validate = new Ajv({ allErrors: true, allowUnionTypes: true }).compile(contract);
    validate(found);
    expect(validate.errors ?? []).toEqual([]);
    expect(code).toBe(1);
    expect(found.files.map(({ path }) => path).sort()).toEqual(Object.keys(everything).sort());
    for (const { path, findings } of found.files) {
      for (const finding of findings) expect(finding.path).toBe(path);
    }
  });

  it("gives a value, a limit, a unit and a source together or not at all", async () => {
    const findings = findingsOf(await reportOfPlanted());
    const judged = findings.filter(({ value }) => value !== null);
    expect(judged.length).toBeGreaterThan(0);
    expect(judged.length).toBeLessThan(findings.length);
    for (const { value, limit, unit } of findings) {
      expect([limit, unit].map((one) => one === null)).toEqual([value === null, value === null]);
    }
    for (const { source } of judged) expect(source.length).toBeGreaterThan(0);
  });

  it("lists a record without findings with an empty list", async () => {
    const { files, code } = await report([demo.clean], demoWorkspace().folder);
    expect(files).toEqual([expect.objectContaining({ path: demo.clean, findings: [] })]);
    expect(code).toBe(0);
  });

  it("places each finding inside its text, the start before the end", async () => {
    for (const { path, findings } of (await reportOfEverything()).files) {
      const lines = everything[path]!.split(/\r\n|\n|\r/);
      for (const { start, end } of findings) {
        for (const { line, column } of [start, end]) {
          expect(line).toBeLessThanOrEqual(lines.length);
          expect(column).toBeLessThanOrEqual(lines[line - 1]!.length + 1);
        }
        expect(start.line < end.line || (start.line === end.line && start.column <= end.column)).toBe(true);
      }
    }
  });

  it.each([
    {
      old: "gauge: 8 AWG\n    length: 14.5 ft",
      now: "gauge: 12 AWG\n    length: 14.5 ft",
      rule: "wire-voltage-drop",
      at: "12 AWG",
    },
    {
      old: "gauge: 16 AWG\n    length: 4 ft",
      now: "guage: 16 AWG\n    length: 4 ft",
      rule: "key-unknown",
      at: "guage",
    },
    { old: "weight: 9.8 lb", now: "weight: '9.8'", rule: "quantity-unit-missing", at: "'9.8'" },
    { old: "to: FANS", now: "to: FNAS", rule: "reference-unknown", at: "FNAS" },
    { old: "survey-rack.kit.yaml", now: "survey.kit.yaml", rule: "record-missing", at: "survey.kit.yaml" },
    { old: "arm: 121.0 in", now: "arm: 121.0 degC", rule: "quantity-wrong-dimension", at: "121.0 degC" },
    { old: "status: draft", now: "status: ready", rule: "value-not-in-list", at: "ready" },
  ])("places $rule at $at", async ({ old, now, rule, at }) => {
    const text = replaceOnce(demoRecords()[demo.clean]!, old, now);
    const { folder } = demoWorkspace({ [demo.clean]: text });
    const found = findingsOf(await report([demo.clean], folder)).filter((one) => one.rule === rule);
    expect(found.map((one) => covered(text, one))).toContain(at);
  });

  it("counts columns as editors do, in UTF-16 code units", async () => {
    const text = '# \u{1f6e9}\ndocument: { title: "\u{1f6e9} é", statis: draft }\n';
    const found = findingsOf(await report(["."], new Workspace({ "x.install.yaml": text }).folder));
    const slip = found.find(({ rule }) => rule === "key-unknown")!;
    expect(covered(text, slip)).toBe("statis");
  });

  it("names files from the working folder, those outside by their whole path", async () => {
    const workspace = demoWorkspace({ "sub/x.kit.yaml": "" });
    const inside = await report(["."], workspace.path("."));
    expect(inside.files.map(({ path }) => path)).toContain("sub/x.kit.yaml");
    const outside = await report([`../${demo.clean}`], workspace.path("sub"));
    expect(outside.files.map(({ path }) => path)).toEqual([workspace.path(demo.clean)]);
  });

  it("gives overridden severities, and leaves out what is off", async () => {
    const before = findingsOf(await reportOfPlanted());
    const args = ["--severity", "key-unknown=information", "--severity", "wire-voltage-drop=off"];
    const after = findingsOf(await report([...args, planted], plantedWorkspace().folder));
    expect(before.filter(({ rule }) => rule === "wire-voltage-drop")).not.toEqual([]);
    expect(after).toEqual(
      before
        .filter(({ rule }) => rule !== "wire-voltage-drop")
        .map((one) => (one.rule === "key-unknown" ? { ...one, severity: "information" } : one)),
    );
    expect(after.some(({ severity }) => severity === "information")).toBe(true);
  });
});

describe("check --brief", () => {
  it("prints one line for each finding of the report, and one for all", async () => {
    const { folder } = plantedWorkspace();
    const { files } = await report(["."], folder);
    const findings = findingsOf({ files });
    const { stdout, code } = await tailcone(["check", "--brief", "."], folder);
    const lines = stdout.split("\n");
    expect(lines.pop()).toBe("");
    const count = (severity: string) => findings.filter((one) => one.severity === severity).length;
    expect(lines.pop()).toMatch(
      new RegExp(
        `^${files.length} records checked: ${count("error")} errors?, ${count("warning")} warnings?, ${count("information")} information\\. `,
      ),
    );
    expect(lines).toEqual(
      findings.map(
        ({ path, start, severity, rule, message }) =>
          `${path}:${start.line}:${start.column}: ${severity} [${rule}] ${message}`,
      ),
    );
    expect(code).toBe(1);
  });
});

it.each(["bundle-count-too-small", "wire-without-protection"])(
  "%s names the paragraph that asks for it, though no number is held against a limit",
  async (rule) => {
    const found = findingsOf(await reportOfPlanted()).filter((one) => one.rule === rule);
    expect(found).not.toEqual([]);
    for (const { source } of found) expect(source.join()).toContain("AC 43.13-1B");
  },
);

it("says the same in text as in JSON", async () => {
  const findings = findingsOf(await reportOfPlanted());
  const { stdout } = await textOfPlanted();
  const heads = stdout.split("\n").filter((line) => line.startsWith(planted));
  expect(heads).toEqual(
    findings.map(
      ({ path, start, severity, rule }) => `${path}:${start.line}:${start.column}  ${severity}  ${rule}`,
    ),
  );
  const words = stdout.replace(/\s+/g, " ");
  for (const { message, subject, field } of findings) {
    expect(words).toContain(message);
    expect(words).toContain(` about ${subject || "record"} at ${field} why `);
  }
});

it("says of a record the same whether it is checked alone or with others", async () => {
  const { folder } = plantedWorkspace();
  const blocksOf = (text: string) =>
    text.split(/^(?=\S+:\d+:\d+ {2})/m).filter((block) => block.startsWith(planted));
  const alone = blocksOf((await textOfPlanted()).stdout);
  const together = blocksOf((await tailcone(["check", "."], folder)).stdout);
  expect(alone.length).toBeGreaterThan(5);
  // The last one alone has the summary behind it.
  expect(alone.slice(0, -1)).toEqual(together.slice(0, alone.length - 1));
});

describe("check --only", () => {
  it("shows and counts the findings of the rules that it names", async () => {
    const { folder } = demoWorkspace();
    const one = await report(["--only", "wire-voltage-drop", demo.faulty], folder);
    expect(new Set(findingsOf(one).map(({ rule }) => rule))).toEqual(new Set(["wire-voltage-drop"]));
    expect(one.code).toBe(1);
    const none = await report(["--only", "duct-not-solved", demo.faulty], folder);
    expect(findingsOf(none)).toEqual([]);
    expect(none.code).toBe(0);
  });
});
