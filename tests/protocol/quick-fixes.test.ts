import { describe, expect, it } from "vitest";
import type { CodeAction, TextDocumentEdit, TextEdit } from "vscode-languageserver";
import { TextDocument } from "vscode-languageserver-textdocument";
import { circuitExample } from "../../server/src/core/rules/wires/circuit-example";
import { fullBundle } from "../remedies/support";
import { rulesOf } from "../support/comparison";
import { Editor, type EditorOptions } from "../support/editor";
import { planted, plantedWorkspace } from "../support/workspace";

const everything = { start: { line: 0, character: 0 }, end: { line: 90_000, character: 0 } };

/** The edits that a code action makes in one document. */
function editsOf({ edit }: CodeAction): TextDocumentEdit["textDocument"] & { readonly edits: TextEdit[] } {
  const changes = edit!.documentChanges as TextDocumentEdit[];
  expect(changes).toHaveLength(1);
  return { ...changes[0]!.textDocument, edits: changes[0]!.edits as TextEdit[] };
}

async function openText(convert: (text: string) => string = (text) => text, options: EditorOptions = {}) {
  const workspace = plantedWorkspace();
  const editor = await Editor.start({
    folders: [workspace.uri("")],
    initializationOptions: { checkWorkspace: false },
    ...options,
  });
  const uri = workspace.uri(planted);
  editor.open(uri, convert(workspace.read(planted)));
  return { workspace, editor, uri, before: await editor.diagnostics(uri) };
}

it("is offered on the finding, says what it does, and is tied to the finding and the version", async () => {
  const { editor, uri, before } = await openText();
  const drop = before.find(({ code }) => code === "wire-voltage-drop")!;
  const actions = (await editor.actions(uri, drop.range)) ?? [];
  const isAbout = ({ diagnostics }: CodeAction) =>
    diagnostics?.some(({ code }) => code === "wire-voltage-drop");
  const fix = actions.find(isAbout)!;
  expect(fix).toMatchObject({ kind: "quickfix", title: expect.stringMatching(/P102A8 8 AWG/) });
  expect(fix.diagnostics).toContainEqual(
    expect.objectContaining({ range: drop.range, message: drop.message }),
  );
  expect(editsOf(fix)).toMatchObject({ uri, version: 1 });
  const { start } = editor.rangeOf(uri, "12 AWG\n    length: 14.5 ft");
  expect(editsOf(fix).edits.map(({ range }) => range)).toEqual([
    { start, end: { ...start, character: start.character + "12 AWG".length } },
  ]);
});

it("is that of the text as it stands: a line put in above moves its edits", async () => {
  const { editor, uri, before } = await openText();
  const fixOf = async (diagnostics: typeof before) => {
    const drop = diagnostics.find(({ code }) => code === "wire-voltage-drop")!;
    const [fix] = (await editor.actions(uri, drop.range)) ?? [];
    return editsOf(fix!);
  };
  const { edits } = await fixOf(before);
  const top = { line: 0, character: 0 };
  editor.apply(uri, [{ range: { start: top, end: top }, newText: "# A remark above everything.\n" }]);
  const after = await fixOf(await editor.diagnostics(uri));
  const down = ({ line, character }: typeof top) => ({ line: line + 1, character });
  expect(after).toMatchObject({ version: editor.versionOf(uri) });
  expect(after.edits).toEqual(
    edits.map(({ range: { start, end }, newText }) => ({
      range: { start: down(start), end: down(end) },
      newText,
    })),
  );
});

it("is not offered elsewhere", async () => {
  const { editor, uri } = await openText();
  expect(await editor.actions(uri, editor.rangeOf(uri, "HM-0412\n"))).toEqual([]);
});

it("is told apart: none is preferred where a finding has several, and the same is offered once", async () => {
  const { editor, uri } = await openText(slips);
  const actions = (await editor.actions(uri, everything)) ?? [];
  const offers = actions.map(({ title, edit }) => JSON.stringify([title, edit]));
  expect(new Set(offers).size).toBe(offers.length);
  const remediesOf = (message: unknown) =>
    actions.filter(({ diagnostics }) => diagnostics!.some((one) => one.message === message));
  let preferred = 0;
  for (const { isPreferred, diagnostics } of actions) {
    const isOnly = diagnostics!.every(({ message }) => remediesOf(message).length === 1);
    expect(isPreferred ?? false).toBe(isOnly);
    if (isPreferred) preferred++;
  }
  expect(preferred).toBeGreaterThan(2);
  expect(preferred).toBeLessThan(actions.length);
});

