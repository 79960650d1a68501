import { describe, expect, it } from "vitest";
import { deviationExample } from "../../server/src/core/rules/deviations/deviation-example";
import { findingsOf, report } from "../support/command-line";
import { ofEditor, ofReport, rulesOf, wordsOf } from "../support/comparison";
import { Editor } from "../support/editor";
import { demo, demoRecords, demoWorkspace, planted, plantedWorkspace, Workspace } from "../support/workspace";

/** What is not open is not checked beside it. */
const startIn = (workspace: Workspace) =>
  Editor.start({ folders: [workspace.uri("")], initializationOptions: { checkWorkspace: false } });

async function checkedByCommandLine(text: string) {
  const found = await report([planted], demoWorkspace({ [planted]: text }).folder);
  return findingsOf(found).map((finding) => ofReport(finding, text));
}

it("says on greeting what it can do", async () => {
  const { initialized } = await startIn(new Workspace());
  expect(initialized.serverInfo).toMatchObject({
    name: "tailcone",
    version: expect.stringMatching(/^\d+\./),
  });
  expect(initialized.capabilities).toMatchObject({
    textDocumentSync: 2,
    hoverProvider: true,
    documentSymbolProvider: true,
    codeActionProvider: { codeActionKinds: ["quickfix", "source.fixAll.tailcone"] },
  });
});

it("asks to be told of records that change on disk", async () => {
  const workspace = demoWorkspace();
  const editor = await startIn(workspace);
  editor.open(workspace.uri(demo.kit), workspace.read(demo.kit));
  await editor.diagnostics(workspace.uri(demo.kit));
  expect(editor.registrations.map(({ method }) => method)).toContain("workspace/didChangeWatchedFiles");
  const { watchers } = editor.registrations.find(({ method }) => method.endsWith("WatchedFiles"))!
    .registerOptions as { watchers: { globPattern: string }[] };
  expect(JSON.stringify(watchers)).toMatch(/airframe.*kit.*install/);
});

describe("an open record", () => {
  it("without findings gets an empty list", async () => {
    const workspace = demoWorkspace();
    const editor = await startIn(workspace);
    const uri = workspace.uri(demo.clean);
    editor.open(uri, workspace.read(demo.clean));
    expect(await editor.diagnostics(uri)).toEqual([]);
    expect(editor.lastOf(uri)?.version).toBe(1);
  });

  it("tells of what it accepts by whom and until when, and no more what to do", async () => {
    const workspace = new Workspace({ "a.install.yaml": deviationExample() });
    const editor = await startIn(workspace);
    const uri = workspace.uri("a.install.yaml");
    editor.open(uri, workspace.read("a.install.yaml"));
    const accepted = (await editor.diagnostics(uri)).find(({ code }) => code === "wire-voltage-drop")!;
    expect(accepted.severity).toBe(3);
    const [what, acceptance, source] = wordsOf(accepted.message).split("\n");
    expect(what).toMatch(/RACK.*V/);
    expect(acceptance).toBe(
      "Accepted until 2099-12-31 by stamp HM 7 (HM-0412-DEV-3 rev A): the rack runs from 22 V.",
    );
    expect(source).toMatch(/^Source: /);
    const { location } = accepted.relatedInformation!.find(({ message }) => message === "accepted here")!;
    expect(location.uri).toBe(uri);
    const written = workspace.read("a.install.yaml").split("\n")[location.range.start.line]!;
    expect(written.slice(location.range.start.character)).toBe("rule: wire-voltage-drop");
  });

  it("gets its findings, each with rule, source, severity, and words of three parts", async () => {
    const workspace = plantedWorkspace();
    const editor = await startIn(workspace);
    const uri = workspace.uri(planted);
    editor.open(uri, workspace.read(planted));
    const found = await editor.diagnostics(uri);
    expect(found.length).toBeGreaterThan(6);
    for (const { source, code, severity, message, range } of found) {
      expect(source).toBe("tailcone");
      expect(code).toMatch(/^[a-z]+(-[a-z]+)*$/);
      expect([1, 2, 3]).toContain(severity);
      expect(wordsOf(message).split("\n").length).toBeGreaterThan(1);
      expect(range.start.line).toBe(range.end.line);
    }
    const drop = found.find(({ code }) => code === "wire-voltage-drop")!;
    const { start } = editor.rangeOf(uri, "12 AWG\n    length: 14.5 ft");
    expect(drop.range).toEqual({ start, end: { ...start, character: start.character + "12 AWG".length } });
    expect(drop.message).toMatch(/\d V.*allowed.*\n.*\nSource: FAA AC 43\.13-1B/);
  });

  it("tells of the other places that a finding rests on, in whichever record", async () => {
    const workspace = plantedWorkspace();
    const editor = await startIn(workspace);
    const uri = workspace.uri(planted);
    editor.open(uri, workspace.read(planted));
    const related = (await editor.diagnostics(uri)).flatMap((one) => one.relatedInformation ?? []);
    const named = new Set(related.map(({ location }) => location.uri));
    expect(named).toEqual(new Set([uri, workspace.uri(demo.airframe), workspace.uri(demo.kit)]));
    const kit = workspace.read(demo.kit).split("\n");
    for (const { location } of related.filter((one) => one.location.uri.endsWith(".kit.yaml"))) {
      const { line, character } = location.range.start;
      expect(kit[line]!.slice(character)).toMatch(/^(FANS|id: FANS)/);
    }
  });

  it("is checked again with each change, under the version of the change", async () => {
    const workspace = demoWorkspace();
    const editor = await startIn(workspace);
    const uri = workspace.uri(demo.clean);
    editor.open(uri, workspace.read(demo.clean));
    expect(rulesOf(await editor.diagnostics(uri))).toEqual([]);
    editor.change(uri, ["8 AWG\n    length: 14.5 ft", "12 AWG\n    length: 14.5 ft"]);
    expect(rulesOf(await editor.diagnostics(uri))).toContain("wire-voltage-drop");
    editor.change(
      uri,
      ["12 AWG\n    length: 14.5 ft", "8 AWG\n    length: 14.5 ft"],
      ["  # Returns", "# Returns"],
    );
    expect(rulesOf(await editor.diagnostics(uri))).toEqual([]);
    expect(editor.published.filter((one) => one.uri === uri).map(({ version }) => version)).toEqual([
      1, 2, 3,
    ]);
  });

  it("may be no YAML for a while", async () => {
    const workspace = demoWorkspace();
    const editor = await startIn(workspace);
    const uri = workspace.uri(demo.clean);
    editor.open(uri, workspace.read(demo.clean));
    editor.change(uri, ["loads: { RACK: survey, ", "loads: { RACK: survey, {"]);
    expect((await editor.diagnostics(uri)).length).toBeGreaterThan(0);
    editor.change(uri, ["loads: { RACK: survey, {", "loads: { RACK: survey, "]);
    expect(await editor.diagnostics(uri)).toEqual([]);
  });

  it("is checked though it was never saved", async () => {
    const editor = await Editor.start();
    const uri = "untitled:new.kit.yaml";
    editor.open(uri, "kit: { number: QSR-60, revision: C, colour: grey }\ncomponents: []\n");
    expect(rulesOf(await editor.diagnostics(uri))).toEqual(["key-unknown"]);
  });

  it("is the same record however its URI is written, and is answered under the URI it was opened with", async () => {
    const folder = "flotte s\u00fcd #1";
    const records = Object.entries(demoRecords()).map(([name, text]) => [`${folder}/${name}`, text]);
    const workspace = new Workspace(Object.fromEntries(records));
    const editor = await startIn(workspace);
    const plain = (name: string) => workspace.uri(`${folder}/${name}`).replace("%C3%BC", "\u00fc");
    const kit = plain(demo.kit);
    const uri = plain(demo.clean);
    expect(uri).not.toBe(workspace.uri(`${folder}/${demo.clean}`));
    editor.open(kit, workspace.read(`${folder}/${demo.kit}`).replace("1100 W", "1900 W"));
    editor.open(uri, workspace.read(`${folder}/${demo.clean}`));
    expect(rulesOf(await editor.diagnostics(uri))).toContain("protection-below-load");
  });
});

