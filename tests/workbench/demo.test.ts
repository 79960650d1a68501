import { readFileSync } from "node:fs";
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

test("nothing was asked of the outside, and nothing broke", async () => {
  expect(editor.blocked).toEqual([]);
  expect(editor.pageErrors).toEqual([]);
  expect(await editor.notifications()).toEqual([]);
  expect(
    editor.console.filter((line) => line.startsWith("error") && line.includes("tailcone.tailcone")),
  ).toEqual([]);
});
