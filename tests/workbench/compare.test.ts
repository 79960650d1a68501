import { copyFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, afterEach, beforeAll, expect, test } from "vitest";
import { type Editor, startEditor } from "./editor";
import { type DemoRepository, demoRepository } from "./repository";

const root = fileURLToPath(new URL("../../", import.meta.url));
const record = "survey-rack-0417.install.yaml";
const uncommitted = "later.install.yaml";
const wire = "id: P102A8";
const patience = { timeout: 90_000 };

let repository: DemoRepository;
let editor: Editor;

beforeAll(async () => {
  repository = demoRepository();
  editor = await startEditor({
    vsix: join(root, "dist", "tailcone.vsix"),
    workspace: repository.workspace,
    settings: { "git.enabled": true },
  });
  copyFileSync(join(editor.workspace, record), join(editor.workspace, uncommitted));
});

afterAll(async () => {
  await editor?.stop();
  repository?.remove();
});

afterEach(async ({ task }) => {
  if (task.result?.state === "fail") await editor.screenshot(`failed-${task.name.replace(/\W+/g, "-")}`);
});

test("beside the texts stands what a change to the last commit does", async () => {
  await editor.open(record);
  await editor.replace("8 AWG", "12 AWG", { after: wire });
  await expect.poll(() => editor.squiggles(), patience).not.toEqual([]);
  await editor.command("Tailcone: Compare Record with Last Commit");
  await expect.poll(() => editor.panelText(), patience).toContain("wires[P102A8].gauge\n8 AWG\n12 AWG");
  expect(await editor.panelText()).toContain("wire-over-ampacity");
  // Before them stand the tabs of what was opened, such as the changed record.
  expect((await editor.tabs()).slice(-2)).toEqual([
    `${record} (HEAD to now)`,
    `What the change to ${record} does`,
  ]);
  await expect.poll(() => editor.newLines(), patience).toEqual([expect.stringMatching(/^gauge:\s12\sAWG$/)]);
  await editor.screenshot("20-compared");
});

test("of a record that the revision does not have there is nothing to compare", async () => {
  await editor.open(uncommitted);
  await editor.command("Tailcone: Compare Record with Last Commit");
  await expect
    .poll(() => editor.notifications(), patience)
    .toEqual([`${uncommitted} is not in HEAD: there is nothing to compare with.`]);
});

test("nothing was asked of the outside, and nothing broke", async () => {
  expect(editor.blocked).toEqual([]);
  expect(editor.pageErrors).toEqual([]);
});
