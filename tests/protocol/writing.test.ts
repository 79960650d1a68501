/** Writing a record in an editor that knows nothing but the protocol: completion, hints, names, structure, fleet. */

import { beforeEach, describe, expect, it } from "vitest";
import type {
  CallHierarchyItem,
  CompletionItem,
  CompletionList,
  DocumentLink,
  FoldingRange,
  InlayHint,
  Location,
  SelectionRange,
  WorkspaceEdit,
  WorkspaceSymbol,
} from "vscode-languageserver";
import { Editor } from "../support/editor";
import { demo, demoWorkspace, type Workspace } from "../support/workspace";

let workspace: Workspace;
let editor: Editor;
let install: string;
let kit: string;

beforeEach(async () => {
  workspace = demoWorkspace();
  install = workspace.uri(demo.clean);
  kit = workspace.uri(demo.kit);
  await start({ checkWorkspace: false });
});

async function start(initializationOptions: object): Promise<void> {
  editor = await Editor.start({ folders: [workspace.uri("")], initializationOptions });
  editor.open(install, workspace.read(demo.clean));
}

const at = (uri: string, text: string) => ({ textDocument: { uri }, position: editor.placeOf(uri, text) });

/** Text of the document in a range that lies on one line. */
function textIn(uri: string, { start, end }: Location["range"]): string {
  const text = workspace.read(uri.split("/").at(-1)!);
  return text.split("\n")[start.line]!.slice(start.character, end.character);
}

describe("completion", () => {
  it("gives the standard gauges with their consequences, the thinnest that passes first", async () => {
    const { end } = editor.rangeOf(install, "8 AWG\n    length: 14.5 ft");
    const position = { line: end.line - 1, character: 15 };
    const list = await editor.request<CompletionList>("textDocument/completion", {
      textDocument: { uri: install },
      position,
    });
    const ordered = list.items.toSorted((a, b) => (a.sortText! < b.sortText! ? -1 : 1));
    expect(ordered[0]).toMatchObject({ label: "8 AWG", preselect: true });
    expect(ordered[0]!.detail).toMatch(/path drop 0\.\d+ V of 1 V/);
    // The list is narrow: beside the label stands the first of it alone.
    expect(ordered[0]!.labelDetails!.description).toMatch(/^path drop 0\.\d+ V of 1 V \(\d+ %\)$/);
    const labels = ordered.map(({ label }) => label);
    expect(labels.indexOf("6 AWG")).toBeLessThan(labels.indexOf("14 AWG")); // what fails comes last
  });

  it("tells what a value leads to that was not tried in time, also once the user types on", async () => {
    const gauge = "8 AWG\n    length: 14.5 ft";
    const start = editor.textOf(install).indexOf(gauge);
    const { end } = editor.rangeOf(install, gauge);
    await editor.request("textDocument/completion", {
      textDocument: { uri: install },
      position: { line: end.line - 1, character: 15 },
    });
    editor.change(install, [gauge, `1${gauge}`]);
    const untried: CompletionItem = {
      label: "16 AWG",
      data: { uri: install, version: 1, span: { start, end: start + "8 AWG".length }, text: "16 AWG" },
    };
    const resolved = await editor.request<CompletionItem>("completionItem/resolve", untried);
    expect(resolved.detail).toMatch(/^fails: /);
    expect(resolved.documentation).toBeDefined();
  });

  it("puts plain text where the client takes no snippets", async () => {
    editor.change(install, ["    strands: 37\n", "    str\n"]);
    const position = editor.rangeOf(install, "    str\n").end;
    const list = await editor.request<CompletionList>("textDocument/completion", {
      textDocument: { uri: install },
      position: { line: position.line - 1, character: 7 },
    });
    const strands = list.items.find(({ label }) => label === "strands");
    expect(strands).toMatchObject({ textEdit: { newText: "strands: " }, insertTextFormat: 1 });
  });
});

it("hints: one a line, as the settings say", async () => {
  const range = { start: { line: 0, character: 0 }, end: { line: 500, character: 0 } };
  const hints = () =>
    editor.request<InlayHint[]>("textDocument/inlayHint", { textDocument: { uri: install }, range });
  const all = await hints();
  expect(new Set(all.map(({ position }) => position.line)).size).toBe(all.length);
  expect(
    all.find(({ position }) => position.line === editor.placeOf(install, "id: P102A8").line)?.label,
  ).toMatch(/^40\.\d A, drop 0\.\d+ V$/);
  editor.configure({ hints: "totals" });
  const totals = await hints();
  expect(totals.length).toBeLessThan(all.length);
  expect(totals.map(({ label }) => label)).toContainEqual(expect.stringMatching(/^empty \d+.* lb at /));
  editor.configure({ hints: "off" });
  expect(await hints()).toEqual([]);
});