describe("many edits at once", () => {
  /** Fifty keystrokes in a record that has findings before, between and after them. */
  async function type(edits: number) {
    const workspace = plantedWorkspace();
    const editor = await startIn(workspace);
    const uri = workspace.uri(planted);
    editor.open(uri, workspace.read(planted));
    await editor.diagnostics(uri);
    const lengths = Array.from({ length: edits }, (_, index) => `${index + 3}.25 ft`);
    let now = "14.5 ft";
    for (const next of lengths) {
      editor.change(uri, [`length: ${now}`, `length: ${next}`], ["guage", "guag"], ["guag", "guage"]);
      now = next;
    }
    await editor.diagnostics(uri);
    await editor.quiet();
    return { editor, uri, publications: editor.published.filter((one) => one.uri === uri) };
  }

  it("the last publication is of the last version, and says what a fresh check says", async () => {
    const { editor, uri, publications } = await type(50);
    expect(publications.at(-1)!.version).toBe(51);
    const found = publications.at(-1)!.diagnostics.map(ofEditor);
    expect(found).toEqual(await checkedByCommandLine(editor.textOf(uri)));
  });

  it("versions never go back, and no list is empty in between", async () => {
    const { publications } = await type(50);
    const versions = publications.map(({ version }) => version!);
    expect(versions).toEqual([...versions].sort((a, b) => a - b));
    expect(publications.filter(({ diagnostics }) => diagnostics.length === 0)).toEqual([]);
  });

  it("work that a newer edit has made idle is dropped", async () => {
    const { publications } = await type(50);
    expect(publications.length).toBeLessThan(26);
  });
});

it("a file that is no record gets nothing", async () => {
  const workspace = new Workspace();
  const editor = await startIn(workspace);
  const others = ["values.yaml", "kit.yaml", "x.kit.yaml.txt", "x.kit.json", "x.Kit.Yaml"].map((name) =>
    workspace.uri(name),
  );
  for (const uri of others) {
    editor.open(uri, "documnet: [");
    editor.change(uri, ["documnet", "document"]);
  }
  const record = workspace.uri("x.kit.yaml");
  editor.open(record, "");
  await editor.diagnostics(record);
  await editor.quiet();
  expect(new Set(editor.published.map(({ uri }) => uri))).toEqual(new Set([record]));
});

it("closing clears, and opening brings all back", async () => {
  const workspace = plantedWorkspace();
  const editor = await Editor.start({
    folders: [workspace.uri("")],
    initializationOptions: { checkWorkspace: false },
  });
  const uri = workspace.uri(planted);
  editor.open(uri, workspace.read(planted));
  const before = await editor.diagnostics(uri);
  editor.close(uri);
  await editor.diagnosticsWhen(uri, ({ diagnostics }) => diagnostics.length === 0, "an empty list");
  await editor.quiet();
  expect(editor.lastOf(uri)!.diagnostics).toEqual([]);
  editor.open(uri, workspace.read(planted));
  expect(await editor.diagnosticsWhen(uri, ({ diagnostics }) => diagnostics.length > 0)).toEqual(before);
});
