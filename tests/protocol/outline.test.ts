import { beforeAll, expect, it } from "vitest";
import type { DocumentSymbol, Range } from "vscode-languageserver";
import { Editor } from "../support/editor";
import { demo, demoWorkspace } from "../support/workspace";

const workspace = demoWorkspace();
let editor: Editor;

beforeAll(async () => {
  editor = await Editor.start({ folders: [workspace.uri("")], isShared: true });
});

async function outline(name: string, text = workspace.read(name)): Promise<DocumentSymbol[]> {
  editor.open(workspace.uri(name), text);
  const symbols = await editor.symbols(workspace.uri(name));
  editor.close(workspace.uri(name));
  return symbols ?? [];
}

function holds(outer: Range, inner: Range): boolean {
  const isAtOrBefore = (a: Range["start"], b: Range["start"]) =>
    a.line < b.line || (a.line === b.line && a.character <= b.character);
  return isAtOrBefore(outer.start, inner.start) && isAtOrBefore(inner.end, outer.end);
}

function* all(symbols: readonly DocumentSymbol[]): Iterable<DocumentSymbol> {
  for (const symbol of symbols) {
    yield symbol;
    yield* all(symbol.children ?? []);
  }
}

it("lists the sections of a record in their order, and in them the things by their ids", async () => {
  const symbols = await outline(demo.clean);
  const keys = [...workspace.read(demo.clean).matchAll(/^([a-z-]+):/gm)].map(([, key]) => key);
  expect(keys).toContain("document");
  expect(symbols.map(({ name }) => name)).toEqual(keys);
  const wires = symbols.find(({ name }) => name === "wires")!;
  expect(wires.children!.map(({ name }) => name)).toEqual([
    "P101A10",
    "P102A8",
    "P103A16",
    "P101B10N",
    "P102B8N",
    "P103B16N",
  ]);
  expect(wires.children![1]!.detail).toContain("8 AWG");
});

it.each(Object.values(demo))(
  "%s: each name lies within its thing, each thing within its section",
  async (name) => {
    const lines = workspace.read(name).split("\n");
    const symbols = await outline(name);
    expect(symbols.length).toBeGreaterThan(2);
    for (const symbol of all(symbols)) {
      expect(holds(symbol.range, symbol.selectionRange)).toBe(true);
      for (const child of symbol.children ?? []) expect(holds(symbol.range, child.range)).toBe(true);
      const { start, end } = symbol.selectionRange;
      expect(start.line).toBe(end.line);
      expect(lines[start.line]!.slice(start.character, end.character)).toContain(symbol.name);
    }
  },
);

it("has something to show of a record that is half typed", async () => {
  const symbols = await outline(
    demo.clean,
    "document:\n  number: HM-\nwires:\n  - id: P1\n    gauge: 8 A\n  - {id: P2,",
  );
  expect([...all(symbols)].map(({ name }) => name)).toEqual(
    expect.arrayContaining(["document", "wires", "P1"]),
  );
  // An editor drops an outline in which any name is empty.
  for (const { name } of all(symbols)) expect(name).not.toBe("");
});

it.each(["", "\n", "# nothing", "just words", "[]", '"": 1'])("does not fail on %j", async (text) => {
  for (const { name } of await outline(demo.kit, text)) expect(name).not.toBe("");
});
