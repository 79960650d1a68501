/** An install record is judged with the kit and the airframe as they are now, saved or not. */
import { rmSync } from "node:fs";
import { beforeEach, describe, expect, it } from "vitest";
import { FileChangeType } from "vscode-languageserver";
import { rulesOf } from "../support/comparison";
import { Editor } from "../support/editor";
import { demo, demoWorkspace, replaceOnce, type Workspace } from "../support/workspace";

let workspace: Workspace;
let editor: Editor;
let install: string;
let kit: string;

beforeEach(async () => {
  workspace = demoWorkspace();
  editor = await Editor.start({
    folders: [workspace.uri("")],
    initializationOptions: { checkWorkspace: false },
  });
  install = workspace.uri(demo.clean);
  kit = workspace.uri(demo.kit);
  return async () => {
    await editor.kill();
  };
});

async function openInstall(): Promise<void> {
  editor.open(install, workspace.read(demo.clean));
  expect(rulesOf(await editor.diagnostics(install))).toEqual([]);
}

/** Waits until the install record has this finding, at whatever version. */
const has = (rule: string) =>
  editor.diagnosticsWhen(install, ({ diagnostics }) => rulesOf(diagnostics).includes(rule), rule);

const hasNone = () =>
  editor.diagnosticsWhen(install, ({ diagnostics }) => diagnostics.length === 0, "no findings");

/** The chiller draws more than its breaker carries. */
const hungry = (text: string) => replaceOnce(text, "1100 W", "1900 W");

describe("the kit, open and not saved", () => {
  it("counts as it stands in the editor", async () => {
    await openInstall();
    editor.open(kit, workspace.read(demo.kit));
    editor.change(kit, ["1100 W", "1900 W"]);
    await has("protection-below-load");
    expect(editor.lastOf(install)!.version).toBe(1);
    editor.change(kit, ["1900 W", "1100 W"]);
    await hasNone();
  });

  it("counts from the moment it is opened, whichever comes first", async () => {
    editor.open(kit, hungry(workspace.read(demo.kit)));
    editor.open(install, workspace.read(demo.clean));
    expect(rulesOf(await editor.diagnostics(install))).toContain("protection-below-load");
  });

  it("counts as it is on disk again, when it is closed", async () => {
    await openInstall();
    editor.open(kit, hungry(workspace.read(demo.kit)));
    await has("protection-below-load");
    editor.close(kit);
    await hasNone();
  });

  it("is not replaced by what another program writes to disk", async () => {
    await openInstall();
    editor.open(kit, workspace.read(demo.kit));
    await editor.diagnostics(kit);
    workspace.write(demo.kit, hungry(workspace.read(demo.kit)));
    editor.changedOnDisk(FileChangeType.Changed, kit);
    await editor.quiet();
    expect(editor.lastOf(install)!.diagnostics).toEqual([]);
    editor.close(kit);
    await has("protection-below-load");
  });

  it("that breaks while it is typed takes its ids away, and brings them back", async () => {
    await openInstall();
    editor.open(kit, workspace.read(demo.kit));
    editor.change(kit, ["- id: CHILLER", "- id: CHILLR"]);
    await has("reference-unknown");
    editor.change(kit, ["- id: CHILLR", "- id: CHILLER"]);
    await hasNone();
  });

  it("is checked by itself, and its own findings stay with it", async () => {
    await openInstall();
    editor.open(kit, workspace.read(demo.kit));
    editor.change(kit, ["part: QSR-60-100 sensor rack", "prat: QSR-60-100 sensor rack"]);
    expect(rulesOf(await editor.diagnostics(kit))).toContain("key-unknown");
    await editor.quiet();
    expect(rulesOf(editor.lastOf(install)!.diagnostics)).not.toContain("key-unknown");
  });
});

describe("a record on disk", () => {
  it("counts anew when it has changed", async () => {
    await openInstall();
    workspace.write(demo.kit, hungry(workspace.read(demo.kit)));
    editor.changedOnDisk(FileChangeType.Changed, kit);
    await has("protection-below-load");
  });

  it("counts anew with the next edit, where nobody tells of the change", async () => {
    await openInstall();
    workspace.write(demo.kit, hungry(workspace.read(demo.kit)));
    editor.change(install, ["revision: B", "revision: C"]);
    expect(rulesOf(await editor.diagnostics(install))).toContain("protection-below-load");
  });

  it("is missed when it goes, and found when it comes", async () => {
    await openInstall();
    const text = workspace.read(demo.kit);
    rmSync(workspace.path(demo.kit));
    editor.changedOnDisk(FileChangeType.Deleted, kit);
    await has("record-missing");
    workspace.write(demo.kit, text);
    editor.changedOnDisk(FileChangeType.Created, kit);
    await hasNone();
  });

  it("that was never there is found when another name is written, and when it is opened unsaved", async () => {
    await openInstall();
    editor.change(install, [`kit: ${demo.kit}`, "kit: next.kit.yaml"]);
    await has("record-missing");
    editor.open(workspace.uri("next.kit.yaml"), workspace.read(demo.kit));
    await hasNone();
    editor.close(workspace.uri("next.kit.yaml"));
    await has("record-missing");
  });

  it("that nobody names changes nothing", async () => {
    await openInstall();
    const count = editor.published.length;
    workspace.write("other.kit.yaml", "");
    editor.changedOnDisk(FileChangeType.Created, workspace.uri("other.kit.yaml"));
    editor.changedOnDisk(FileChangeType.Changed, workspace.uri("notes.txt"), "untitled:x.kit.yaml");
    await editor.quiet();
    expect(editor.published.length).toBe(count);
  });
});

it("the airframe counts too, for every install record that names it", async () => {
  const draft = workspace.uri("draft.install.yaml");
  editor.open(draft, workspace.read(demo.clean));
  await openInstall();
  const airframe = workspace.uri(demo.airframe);
  editor.open(airframe, workspace.read(demo.airframe));
  editor.change(airframe, ["nominal: 28 V", "nominal: 14 V"]);
  for (const uri of [install, draft]) {
    const wanted = await editor.diagnosticsWhen(uri, ({ diagnostics }) => diagnostics.length > 0, "findings");
    expect(rulesOf(wanted)).toContain("wire-voltage-drop");
  }
});

it("a record outside the workspace's folders is not read", async () => {
  workspace.write("../outside/secret.kit.yaml", workspace.read(demo.kit));
  editor.open(install, replaceOnce(workspace.read(demo.clean), demo.kit, "../outside/secret.kit.yaml"));
  expect(rulesOf(await editor.diagnostics(install))).toContain("record-outside-workspace");
  // Even while it is open: what is shown must not depend on which windows are.
  editor.open(workspace.uri("../outside/secret.kit.yaml"), workspace.read(demo.kit));
  await editor.quiet();
  expect(rulesOf(editor.lastOf(install)!.diagnostics)).toContain("record-outside-workspace");
});
