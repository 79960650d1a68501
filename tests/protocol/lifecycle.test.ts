import { beforeAll, describe, expect, it } from "vitest";
import { Editor } from "../support/editor";
import { demo, demoWorkspace, planted, plantedWorkspace, Workspace } from "../support/workspace";

const everything = { start: { line: 0, character: 0 }, end: { line: 90_000, character: 0 } };

describe("the end", () => {
  it("comes with code 0 after shutdown and exit", async () => {
    const editor = await Editor.start();
    expect(await editor.stop()).toBe(0);
    expect(editor.serverLog).toBe("");
  });

  it("comes with code 0 with records open and work under way", async () => {
    const workspace = plantedWorkspace();
    const editor = await Editor.start({ folders: [workspace.uri("")] });
    for (const name of [...Object.values(demo), planted])
      editor.open(workspace.uri(name), workspace.read(name));
    for (let count = 0; count < 20; count++)
      editor.change(workspace.uri(planted), ["guage", "guag"], ["guag", "guage"]);
    expect(await editor.stop()).toBe(0);
  });

  it("comes when the input closes without a word, so that no server is left behind", async () => {
    const workspace = plantedWorkspace();
    const editor = await Editor.start({ folders: [workspace.uri("")] });
    editor.open(workspace.uri(planted), workspace.read(planted));
    await editor.diagnostics(workspace.uri(planted));
    expect(await editor.hangUp()).not.toBeNull();
  });

  it("comes when the input closes before a greeting", async () => {
    expect(await Editor.startSilent().hangUp()).not.toBeNull();
  });
});

it("an editor that can do nothing is served without a complaint", async () => {
  const workspace = plantedWorkspace();
  const editor = await Editor.start({ folders: [workspace.uri("")], isBare: true });
  const uri = workspace.uri(planted);
  editor.open(uri, workspace.read(planted));
  expect(await editor.diagnostics(uri)).not.toEqual([]);
  expect(editor.registrations).toEqual([]);
  expect(await editor.stop()).toBe(0);
  expect(editor.serverLog).toBe("");
});

describe("requests about documents that are not open", () => {
  const workspace = plantedWorkspace();
  const uris = [
    workspace.uri(demo.clean),
    workspace.uri("nowhere.install.yaml"),
    workspace.uri("notes.txt"),
    workspace.uri(""),
    "untitled:Untitled-1",
    "git:/work/x.install.yaml?ref=HEAD",
    "file:///%zz.install.yaml",
    "file://other-machine/x.install.yaml",
    "x.install.yaml",
    "",
  ];

  let editor: Editor;

  beforeAll(async () => {
    editor = await Editor.start({ folders: [workspace.uri("")], isShared: true });
  });

  it.each(uris)("%j: no answer, and no harm", async (uri) => {
    expect(await editor.hover(uri, { line: 3, character: 5 })).toBeNull();
    expect(await editor.actions(uri, everything)).toEqual([]);
    expect(Array.isArray(await editor.symbols(uri))).toBe(true);
    // It still works.
    const record = workspace.uri(demo.clean);
    editor.open(record, workspace.read(demo.clean));
    expect(await editor.diagnostics(record)).toEqual([]);
    editor.close(record);
    expect(editor.serverLog).toBe("");
  });

  it("after all of them the server ends as it should", async () => {
    expect(await editor.stop()).toBe(0);
    expect(editor.serverLog).toBe("");
  });

  it("closed a moment ago", async () => {
    const alone = await Editor.start({
      folders: [workspace.uri("")],
      initializationOptions: { checkWorkspace: false },
    });
    const uri = workspace.uri(planted);
    alone.open(uri, workspace.read(planted));
    const place = alone.placeOf(uri, "14.5 ft");
    await alone.diagnostics(uri);
    alone.close(uri);
    expect(await alone.hover(uri, place)).toBeNull();
    expect(await alone.actions(uri, everything)).toEqual([]);
    await alone.quiet();
    expect(alone.lastOf(uri)!.diagnostics).toEqual([]);
  });
});

describe("folders", () => {
  it("may come later: a record is read from a folder that was added", async () => {
    const workspace = demoWorkspace();
    const other = new Workspace();
    const editor = await Editor.start({ folders: [other.uri("")] });
    const uri = workspace.uri(`fleet/${demo.clean}`);
    editor.open(uri, workspace.read(demo.clean).replaceAll(/^(airframe|kit): /gm, "$1: ../"));
    expect((await editor.diagnostics(uri)).map(({ code }) => code)).toContain("record-outside-workspace");
    editor.setFolders(other.uri(""), workspace.uri(""));
    await editor.diagnosticsWhen(uri, ({ diagnostics }) => diagnostics.length === 0, "no findings");
  });
});
