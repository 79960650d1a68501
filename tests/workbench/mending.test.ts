import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from "vitest";
import { type Editor, startEditor } from "./editor";

const root = fileURLToPath(new URL("../../", import.meta.url));
const demo = join(root, "client", "demo");
const record = "survey-rack-0417.install.yaml";
const wire = "id: P102A8";

const patience = { timeout: 60_000 };

let editor: Editor;

beforeAll(async () => {
  editor = await startEditor({ vsix: join(root, "dist", "tailcone.vsix"), workspace: demo });
});

afterAll(() => editor?.stop());

beforeEach(() => editor.open(record));

afterEach(async ({ task }) => {
  if (task.result?.state === "fail") {
    await editor.screenshot(`failed-${task.name.replace(/\W+/g, "-")}`);
  }
  await editor.discard();
});

test("the light bulb mends the fault with the smallest gauge that was tried", async () => {
  await editor.replace("8 AWG", "12 AWG", { after: wire });
  await expect.poll(() => editor.squiggles(), patience).not.toEqual([]);
  await editor.select("12 AWG", { after: wire });
  const title = "Make wire P102A8 8 AWG";
  await expect.poll(() => editor.quickFixes(), patience).toContain(title);
  const offered = await editor.quickFixes();
  expect(offered).toEqual([...new Set(offered)]);
  await editor.screenshot("16-quick-fix");

  // Looked at before it is made, a change of several places is whole.
  await editor.page.keyboard.press("ArrowDown");
  await editor.page.keyboard.press("Control+Enter");
  const preview = editor.page.locator(".bulk-edit-panel");
  const boxes = preview.locator(".monaco-list-row .edit-checkbox");
  await boxes.nth(2).waitFor();
  const ticks = await boxes.evaluateAll((all) => all.map((box) => box.getAttribute("aria-checked")));
  expect(ticks).toEqual(["true", "true", "true"]);
  await editor.screenshot("16-preview");
  await preview.locator(".monaco-button", { hasText: "Discard" }).click();

  await editor.select("12 AWG", { after: wire });
  await expect.poll(() => editor.quickFixes(), patience).toContain(title);
  await editor.takeQuickFix(title);
  await expect.poll(() => editor.squiggles(), patience).toEqual([]);
  await editor.save();
  const saved = readFileSync(join(editor.workspace, record), "utf8");
  expect(saved).toBe(readFileSync(join(demo, record), "utf8"));
});

test("the language status tells what the record in front is linked to and what was found in it", async () => {
  await expect.poll(() => editor.languageStatus(), patience).toContain("No errors or warnings");
  expect(await editor.languageStatus()).toContain("with brackenfell-0417 and survey-rack");
  await editor.screenshot("17-language-status");
  await editor.replace("8 AWG", "12 AWG", { after: wire });
  await expect.poll(() => editor.languageStatus(), patience).toMatch(/\d+ errors?/);
});
