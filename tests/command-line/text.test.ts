/** Text for a terminal: its width, and what must never reach a terminal. */
import { describe, expect, it } from "vitest";
import { tableWithin } from "../../server/src/command-line/render/layout";
import { findingTexts } from "../../server/src/command-line/render/text";
import { ruleById } from "../../server/src/core/rules";
import { runExample } from "../../server/src/core/run-example";
import { tailconeHere } from "../support/command-here";
import { tailcone, tailconeOnDemo } from "../support/command-line";
import { exampleFiles } from "../support/examples";
import { demo, demoRecords, demoWorkspace, replaceOnce, Workspace } from "../support/workspace";

const width = 80;

/** Where a finding stands: the path, which can't be broken, decides how wide it is. */
const heading = /^\S+:\d+:\d+ {2}(error|warning|information) {2}[a-z-]+$/;

/** Lines that could have been broken and were not. A word longer than the width has to keep its line. */
function tooWide(text: string): string[] {
  return text.split("\n").filter((line) => {
    if ([...line].length <= width) return false;
    const words = line.replace(/^ *(?:about|why|do|tried|see|calc|source|-|[=^|]|\d+ \|)? */, "");
    return words.includes(" ") && !heading.test(line);
  });
}

describe("no line is wider than 80 columns", () => {
  it.each([
    { of: "the demo", files: demoRecords() },
    { of: "every example of every rule", files: exampleFiles() },
  ])("check, for $of", async ({ files }) => {
    const { stdout } = await tailcone(["check", "."], new Workspace(files).folder);
    expect(stdout.split("\n").length).toBeGreaterThan(100);
    expect(tooWide(stdout)).toEqual([]);
  });

  it.each([demo.clean, demo.faulty])("worksheet %s", async (record) => {
    const { stdout } = await tailconeOnDemo("worksheet", record);
    expect(stdout.split("\n").length).toBeGreaterThan(40);
    expect(tooWide(stdout)).toEqual([]);
  });

  it("the head of a finding, where the names of the demo allow it", async () => {
    const { stdout } = await tailconeOnDemo("check", demo.faulty);
    const heads = stdout.split("\n").filter((line) => heading.test(line));
    expect(heads.length).toBeGreaterThan(10);
    expect(heads.filter((line) => line.length > width)).toEqual([]);
  });

  it("long lines and long words in a record", async () => {
    const word = "x".repeat(200);
    const text = replaceOnce(
      demoRecords()[demo.clean]!,
      "status: draft",
      `status: ${word} # ${"word ".repeat(60)}`,
    );
    const { stdout, code } = await tailcone(
      ["check", demo.clean],
      demoWorkspace({ [demo.clean]: text }).folder,
    );
    expect(code).toBe(1);
    expect(tooWide(stdout)).toEqual([]);
    const lines = stdout.split("\n");
    const marker = lines.findIndex((line) => line.includes("^"));
    expect(lines[marker]!.length).toBeLessThanOrEqual(width);
    // The line goes on behind what is shown, and says so.
    expect(lines[marker - 1]).toMatch(/^ +\d+ \| .*x…$/);
    expect(lines[marker - 1]).toHaveLength(width - 1);
  });
});

describe("the line of a finding", () => {
  it("shows where it was cut, and keeps the marker under the place", async () => {
    const text = replaceOnce(
      demoRecords()[demo.clean]!,
      "- { equipment: aft-bench }",
      `- { ${" ".repeat(100)}equipment: aft-bunch${" ".repeat(100)} }`,
    );
    const { stdout } = await tailcone(["check", demo.clean], demoWorkspace({ [demo.clean]: text }).folder);
    const lines = stdout.split("\n");
    const marker = lines.findIndex((line, at) => line.includes("^") && lines[at - 1]!.includes("aft-bunch"));
    const shown = lines[marker - 1]!;
    expect(shown).toMatch(/^ +\d+ \| ….*…$/);
    expect(shown).toHaveLength(width - 1);
    expect(shown.indexOf("aft-bunch")).toBe(lines[marker]!.indexOf("^"));
  });
});

/** Control characters besides the line break, and signs that turn text around or hide it. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
const unfit = /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/u;

function unfitLines(text: string): string[] {
  return text
    .split("\n")
    .filter((line) => unfit.test(line))
    .map((line) => JSON.stringify(line));
}

/** Written in YAML as escapes, so that the value holds them. */
const escapes = "\\e[31m\\e]0;x\\a\\0\\x9b2J\\r\\t\\u202e";

/** Written as they are. A NUL and its like are no YAML, and get a finding of their own. */
const raw = "\u001b[31m\u009b2J\u0007\u202e\u007f";