describe.each([
  { form: "LF", convert: (text: string) => text },
  { form: "CRLF", convert: (text: string) => text.replaceAll("\n", "\r\n") },
  {
    form: "signs of two code units in front",
    convert: (text: string) => text.replaceAll("{ id: ", '{ "\u{1f6e9}": 1, id: '),
  },
])("each one that is offered, with $form", ({ convert }) => {
  it("removes its findings, and leaves every comment and every other line as it was", async () => {
    const { workspace, editor, uri } = await openText(convert);
    const text = editor.textOf(uri);
    const document = TextDocument.create(uri, "yaml", 1, text);
    const actions = (await editor.actions(uri, everything)) ?? [];
    expect(actions.length).toBeGreaterThan(5);
    for (const [index, action] of actions.entries()) {
      const { edits } = editsOf(action);
      const mended = TextDocument.applyEdits(document, edits);
      const touched = new Set(edits.flatMap(({ range }) => [range.start.line, range.end.line]));
      const kept = text.split("\n").filter((_, line) => !touched.has(line));
      const lines = mended.split("\n");
      for (const line of kept) expect(lines).toContain(line);
      const comments = (of: string) => of.match(/#.*/g);
      expect(comments(mended)).toEqual(comments(text));

      const draft = workspace.uri(`draft-${index}.install.yaml`);
      editor.open(draft, mended);
      const after = (await editor.diagnostics(draft)).map(({ message }) => message);
      for (const { message } of action.diagnostics!) expect(after).not.toContain(message);
    }
  });
});

it("applied one after the other, they leave nothing that one of them would mend", async () => {
  const { editor, uri } = await openText();
  for (let round = 0; ; round++) {
    const [action] = (await editor.actions(uri, everything)) ?? [];
    if (!action) break;
    expect(round).toBeLessThan(40);
    const { edits, version } = editsOf(action);
    expect(version).toBe(editor.versionOf(uri));
    editor.apply(uri, edits);
    await editor.diagnostics(uri);
  }
  const left = rulesOf(await editor.diagnostics(uri));
  for (const rule of ["wire-voltage-drop", "protection-above-wire", "protection-below-load"]) {
    expect(left).not.toContain(rule);
  }
});

/** Slips that are plain, one that is a choice, and a fault of the design. */
const slips = (text: string) =>
  text
    .replace("gauge: 10 AWG\n", "guage: 10 AWG # heavy\n")
    .replace("phase: cruise", "phase: cruize")
    .replace("altitude: 15000 ft", "altitude: 15000");

describe("all that are safe", () => {
  const kinds = ["source.fixAll.tailcone"];

  it("are made when the action is resolved, in edits as small as can be", async () => {
    const { editor, uri } = await openText(slips, { takesActionsLater: true });
    const [action, ...more] = (await editor.actions(uri, everything, kinds)) ?? [];
    expect(more).toEqual([]);
    expect(action).toMatchObject({ title: "Apply all safe remedies", kind: kinds[0] });
    expect(action).not.toHaveProperty("edit");
    const { edits, version } = editsOf(await editor.resolveAction(action!));
    expect(version).toBe(1);
    const before = editor.textOf(uri);
    editor.apply(uri, edits);
    const after = editor.textOf(uri);
    expect(after).toContain("gauge: 10 AWG # heavy\n");
    expect(after).toContain("phase: cruise\n");
    expect(after).toContain("wires: 2\n    loading: 60 %\n    ambient: 50 degC\n");
    expect(after, "a choice").toContain("altitude: 15000\n");
    expect(after, "the design").toContain("gauge: 12 AWG\n");
    expect(after.split("\n")).toHaveLength(before.split("\n").length);
    const rules = rulesOf(await editor.diagnostics(uri));
    for (const rule of ["key-unknown", "value-not-in-list", "bundle-count-too-small"]) {
      expect(rules).not.toContain(rule);
    }
    expect(rules).toContain("quantity-unit-missing");
  });

  it("are asked for anew when the record has changed since", async () => {
    const { editor, uri } = await openText(slips, { takesActionsLater: true });
    const [action] = (await editor.actions(uri, everything, ["source"])) ?? [];
    editor.change(uri, ["revision: B", "revision: C"]);
    await editor.diagnostics(uri);
    await expect(editor.resolveAction(action!)).rejects.toThrow(/has changed/);
  });

  it("come at once for a client that can't resolve, and only when it asks for them", async () => {
    const { editor, uri } = await openText(slips);
    const offered = (await editor.actions(uri, everything)) ?? [];
    expect(offered.map(({ kind }) => kind)).not.toContain(kinds[0]);
    const [action] = (await editor.actions(uri, everything, ["source.fixAll"])) ?? [];
    expect(editsOf(action!).edits.length).toBeGreaterThan(2);
    expect(await editor.actions(uri, everything, ["refactor"])).toEqual([]);
  });

  it("are not offered where nothing is safe to mend", async () => {
    const { editor, uri } = await openText(() => circuitExample({ gauge: "22 AWG" }), {
      takesActionsLater: true,
    });
    expect(await editor.actions(uri, everything, kinds)).toEqual([]);
  });
});

it("an editor that shows edits first is told what to show, and makes them whole otherwise", async () => {
  const { editor, uri } = await openText(() => fullBundle(), { takesActionsLater: true });
  const actions = (await editor.actions(uri, everything, ["quickfix"])) ?? [];
  const places: number[] = [];
  for (const action of actions) {
    const { edits } = editsOf(action);
    const [note] = Object.values(action.edit!.changeAnnotations!);
    expect(note).toMatchObject({ label: action.title, needsConfirmation: false });
    expect(note!.description).toMatch(/^Tried: this finding goes/);
    places.push(edits.length);
  }
  expect(Math.min(...places)).toBe(1);
  expect(Math.max(...places)).toBeGreaterThan(1);
});