describe("names", () => {
  it("definition and references lead from record to record", async () => {
    const definition = await editor.request<Location>(
      "textDocument/definition",
      at(install, "CHILLER\n    gauge: 8 AWG"),
    );
    expect(definition.uri).toBe(kit);
    expect(textIn(kit, definition.range)).toBe("CHILLER");
    const references = await editor.request<Location[]>("textDocument/references", {
      ...at(install, "CHILLER\n    gauge: 8 AWG"),
      context: { includeDeclaration: false },
    });
    expect(new Set(references.map(({ uri }) => uri))).toContain(workspace.uri(demo.faulty));
    expect(references.every(({ uri, range }) => textIn(uri, range) === "CHILLER")).toBe(true);
  });

  it("a rename changes every record that names the thing, and refuses a name that is taken", async () => {
    const place = at(install, "CHILLER\n    gauge: 8 AWG");
    const prepared = await editor.request("textDocument/prepareRename", place);
    expect(prepared).toMatchObject({ placeholder: "CHILLER" });
    const edit = await editor.request<WorkspaceEdit>("textDocument/rename", { ...place, newName: "COOLER" });
    const changes = (edit.documentChanges ?? []) as {
      textDocument: { uri: string; version: number | null };
    }[];
    expect(changes.find(({ textDocument }) => textDocument.uri === install)?.textDocument.version).toBe(1);
    expect(changes.find(({ textDocument }) => textDocument.uri === kit)?.textDocument.version).toBeNull();
    await expect(editor.request("textDocument/rename", { ...place, newName: "RACK" })).rejects.toThrow(
      "already",
    );
    await expect(editor.request("textDocument/rename", { ...place, newName: "no name" })).rejects.toThrow(
      "no name",
    );
    const noName = at(install, "right-hand side.");
    expect(await editor.request("textDocument/prepareRename", noName)).toBeNull();
  });

  it("links, symbols of the workspace", async () => {
    const links = await editor.request<DocumentLink[]>("textDocument/documentLink", {
      textDocument: { uri: install },
    });
    expect(links.map(({ target }) => target)).toEqual([workspace.uri(demo.airframe), kit]);
    const symbols = await editor.request<WorkspaceSymbol[]>("workspace/symbol", { query: "gndaft" });
    expect(symbols.map(({ name }) => name)).toContain("GND-AFT");
  });
});

it("folds sections and entries, and grows a selection from value to section", async () => {
  const folds = await editor.request<FoldingRange[]>("textDocument/foldingRange", {
    textDocument: { uri: install },
  });
  expect(folds.map(({ startLine }) => startLine)).toContain(editor.rangeOf(install, "\nwires:").end.line);
  const [range] = await editor.request<SelectionRange[]>("textDocument/selectionRange", {
    textDocument: { uri: install },
    positions: [editor.placeOf(install, "11.5 ft")],
  });
  const texts: string[] = [];
  for (let one = range; one; one = one.parent)
    if (one.range.start.line === one.range.end.line) texts.push(textIn(install, one.range));
  expect(texts).toEqual(["11.5 ft", "length: 11.5 ft"]);
});

it("what uses a value, and what feeds it", async () => {
  const items = await editor.request<CallHierarchyItem[]>(
    "textDocument/prepareCallHierarchy",
    at(install, "11.5 ft"),
  );
  const resistance = items.find(({ name }) => name.startsWith("wire resistance"));
  expect(resistance).toBeDefined();
  const incoming = await editor.request<{ from: CallHierarchyItem }[]>("callHierarchy/incomingCalls", {
    item: resistance,
  });
  expect(incoming.map(({ from }) => from.name)).toContainEqual(expect.stringContaining("wire drop"));
  const outgoing = await editor.request<{ to: CallHierarchyItem }[]>("callHierarchy/outgoingCalls", {
    item: resistance,
  });
  expect(outgoing.map(({ to }) => to.name)).toContainEqual(expect.stringContaining("11.5 ft"));
});