describe("what a record holds never drives the terminal", () => {
  const clean = demoRecords()[demo.clean]!;
  const named = (text: string, id: string) =>
    text.replace(new RegExp(`\\b${id}\\b(?=[,\\n ])`, "g"), `"${escapes}${id}"`);

  it.each([
    { where: "the id of a wire", text: named(clean, "P102A8").replaceAll("8 AWG", "12 AWG") },
    { where: "the id of a condition", text: named(clean, "survey").replaceAll("8 AWG", "12 AWG") },
    { where: "the id of a breaker", text: named(clean, "CB-CHILLER").replaceAll("8 AWG", "12 AWG") },
    { where: "the id of a cutout", text: named(clean, "C3").replace("0.75 in", "0.25 in") },
    { where: "the id of an added item", text: named(clean, "harness").replace("96.0 in", "96.0 degC") },
    { where: "the document's number", text: clean.replace("HM-0412\n", `"${escapes}HM-0412"\n`) },
    { where: "the document's title", text: clean.replace("title: ", `title: "${escapes}" # `) },
    { where: "the document's status", text: clean.replace("status: draft", `status: "${escapes}"`) },
    { where: "a key", text: clean.replace("altitude: 0 ft", `"${escapes}": 0 ft`) },
    { where: "a quantity", text: clean.replace("9.8 lb", `"9.8 ${escapes}"`) },
    { where: "a reference", text: clean.replace("to: FANS", `to: "${escapes}"`) },
    { where: "the name of a record", text: clean.replace("survey-rack.kit.yaml", `"${escapes}.kit.yaml"`) },
    { where: "a comment beside a fault", text: clean.replace("9.8 lb,", `9.8, # ${raw}\n    `) },
    { where: "a plain value", text: clean.replace("status: draft", `status: ${raw}`) },
    {
      where: "bytes that are no text",
      text: Buffer.from(clean.replace("status: draft", "status: \u00ff\u0000"), "latin1"),
    },
  ])("$where", async ({ text }) => {
    const { folder } = demoWorkspace({ [demo.clean]: text });
    for (const command of ["check", "worksheet"]) {
      const { stdout, stderr, code } = await tailconeHere([command, demo.clean], folder);
      expect(code).toBeLessThan(2);
      expect(stdout).not.toBe("");
      expect({ command, unfit: unfitLines(stdout + stderr) }).toEqual({ command, unfit: [] });
    }
  });

  it("in the records that an install record names", async () => {
    const records = demoRecords();
    const { folder } = demoWorkspace({
      [demo.airframe]: records[demo.airframe]!.replace("serial: B9-0417", `serial: "${escapes}"`)
        .replaceAll("normal", `"${escapes}normal"`)
        .replaceAll("AFT-FLOOR", `"${escapes}AFT-FLOOR"`)
        .replace('"Brackenfell repair data', `"${escapes}Brackenfell repair data`)
        .replaceAll("survey-flight", `"${escapes}survey-flight"`)
        .replace("91.0 in", "89.0 in"),
      [demo.kit]: records[demo.kit]!.replaceAll("CB-50", `"${escapes}CB-50"`).replace(
        "mode: run",
        `mode: "${escapes}"`,
      ),
    });
    for (const args of [
      ["check", "."],
      ["worksheet", demo.clean],
      ["worksheet", demo.faulty],
    ]) {
      const { stdout, code } = await tailcone(args, folder);
      expect(code).toBeLessThan(2);
      expect({ args, unfit: unfitLines(stdout) }).toEqual({ args, unfit: [] });
    }
  });

  it("the name of a file", async () => {
    const name = "\u001b[31m\u009b2J\rred.kit.yaml";
    const { folder } = new Workspace({ [name]: "" });
    for (const args of [["check"], ["check", "--brief"]]) {
      const { stdout, stderr, code } = await tailcone([...args, "."], folder);
      expect(code).toBe(1);
      expect({ args, unfit: unfitLines(stdout + stderr) }).toEqual({ args, unfit: [] });
    }
  });

  it("paints nothing where nobody sees it", async () => {
    const { stdout } = await tailconeOnDemo("check", demo.faulty);
    expect(unfitLines(stdout)).toEqual([]);
  });
});

describe("the calculation of a finding", () => {
  it("is told as far as it is read, and says where the rest is", () => {
    const judgement = runExample(ruleById.get("comfort-too-late")!.examples()[0]!);
    const late = judgement.findings.find(({ rule }) => rule === "comfort-too-late")!;
    const source = { resolve: () => undefined, load: () => undefined };
    const context = { source, options: {}, pathOf: (file: string) => file };
    const style = { width: 80, color: false, isBrief: false };
    const lines = findingTexts(judgement, context, style)(late, "").split("\n");
    const calculation = lines.slice(
      lines.findIndex((line) => line.startsWith("  calc")),
      lines.findIndex((line) => line.startsWith("  source")),
    );
    // What the finding is about, its limit, and what is nearest to them; 25 lines and the pointer's two.
    expect(calculation[0]).toMatch(/^ {2}calc {3}time to set point/);
    expect(calculation.length).toBeLessThanOrEqual(27);
    expect(calculation.join(" ")).toMatch(/time allowed .* time constant .* steady temperature/);
    expect(calculation.join(" ")).toMatch(/ \.\.\. and \d+ steps before them: tailcone worksheet/);
  });
});

it("a table may have more rows than a call takes arguments", () => {
  const rows = Array.from({ length: 200_000 }, (_, index) => [`P${index}`, "10 A"]);
  const lines = tableWithin(width, ["wire", "current"], rows).split("\n");
  expect([lines.length, lines[0], lines.at(-1)]).toEqual([200_001, "wire     current", "P199999     10 A"]);
});
