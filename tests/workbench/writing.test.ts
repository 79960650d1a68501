import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, afterEach, beforeAll, expect, test } from "vitest";
import { type Editor, startEditor } from "./editor";

const root = fileURLToPath(new URL("../../", import.meta.url));
const demo = join(root, "client", "demo");
const record = "survey-rack-0417.install.yaml";
const kit = "survey-rack.kit.yaml";
const wire = "id: P102A8";
const patience = { timeout: 90_000 };

let editor: Editor;

/** In dark colours; the other journeys are in light ones. */
beforeAll(async () => {
  editor = await startEditor({
    vsix: join(root, "dist", "tailcone.vsix"),
    workspace: demo,
    settings: { "workbench.colorTheme": "Default Dark Modern" },
  });
});

afterAll(() => editor?.stop());

afterEach(async ({ task }) => {
  if (task.result?.state === "fail") await editor.screenshot(`failed-${task.name.replace(/\W+/g, "-")}`);
});

test("the list at a gauge begins with the thinnest that passes, and says what it leads to", async () => {
  await editor.open(record);
  await editor.goBehind("8 AWG", { after: wire });
  await expect
    .poll(() => editor.suggestions(), patience)
    .toEqual(expect.arrayContaining([expect.stringMatching(/^8 AWG/)]));
  const [first] = await editor.suggestions();
  await editor.screenshot("10-gauges");
  expect(first).toMatch(/^8 AWG/);
  await editor.page.keyboard.press("Escape");
});

test("keys come while they are typed", async () => {
  await editor.open(record);
  await editor.goBehind("rating: 150 degC", { after: "id: P103A16" });
  await editor.page.keyboard.press("Enter");
  await editor.type("str");
  // What else has these letters in it comes behind.
  await expect.poll(async () => (await editor.suggested())[0], patience).toMatch(/^strands\b/);
  await editor.screenshot("11-key");
  await editor.page.keyboard.press("Escape");
  await editor.undo();
});

test("the installs of the folder stand side by side", async () => {
  await expect
    .poll(() => editor.installs(), patience)
    .toEqual([
      expect.stringMatching(/survey-rack-0417-faulty: \d+ errors/),
      expect.stringMatching(/survey-rack-0417-unfinished: \d+ errors/),
      expect.stringMatching(
        /survey-rack-0417: (\d+ warnings?, )?least electrical margin \d+ %, CG to the envelope \d+ %/,
      ),
    ]);
  // What the view shows of them, though it is narrow.
  const shown = editor.page.locator(".customview-tree .monaco-list-row .label-description");
  expect(await shown.allInnerTexts()).toEqual([
    expect.stringMatching(/^\d+ errors$/),
    expect.stringMatching(/^\d+ errors$/),
    expect.stringMatching(/^(\d+ warnings? · )?CG \d+ % · elec\. \d+ %$/),
  ]);
  await editor.screenshot("12-installs");
});

test("another name reaches every record that names the thing", async () => {
  await editor.open(record);
  await editor.select("CHILLER", { after: "component: RACK" });
  await editor.rename("COOLER");
  const saved = (name: string) => readFileSync(join(editor.workspace, name), "utf8");
  await expect.poll(() => saved(kit), patience).toContain("id: COOLER");
  await expect.poll(() => saved(record), patience).toContain("component: COOLER");
  await editor.screenshot("13-renamed");
});

test("a new record begins from a kit and an airframe", async () => {
  await editor.commandThatAsks(
    "Tailcone: New Install Record from a Kit and an Airframe",
    "Kit that goes into the aircraft",
  );
  const widget = editor.page.locator(".quick-input-widget");
  for (const [title, offered] of [
    ["Kit that goes into the aircraft", "QSR-60, Survey sensor rack"],
    ["Airframe that it goes into", "Type 9, B9-0417"],
  ] as const) {
    await widget.locator(".quick-input-title", { hasText: title }).waitFor();
    await widget.locator(".monaco-list-row", { hasText: offered }).first().waitFor();
    await editor.screenshot(`14-${title.split(" ")[0]!.toLowerCase()}`);
    await editor.page.keyboard.press("Enter");
  }
  await widget.locator(".quick-input-title", { hasText: "New Install Record" }).waitFor();
  await editor.page.keyboard.press("Enter");
  await editor.page
    .locator('.tab.active[data-resource-name="survey-rack-brackenfell-0417.install.yaml"]')
    .waitFor();
  await expect
    .poll(() => editor.installs(), patience)
    .toContainEqual(expect.stringMatching(/^survey-rack-brackenfell-0417: 1 error, \d\d warnings/));
  await editor.screenshot("14-new-record");
});

test("a new airframe gets the ending of its kind", async () => {
  await editor.commandThatAsks("Tailcone: New Airframe Record", "new.airframe.yaml");
  const widget = editor.page.locator(".quick-input-widget");
  await widget.locator(".quick-input-box input").fill("b9-0500");
  await widget.getByText("Becomes b9-0500.airframe.yaml").waitFor();
  await editor.page.keyboard.press("Enter");
  await editor.page.locator('.tab.active[data-resource-name="b9-0500.airframe.yaml"]').waitFor();
  await editor.screenshot("14-new-airframe");
});

test("the walkthrough opens", async () => {
  await editor.command("Tailcone: Open the Walkthrough");
  await editor.page.locator(".getting-started-step, .getting-started-category").first().waitFor();
  await editor.screenshot("15-walkthrough");
});

test("nothing was asked of the outside, and nothing broke", async () => {
  expect(editor.blocked).toEqual([]);
  expect(editor.pageErrors).toEqual([]);
});
