import { describe, expect, it } from "vitest";
import type { CodeAction, TextDocumentEdit, TextEdit } from "vscode-languageserver";
import { TextDocument } from "vscode-languageserver-textdocument";
import { rulesOf } from "../support/comparison";
import { Editor } from "../support/editor";
import { planted, plantedWorkspace } from "../support/workspace";

const everything = { start: { line: 0, character: 0 }, end: { line: 90_000, character: 0 } };

/** The one edit of one document that a quick fix is. */
function editOf({ edit }: CodeAction): TextEdit & TextDocumentEdit["textDocument"] {
  const changes = edit!.documentChanges as TextDocumentEdit[];
  expect(changes).toHaveLength(1);
  expect(changes[0]!.edits).toHaveLength(1);
  return { ...changes[0]!.textDocument, ...(changes[0]!.edits[0] as TextEdit) };
}

async function openDemo(convert: (text: string) => string = (text) => text) {
  const workspace = plantedWorkspace();
  const editor = await Editor.start({ folders: [workspace.uri("")] });
  const uri = workspace.uri(planted);
  editor.open(uri, convert(workspace.read(planted)));
  return { workspace, editor, uri, before: await editor.diagnostics(uri) };
}

it("is offered on the finding, says what it does, and is tied to the finding and the version", async () => {
  const { editor, uri, before } = await openDemo();
  const drop = before.find(({ code }) => code === "wire-voltage-drop")!;
  const actions = (await editor.actions(uri, drop.range)) ?? [];
  const fix = actions.find(({ diagnostics }) => diagnostics?.[0]?.code === "wire-voltage-drop")!;
  expect(fix).toMatchObject({ kind: "quickfix", title: expect.stringMatching(/P102A8.* AWG/) });
  expect(fix.diagnostics![0]).toMatchObject({ range: drop.range, message: drop.message });
  expect(editOf(fix)).toMatchObject({ uri, version: 1 });
  const { start } = editor.rangeOf(uri, "12 AWG\n    length: 14.5 ft");
  expect(editOf(fix).range).toEqual({
    start,
    end: { ...start, character: start.character + "12 AWG".length },
  });
});

it("is not offered elsewhere", async () => {
  const { editor, uri } = await openDemo();
  expect(await editor.actions(uri, editor.rangeOf(uri, "HM-0412\n"))).toEqual([]);
});

describe.each([
  { form: "LF", convert: (text: string) => text },
  { form: "CRLF", convert: (text: string) => text.replaceAll("\n", "\r\n") },
  {
    form: "signs of two code units in front",
    convert: (text: string) => text.replaceAll("{ id: ", '{ "\u{1f6e9}": 1, id: '),
  },
])("each one that is offered, with $form", ({ convert }) => {
  it("removes its finding, brings no other, and leaves every other character as it was", async () => {
    const { workspace, editor, uri, before } = await openDemo(convert);
    const text = editor.textOf(uri);
    const document = TextDocument.create(uri, "yaml", 1, text);
    const actions = (await editor.actions(uri, everything)) ?? [];
    expect(actions.length).toBeGreaterThan(2);
    for (const [index, action] of actions.entries()) {
      const { range, newText } = editOf(action);
      const start = document.offsetAt(range.start);
      const end = document.offsetAt(range.end);
      // What is replaced is one value and nothing around it.
      expect(text.slice(start, end)).toMatch(/^[^\s,{}#][^\n\r,{}#]*[^\s,{}#]$|^[^\s,{}#]$/);
      expect(text.slice(start - 2, start)).toBe(": ");
      const mended = text.slice(0, start) + newText + text.slice(end);

      const draft = workspace.uri(`draft-${index}.install.yaml`);
      editor.open(draft, mended);
      const after = await editor.diagnostics(draft);
      const [finding] = action.diagnostics!;
      expect(after.map(({ message }) => message)).not.toContain(finding!.message);
      const left = rulesOf(before);
      left.splice(left.indexOf(String(finding!.code)), 1);
      for (const rule of rulesOf(after)) {
        expect(left).toContain(rule);
        left.splice(left.indexOf(rule), 1);
      }
    }
  });
});

it("applied one after the other, they leave nothing that one of them would mend", async () => {
  const { editor, uri } = await openDemo();
  for (let round = 0; ; round++) {
    const [action] = (await editor.actions(uri, everything)) ?? [];
    if (!action) break;
    expect(round).toBeLessThan(20);
    const edit = editOf(action);
    expect(edit.version).toBe(editor.versionOf(uri));
    editor.apply(uri, [edit]);
    await editor.diagnostics(uri);
  }
  const left = rulesOf(await editor.diagnostics(uri));
  for (const rule of ["wire-voltage-drop", "protection-above-wire", "protection-below-load"]) {
    expect(left).not.toContain(rule);
  }
});
