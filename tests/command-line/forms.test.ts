/**
 * The forms of the report, on one set of records with hostile text in it: each is what it was, and each is read
 * by something that was made elsewhere.
 */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import * as actions from "@actions/core";
import Ajv from "ajv/dist/2020";
import { beforeAll, describe, expect, it, vi } from "vitest";
import { validateXML } from "xmllint-wasm";
import { printable } from "../../server/src/command-line/render/layout";
import { deviationExample } from "../../server/src/core/rules/deviations/deviation-example";
import { recordExample } from "../../server/src/core/rules/example-record";
import { findingsOf, type Report, run, tailcone } from "../support/command-line";
import { root } from "../support/programs";
import { Workspace } from "../support/workspace";

/** What a text may hold to act in a report: markup, commands, links, placeholders, signs of the terminal. */
const hostile =
  "<script>alert(1)</script> & \"quotes\" 'n' ]]> {0} [x](1) ::error::%0A ##[error] @all `code` | \\u001b[31m \\u202e";

const files = {
  "sound.kit.yaml": [
    "kit: { number: QSR-60, revision: C }",
    "components: [{ id: RACK, weight: 31.2 lb, draws: [{ mode: survey, current: 6 A }] }]",
    "devices: []",
    "",
  ].join("\n"),
  "hostile.kit.yaml": [
    "kit: { number: QSR-60, revision: C }",
    `components: [{ id: RACK, weight: 31.2 lb, "${hostile.replaceAll('"', '\\"')}": 1, draws: [{ mode: survey, current: 6 A }] }]`,
    "devices: []",
    "",
  ].join("\n"),
  "accepted.install.yaml": deviationExample({
    reason: `"${hostile.replaceAll('"', '\\"')}"`,
    by: "'stamp <7>'",
  }),
  "over lines.install.yaml": recordExample({
    sections: "wires:\n  - { id: P1, from: MAIN,\n      to: RACK, length: 3 ft,\n      rating: 150 degC }\n",
  }),
  "100%,:#?.kit.yaml": "kit: { number: QSR-60 }\ncomponents: []\ndevices: []\n",
  "text.kit.yaml": "kit: {\n",
};

const forms = ["text", "json", "sarif", "junit", "github", "gitlab"] as const;
let workspace: Workspace;
const texts: Record<string, string> = {};

beforeAll(async () => {
  workspace = new Workspace(files);
  const wanted = forms.flatMap((form) => ["--report", `${form}:report.${form}`]);
  const { code, stdout, stderr } = await tailcone(["check", "--brief", ...wanted, "."], workspace.folder);
  expect({ code, stdout, stderr }).toEqual({ code: 1, stdout: "", stderr: "" });
  for (const form of forms) texts[form] = workspace.read(`report.${form}`);
});

it.each(forms)("%s is what it was", async (form) => {
  const version = (await import("../../package.json")).default.version;
  await expect(texts[form]!.replaceAll(version, "VERSION")).toMatchFileSnapshot(
    `snapshots/report.${form}.snap`,
  );
});

it("has no sign in it that acts on a terminal", () => {
  for (const form of forms) {
    expect({ form, text: texts[form] }).toEqual({ form, text: printable(texts[form]!, false) });
  }
});