describe("records that are not open", () => {
  const faulty = () => workspace.uri(demo.faulty);

  beforeEach(async () => {
    await editor.kill();
    await start({ checkWorkspace: true });
  });

  it("are checked too, and again when the kit that they name changes", async () => {
    await editor.diagnosticsWhen(faulty(), ({ diagnostics }) => diagnostics.length > 0);
    editor.close(install);
    editor.open(kit, workspace.read(demo.kit));
    editor.change(kit, ["power: 1100 W", "power: 3100 W"]);
    const broken = await editor.diagnosticsWhen(install, ({ diagnostics }) => diagnostics.length > 0);
    expect(broken.map(({ code }) => code)).toContain("protection-below-load");
    editor.change(kit, ["power: 3100 W", "power: 1100 W"]);
    await editor.diagnosticsWhen(install, ({ diagnostics }) => diagnostics.length === 0);
  });

  it("are listed side by side", async () => {
    await editor.diagnosticsWhen(faulty(), ({ diagnostics }) => diagnostics.length > 0);
    await editor.quiet();
    const rows =
      await editor.request<{ uri: string; counts: { error: number }; electrical: { share: string } }[]>(
        "tailcone/fleet",
      );
    const sound = rows.find(({ uri }) => uri === install);
    expect(sound).toMatchObject({ kit: "QSR-60", airframe: "B9-0417", counts: { error: 0 } });
    expect(sound!.electrical.share).toMatch(/^\d+ %$/);
    expect(rows.find(({ uri }) => uri === faulty())!.counts.error).toBeGreaterThan(0);
  });
});

it("a rule has a page, offline, and its name in a diagnostic leads there where the client can follow", async () => {
  const page = await editor.request<string>("tailcone/rule", { id: "wire-voltage-drop" });
  expect(page).toMatch(/^# Too much voltage is lost/);
  expect(page).toContain("AC 43.13-1B");
  expect(await editor.request("tailcone/rule", { id: "no-such-rule" })).toBeNull();
  editor.change(install, ["8 AWG\n    length: 14.5 ft", "12 AWG\n    length: 14.5 ft"]);
  expect((await editor.diagnostics(install)).some(({ codeDescription }) => codeDescription)).toBe(false);
  const other = await Editor.start({ folders: [workspace.uri("")], initializationOptions: { rules: true } });
  other.open(install, editor.textOf(install));
  const drop = (await other.diagnostics(install)).find(({ code }) => code === "wire-voltage-drop");
  expect(drop?.codeDescription?.href).toBe("tailcone-rule:/wire-voltage-drop.md");
  const [fix] = (await other.actions(install, drop!.range)) ?? [];
  expect(
    fix?.diagnostics?.map(
      ({ codeDescription, code }) => codeDescription?.href === `tailcone-rule:/${code}.md`,
    ),
  ).toContain(true);
});

it("a new record is written by the server's command", async () => {
  const edits: WorkspaceEdit[] = [];
  editor.onApplyEdit((edit) => edits.push(edit));
  const file = workspace.uri("new.install.yaml");
  const command = {
    command: "tailcone.server.newInstall",
    arguments: [{ kit, airframe: workspace.uri(demo.airframe), file }],
  };
  await editor.request("workspace/executeCommand", command);
  expect(JSON.stringify(edits[0])).toContain("kit: survey-rack.kit.yaml");
  await expect(
    editor.request("workspace/executeCommand", {
      ...command,
      arguments: [{ kit: install, airframe: kit, file }],
    }),
  ).rejects.toThrow("is no kit record");
});

it("records to begin from are told by their papers, airframes by whether the kit may go into them", async () => {
  const kits = await editor.request("tailcone/records", { kind: "kit" });
  expect(kits).toEqual([{ uri: kit, title: "QSR-60, Survey sensor rack with its own cooling" }]);
  const airframes = await editor.request("tailcone/records", { kind: "airframe", kit });
  expect(airframes).toEqual([
    {
      uri: workspace.uri(demo.airframe),
      title: "Type 9, B9-0417",
      standing: "lacks-something",
      why: expect.stringContaining("requires modification MOD-7"),
    },
  ]);
  expect(await editor.request("tailcone/records", {})).toEqual([]);
});

it("a new airframe record is written by the server's command, beside no other of its name", async () => {
  const edits: WorkspaceEdit[] = [];
  editor.onApplyEdit((edit) => edits.push(edit));
  const begin = (file: string) =>
    editor.request("workspace/executeCommand", {
      command: "tailcone.server.newAirframe",
      arguments: [{ file: workspace.uri(file) }],
    });
  await begin("new.airframe.yaml");
  expect(JSON.stringify(edits)).toContain("certification-basis:  # CAR 3 or");
  await expect(begin(demo.airframe)).rejects.toThrow("There is a record of that name already");
  await expect(begin("new.kit.yaml")).rejects.toThrow("must end in .airframe.yaml");
});
