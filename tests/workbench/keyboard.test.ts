import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, afterEach, beforeAll, expect, test } from "vitest";
import { type Editor, startEditor } from "./editor";
import { type DemoRepository, demoRepository } from "./repository";

const root = fileURLToPath(new URL("../../", import.meta.url));
const demo = join(root, "client", "demo");
const record = "survey-rack-0417.install.yaml";
const wire = "id: P102A8";
const patience = { timeout: 90_000 };

let repository: DemoRepository;
let target: string;
let editor: Editor;
const press = (keys: string) => editor.page.keyboard.press(keys);

/** In the themes with high contrast. Whatever the pointer does is counted. */
beforeAll(async () => {
  repository = demoRepository();
  target = mkdtempSync(join(tmpdir(), "copied-"));
  editor = await startEditor({
    vsix: join(root, "dist", "tailcone.vsix"),
    workspace: repository.workspace,
    settings: {
      "git.enabled": true,
      "workbench.preferredDarkColorTheme": "Default High Contrast",
      "workbench.preferredLightColorTheme": "Default High Contrast Light",
      "files.simpleDialog.enable": true,
    },
  });
  await editor.page.evaluate(() => {
    const counted = globalThis as unknown as { pointed: number };
    counted.pointed = 0;
    for (const kind of ["mousedown", "pointerdown"])
      globalThis.addEventListener(kind, () => counted.pointed++, { capture: true });
  });
});

afterAll(async () => {
  await editor?.stop();
  repository?.remove();
  if (target) rmSync(target, { recursive: true, force: true });
});

afterEach(async ({ task }) => {
  if (task.result?.state === "fail") await editor.screenshot(`failed-${task.name.replace(/\W+/g, "-")}`);
});

test("a fault is found, explained and mended with keys alone", async () => {
  await editor.openByKeys(record);
  await editor.replace("8 AWG", "12 AWG", { after: wire });
  await expect.poll(() => editor.squiggles(), patience).not.toEqual([]);

  await press("ArrowLeft");
  await press("Control+k");
  await press("Control+i");
  await expect.poll(() => editor.hover(), patience).toMatch(/=.*\d+(\.\d+)? V\b/s);
  await editor.screenshot("30-hover");
  await press("Escape");
  await press("Escape");

  await press("Control+Home");
  await press("Alt+F8");
  await expect.poll(() => editor.problemBox(), patience).toContain("P102A8");
  await editor.screenshot("31-next-problem");
  await press("Escape");

  await expect.poll(() => editor.quickFixes(), patience).toContain("Make wire P102A8 8 AWG");
  await editor.screenshot("32-quick-fix");
  await press("Enter");
  await expect.poll(() => editor.squiggles(), patience).toEqual([]);
  await press("Control+s");
  const saved = () => readFileSync(join(editor.workspace, record), "utf8");
  await expect.poll(saved, patience).toBe(readFileSync(join(demo, record), "utf8"));
});

test("the view of installs leads to the least margin with keys alone", async () => {
  await editor.openByKeys("survey-rack.kit.yaml");
  // The view takes the focus once it has rows: asked for the first time, it has none.
  await editor.commandByKeys("Explorer: Focus on Installs View");
  await editor.page.locator(".customview-tree .monaco-list-row").first().waitFor();
  await editor.commandByKeys("Explorer: Focus on Installs View");
  const focused = editor.page.locator(".customview-tree .monaco-list-row.focused");
  const row = async () =>
    (await focused.evaluateAll((rows) => rows.map((one) => one.getAttribute("aria-label")))).join("");
  await press("End");
  await expect.poll(row, patience).toMatch(/^survey-rack-0417: /);
  await press("ArrowRight");
  await editor.page.locator('.customview-tree .monaco-list-row[aria-label^="Least electrical"]').waitFor();
  await press("ArrowDown");
  await expect.poll(row, patience).toMatch(/^Least electrical margin/);
  await editor.screenshot("33-installs");
  await press("Enter");
  await editor.page.locator(`.tab.active[data-resource-name="${record}"]`).waitFor();
  await expect.poll(() => editor.cursor(), patience).toMatch(/selected/);
});

test("a comparison is asked for with keys alone", async () => {
  await editor.openByKeys(record);
  await editor.replace("8 AWG", "12 AWG", { after: wire });
  await expect.poll(() => editor.squiggles(), patience).not.toEqual([]);
  await editor.commandByKeys("Tailcone: Compare Record with Last Commit");
  await expect.poll(() => editor.panelText(), patience).toContain("wires[P102A8].gauge\n8 AWG\n12 AWG");
  await editor.screenshot("34-compared");
  expect(await editor.page.evaluate(() => (globalThis as unknown as { pointed: number }).pointed)).toBe(0);
});

test("the walkthrough copies the demo and opens the copy", async () => {
  await editor.command("Tailcone: Open the Walkthrough");
  const step = editor.page.locator(".getting-started-step.expanded");
  await step.waitFor();
  await editor.screenshot("35-walkthrough");
  await step.locator(".monaco-button", { hasText: "Copy the Demo" }).first().click();
  const dialog = editor.page.locator(".quick-input-widget");
  await dialog.locator(".quick-input-title", { hasText: "Folder that the demo is copied into" }).waitFor();
  // The dialog begins with the open folder, and takes a path once it says so.
  const box = dialog.locator(".quick-input-box input");
  await expect.poll(() => box.inputValue(), patience).toMatch(/\/demo\/?$/);
  await box.fill(`${target}/`);
  await dialog.locator(".monaco-button", { hasText: "Copy Demo Here" }).click();
  await editor.page.waitForURL(/tailcone-demo/);
  await editor.page.locator(".explorer-folders-view .monaco-list-row", { hasText: record }).waitFor();
  await editor.page.locator(`.tab.active[data-resource-name="${record}"]`).waitFor();
  expect(readdirSync(join(target, "tailcone-demo")).toSorted()).toEqual(readdirSync(demo).toSorted());
  expect(readFileSync(join(target, "tailcone-demo", record), "utf8")).toBe(
    readFileSync(join(demo, record), "utf8"),
  );
});

test("nothing was asked of the outside, and nothing broke", async () => {
  expect(editor.blocked).toEqual([]);
  expect(editor.pageErrors).toEqual([]);
});