describe("text", () => {
  it("has no line that a forge's runner takes for a command", () => {
    const lines = texts.text!.split("\n").filter((line) => /^\s*(::|##\[)/.test(line));
    expect(lines).toEqual([]);
  });
});

describe("json", () => {
  it("keeps every sign of a message", () => {
    const { files: reported } = JSON.parse(texts.json!) as Report;
    const unknown = reported.find(({ path }) => path === "hostile.kit.yaml")!.findings[0]!;
    expect(unknown.message).toContain("<script>");
  });

  it("gives every finding a fingerprint of its own", () => {
    const prints = findingsOf(JSON.parse(texts.json!) as Report).map(
      (finding) => (finding as unknown as { fingerprint: string }).fingerprint,
    );
    expect(new Set(prints).size).toBe(prints.length);
  });
});

describe("sarif", () => {
  it("is valid against the published schema", () => {
    const from = createRequire(createRequire(import.meta.url).resolve("@microsoft/jest-sarif"));
    const Validator = from("ajv");
    const validator = new Validator({
      schemaId: "auto",
      allErrors: true,
      unknownFormats: "ignore",
      meta: false,
    });
    validator.addMetaSchema(from("ajv/lib/refs/json-schema-draft-04.json"));
    const schema = from("./schemas/sarif-2.1.0-rtm.5.json");
    const isValid = validator.compile(schema);
    isValid(JSON.parse(texts.sarif!));
    expect(isValid.errors ?? []).toEqual([]);
    isValid({ ...JSON.parse(texts.sarif!), version: "2.0.0" });
    expect(isValid.errors).not.toBeNull();
  });

  it("names each record as a relative reference that leads to it", () => {
    const { results } = JSON.parse(texts.sarif!).runs[0];
    for (const { locations } of results) {
      const { uri } = locations[0].physicalLocation.artifactLocation;
      const path = decodeURIComponent(new URL(uri, "file:///root/").pathname).replace("/root/", "");
      expect(Object.keys(files)).toContain(path);
    }
  });

  it("says which findings are accepted, and by whom", () => {
    const { results } = JSON.parse(texts.sarif!).runs[0];
    const accepted = results.filter((result: { suppressions?: unknown }) => result.suppressions);
    expect(accepted).toHaveLength(1);
    expect(accepted[0].level).toBe("error");
    expect(accepted[0].suppressions[0]).toMatchObject({ kind: "inSource", status: "accepted" });
  });

  it("explains each rule that found something", () => {
    const { results, tool } = JSON.parse(texts.sarif!).runs[0];
    for (const { ruleId, ruleIndex } of results) {
      expect(tool.driver.rules[ruleIndex]).toMatchObject({ id: ruleId, help: { text: expect.any(String) } });
    }
  });
});

describe("junit", () => {
  const schema = readFileSync(new URL("../support/schemas/jenkins-junit.xsd", import.meta.url), "utf8");
  const validate = (contents: string) =>
    validateXML({ xml: [{ fileName: "report.xml", contents }], schema: [schema] });

  it("is valid against the schema that Jenkins publishes, by libxml2", async () => {
    const { valid, errors } = await validate(texts.junit!);
    expect({ valid, errors }).toEqual({ valid: true, errors: [] });
    expect((await validate(texts.junit!.replace("<testcase", "<case"))).valid).toBe(false);
  });

  it("counts what it lists", () => {
    for (const [suite] of texts.junit!.matchAll(/<testsuite .*?<\/testsuite>/gs)) {
      const count = (name: string) => Number(new RegExp(` ${name}="(\\d+)"`).exec(suite)?.[1]);
      const occurrences = (tag: string) => suite.split(`<${tag}`).length - 1;
      expect([count("tests"), count("failures"), count("skipped")]).toEqual([
        occurrences("testcase"),
        occurrences("failure"),
        occurrences("skipped"),
      ]);
    }
  });
});

describe("github", () => {
  it("is what the forge's own library writes for the same annotations", () => {
    const { files: reported } = JSON.parse(texts.json!) as Report;
    const written: string[] = [];
    const spy = vi.spyOn(process.stdout, "write").mockImplementation((text) => {
      written.push(String(text));
      return true;
    });
    try {
      for (const { findings, path } of reported) {
        for (const finding of findings) {
          const { start, end, rule, message, severity } = finding;
          const { remedy, accepted } = finding as unknown as {
            remedy: string;
            accepted: { until: string; by: string; reference: string; reason: string } | null;
          };
          const words = accepted
            ? `accepted until ${accepted.until} by ${accepted.by} (${accepted.reference}): ${accepted.reason}`
            : remedy;
          const annotate = { error: actions.error, warning: actions.warning, information: actions.notice };
          annotate[severity as keyof typeof annotate](`${message}\n${words}`, {
            title: rule,
            file: path,
            startLine: start.line,
            endLine: end.line,
            ...(start.line === end.line && { startColumn: start.column, endColumn: end.column }),
          });
        }
      }
    } finally {
      spy.mockRestore();
    }
    expect(written.length).toBeGreaterThan(5);
    expect(texts.github).toBe(printable(written.join(""), false));
  });

  it("leaves columns out of what goes over several lines, which the runner would refuse", () => {
    const over = texts
      .github!.split("\n")
      .filter((line) => !/,line=(\d+),endLine=\1,/.test(line) && line !== "");
    expect(over.length).toBeGreaterThan(0);
    for (const line of over) expect(line).not.toMatch(/,(col|endColumn)=/);
  });
});

describe("gitlab", () => {
  /** As the forge documents the report: https://docs.gitlab.com/ci/testing/code_quality/#code-quality-report-format */
  const documented = {
    type: "array",
    items: {
      type: "object",
      required: ["description", "check_name", "fingerprint", "severity", "location"],
      properties: {
        description: { type: "string", minLength: 1 },
        check_name: { type: "string", minLength: 1 },
        fingerprint: { type: "string", minLength: 1 },
        severity: { enum: ["info", "minor", "major", "critical", "blocker"] },
        location: {
          type: "object",
          required: ["path", "lines"],
          properties: {
            // Relative to the repository, and not with a dot and a slash in front.
            path: { type: "string", pattern: "^(?![./])[^\\\\]+$" },
            lines: {
              type: "object",
              required: ["begin"],
              properties: { begin: { type: "integer", minimum: 1 } },
            },
          },
        },
      },
    },
  };

  it("is what the forge documents, with a fingerprint for each entry", () => {
    const report = JSON.parse(texts.gitlab!) as { fingerprint: string }[];
    const validate = new Ajv({ allErrors: true }).compile(documented);
    validate(report);
    expect(validate.errors ?? []).toEqual([]);
    expect(new Set(report.map(({ fingerprint }) => fingerprint)).size).toBe(report.length);
  });

  it("is a list of issues by the types that others published for them, and by the compiler", async () => {
    const types = `${root}node_modules/codeclimate-types/index.js`;
    const asSource = (report: string) =>
      `import type { Issue } from ${JSON.stringify(types)};\nexport const report: Issue[] = ${report};\n`;
    const { folder } = new Workspace({
      "report.ts": asSource(texts.gitlab!),
      // Without one that fails, that the other passes would say nothing.
      "faulty.ts": asSource(texts.gitlab!.replaceAll('"severity":"major"', '"severity":"worst"')),
    });
    const compiler = `${root}node_modules/typescript/bin/tsc`;
    const compile = (file: string) =>
      run(
        process.execPath,
        [compiler, "--noEmit", "--strict", "--module", "nodenext", "--ignoreConfig", file],
        folder,
      );
    expect(await compile("report.ts")).toEqual({ code: 0, stdout: "", stderr: "" });
    expect((await compile("faulty.ts")).stdout).toContain("worst");
  });
});

describe("fingerprints", () => {
  const printsOf = async (text: string) => {
    const { folder } = new Workspace({ "a.install.yaml": text });
    const { stdout } = await tailcone(["check", "--report", "json", "."], folder);
    const findings = findingsOf(JSON.parse(stdout) as Report) as unknown as {
      rule: string;
      fingerprint: string;
    }[];
    return findings.map(({ rule, fingerprint }) => `${rule} ${fingerprint}`).sort();
  };
  const faulty = deviationExample({ until: "2020-01-31" });

  it("are the same when lines come in above, and when the numbers move", async () => {
    const before = await printsOf(faulty);
    expect(before.length).toBeGreaterThan(1);
    expect(await printsOf(`# one\n# two\n\n${faulty}`)).toEqual(before);
    expect(await printsOf(faulty.replace("length: 18 ft", "length: 19 ft"))).toEqual(before);
  });

  it("are others for another thing", async () => {
    const renamed = faulty.replaceAll("RACK", "TRAY");
    expect(await printsOf(renamed)).not.toEqual(await printsOf(faulty));
  });
});

describe("where reports go", () => {
  it.each([
    { args: ["--report", "text", "--report", "json"], says: "mixed" },
    { args: ["--report", "json:a", "--report", "sarif:a"], says: "one file" },
    { args: ["--report", "json:"], says: "path" },
    { args: ["--report", "json:sound.kit.yaml"], says: "place of a record" },
    { args: ["--report", "json:no/such/folder"], says: "no/such/folder" },
    { args: ["--report", "html"], says: "text, json" },
  ])("$args can't be done", async ({ args, says }) => {
    const { code, stdout, stderr } = await tailcone(["check", ...args, "."], workspace.folder);
    expect({ code, stdout }).toEqual({ code: 2, stdout: "" });
    expect(stderr).toContain(says);
  });

  it("text goes to the output beside a file", async () => {
    const { code, stdout } = await tailcone(
      ["check", "--brief", "--report", "sarif:beside.sarif", "--report", "text", "."],
      workspace.folder,
    );
    expect(code).toBe(1);
    expect(stdout).toBe(texts.text);
    expect(workspace.read("beside.sarif")).toBe(texts.sarif);
  });
});

it("a path is relative to the repository for forges, and to the working folder for people", async () => {
  const own = new Workspace({ ".git/HEAD": "", "records/text.kit.yaml": "kit: {\n" });
  const { stdout } = await tailcone(["check", "--report", "gitlab", "."], own.path("records"));
  expect(JSON.parse(stdout)[0].location.path).toBe("records/text.kit.yaml");
  const { stdout: people } = await tailcone(["check", "--brief", "."], own.path("records"));
  expect(people).toMatch(/^text\.kit\.yaml:1:/);
});
