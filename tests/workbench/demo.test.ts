import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from "vitest";
import { type Editor, startEditor } from "./editor";

const root = fileURLToPath(new URL("../../", import.meta.url));
const demo = join(root, "client", "demo");

/** A record of the demo that has no finding. */
const record = "survey-rack-0417.install.yaml";
/** How the entry of a wire in it begins, the gauge that this wire has, and one that is too thin for it. */
const wire = "id: P102A8";
const thick = "8 AWG";
const thin = "12 AWG";

const text = readFileSync(join(demo, record), "utf8");
const lineOfGauge = text.slice(0, text.indexOf(thick, text.indexOf(wire))).split("\n").length;
const sections = [...text.matchAll(/^([\w-]+):/gm)].map(([, name]) => name);

/** The same with a tab before the gauge, as another editor leaves it: this one takes a typed tab for spaces. */
const tabbed = "tabbed.install.yaml";

/** The same with a wire that is too long, which its deviation accepts. */
const deviating = "deviating.install.yaml";

/** Accepts that the cooling unit loses more voltage than it may. */
const deviation = `
deviations:
  - rule: wire-voltage-drop
    subject: component CHILLER
    least-margin: -10 %
    reason: the cooling unit runs from 22 V
    reference: HM-0412-DEV-3 rev A
    by: stamp HM 7
    until: 2099-12-31
`;

/** The record's text with the first of these behind the beginning of the wire's entry put in another way. */
function changed(before: string, after: string): string {
  const at = text.indexOf(before, text.indexOf(wire));
  return text.slice(0, at) + after + text.slice(at + before.length);
}

/** The voltage drop along the wire, worked out in front of the reader. */
const calculation = /=.*\d+(\.\d+)? V\b/s;

const patience = { timeout: 60_000 };

let editor: Editor;
const problems = () => editor.problems();

/** Only what is open is checked: of the whole workspace the list would be long, and it is read row by row. */
beforeAll(async () => {
  editor = await startEditor({
    vsix: join(root, "dist", "tailcone.vsix"),
    workspace: demo,
    settings: { "tailcone.checkWorkspace": false },
  });
  // Before a file is opened: the editor remembers for a while which files it found.
  writeFileSync(join(editor.workspace, tabbed), changed(`    gauge: ${thick}`, `\tgauge: ${thick}`));
  writeFileSync(join(editor.workspace, deviating), changed("length: 14.5 ft", "length: 22 ft") + deviation);
});

afterAll(() => editor?.stop());

beforeEach(() => editor.open(record));

afterEach(async ({ task }) => {
  if (task.result?.state === "fail") {
    await editor.screenshot(`failed-${task.name.replace(/\W+/g, "-")}`);
  }
  await editor.discard();
});

test("a record in order stays YAML and shows no finding", async () => {
  expect(await editor.language()).toBe("yaml");
  // The server has read the record when it explains a value; only then does silence mean anything.
  await editor.hoverOn(thick, { after: wire });
  await expect.poll(() => editor.hover(), patience).toMatch(calculation);
  await editor.screenshot("1-clean-with-hover");
  expect(await editor.squiggles()).toEqual([]);
  expect(await problems()).toEqual([]);
});

test("the outline shows the record's sections", async () => {
  const topLevel = async () =>
    (await editor.outline()).filter(({ level }) => level === 1).map(({ name }) => name);
  await expect.poll(topLevel, patience).toEqual(sections);
  await editor.screenshot("2-outline");
});

test("a wire too thin for its load is marked, explained, and in order again after undo", async () => {
  await editor.replace(thick, thin, { after: wire });
  await expect
    .poll(() => editor.squiggles(), patience)
    .toContainEqual({ severity: "error", line: lineOfGauge });
  await expect
    .poll(problems, patience)
    .toContainEqual(
      expect.objectContaining({ file: record, severity: "error", source: "tailcone", line: lineOfGauge }),
    );
  await editor.screenshot("3-thin-wire-problems");

  await editor.hoverOn(thin, { after: wire });
  await expect.poll(() => editor.hover(), patience).toMatch(calculation);
  await editor.screenshot("4-thin-wire-hover");

  await editor.undo();
  await expect.poll(() => editor.squiggles(), patience).toEqual([]);
  await expect.poll(problems, patience).toEqual([]);
  await editor.screenshot("5-undone");
});

test("a tab in an indentation is told, and the light bulb puts spaces in its place", async () => {
  await editor.open(tabbed);
  await expect.poll(problems, patience).toEqual([
    expect.objectContaining({
      file: tabbed,
      severity: "error",
      code: expect.stringContaining("text-tab-indent"),
      line: lineOfGauge,
      message: expect.stringContaining("is read as if 4 spaces stood there"),
    }),
  ]);
  await editor.select("gauge", { after: wire });
  await expect.poll(() => editor.squiggles(), patience).toEqual([{ severity: "error", line: lineOfGauge }]);
  await editor.page.keyboard.press("Home");
  const title = "Put 4 spaces in place of the tab";
  await expect.poll(() => editor.quickFixes(), patience).toContain(title);
  await editor.screenshot("6-tab");
  await editor.takeQuickFix(title);
  await expect.poll(() => editor.squiggles(), patience).toEqual([]);
  await expect.poll(problems, patience).toEqual([]);
  await editor.save();
  expect(readFileSync(join(editor.workspace, tabbed), "utf8")).toBe(text);
});

test("what a deviation accepts is told as information: until when, by whom and why", async () => {
  await editor.open(deviating);
  await expect
    .poll(problems, patience)
    .toEqual([expect.objectContaining({ file: deviating, severity: "info", line: lineOfGauge })]);
  const [accepted] = await problems();
  expect(accepted!.code).toContain("wire-voltage-drop");
  expect(accepted!.message).toContain(
    "Accepted until 2099-12-31 by stamp HM 7 (HM-0412-DEV-3 rev A): the cooling unit runs from 22 V.",
  );
  await editor.select("gauge", { after: wire });
  await expect.poll(() => editor.squiggles(), patience).toEqual([{ severity: "info", line: lineOfGauge }]);
  await editor.screenshot("7-accepted");
});

test("nothing was asked of the outside, and nothing broke", async () => {
  expect(editor.blocked).toEqual([]);
  expect(editor.pageErrors).toEqual([]);
  expect(await editor.notifications()).toEqual([]);
  expect(
    editor.console.filter((line) => line.startsWith("error") && line.includes("tailcone.tailcone")),
  ).toEqual([]);
});
