import {
  type DocumentLink,
  ErrorCodes,
  type Location,
  ResponseError,
  SymbolKind,
  type TextDocumentEdit,
  type WorkspaceEdit,
  type WorkspaceSymbol,
} from "vscode-languageserver";
import { type Node, nodeAt } from "../../core/reading";
import type { Declaration } from "../../core/records/typing";
import type { Place } from "../../core/records/written";
import { declarationAt, renamingRefused, type Scope, scopeOf, usesOf } from "../../core/views/naming";
import { type OutlineSymbol, outlineOf } from "../../core/views/symbols";
import { converterOf } from "../convert";
import { type Opened, openedAt, type Room } from "../room";

/** Symbols that are shown of a whole workspace; a longer list is not read. */
const mostSymbols = 200;

type At = {
  readonly textDocument: { readonly uri: string };
  readonly position: { readonly line: number; readonly character: number };
};

/** Definition, references, rename, links from record to record, and things of the whole workspace. */
export function answerNavigation(room: Room): void {
  const { connection, documents, desk } = room;

  connection.onDefinition((at) => {
    const found = thingAt(at, room);
    if (found) return locationOf(found.thing.id.place, room) ?? null;
    return linkAt(at, room);
  });

  connection.onReferences((at) => {
    const found = thingAt(at, room);
    if (!found) return [];
    const own = found.thing.id.place.node;
    return usesOf(found.thing, scopesOf(room, found))
      .filter(({ node }) => at.context.includeDeclaration || node !== own)
      .map((place) => locationOf(place, room))
      .filter((location) => location !== undefined);
  });

  connection.onPrepareRename((at) => {
    const found = thingAt(at, room);
    if (!found) return null;
    const { node, opened } = found;
    return {
      range: opened.converter.range(opened.judgement.record.reading.spanOf(node)),
      placeholder: found.thing.id.value,
    };
  });

  connection.onRenameRequest(({ newName, ...at }) => {
    const found = thingAt(at, room);
    if (!found) return new ResponseError(ErrorCodes.InvalidRequest, "Nothing here has a name of its own.");
    const scopes = scopesOf(room, found);
    const refused = renamingRefused(found.thing, newName, scopes);
    if (refused !== undefined) return new ResponseError(ErrorCodes.InvalidRequest, refused);
    return renaming(usesOf(found.thing, scopes), newName, room);
  });

  connection.onDocumentLinks(({ textDocument }) => {
    const opened = openedAt(room, textDocument.uri);
    return opened ? linksOf(opened, room) : [];
  });

  connection.onWorkspaceSymbol(({ query }) => {
    const symbols: WorkspaceSymbol[] = [];
    for (const id of documents.records()) {
      const record = desk.shelf.load(id);
      if (!record) continue;
      for (const { name, nameSpan, section } of thingsIn(outlineOf(record.reading))) {
        if (!isSubsequence(query, name)) continue;
        const location = { uri: documents.uriOf(id), range: converterOf(record).range(nameSpan) };
        symbols.push({ name, containerName: section, kind: SymbolKind.Object, location });
        if (symbols.length >= mostSymbols) return symbols;
      }
    }
    return symbols;
  });
}

/** Everything in an outline that has a name of its own, with the section that it is in. */
function* thingsIn(
  symbols: readonly OutlineSymbol[],
  section = "",
): Iterable<OutlineSymbol & { section: string }> {
  for (const symbol of symbols) {
    if (symbol.kind === "thing") yield { ...symbol, section };
    yield* thingsIn(symbol.children, symbol.kind === "section" ? symbol.name : section);
  }
}

interface Found {
  readonly opened: Opened;
  readonly node: Node;
  readonly thing: Declaration;
}

function thingAt({ textDocument, position }: At, room: Room): Found | undefined {
  const opened = openedAt(room, textDocument.uri);
  if (!opened) return undefined;
  const { record } = opened.judgement;
  const offset = opened.converter.lines.offsetAt(position);
  const step = nodeAt(record.reading, offset).at(-1);
  const scope = scopeOf(opened.judgement);
  for (const node of [step?.node, step?.entry?.key]) {
    if (!node) continue;
    const { start, end } = record.reading.spanOf(node);
    const thing = start <= offset && offset <= end ? declarationAt(node, record, scope) : undefined;
    if (thing) return { opened, node, thing };
  }
  return undefined;
}

/** Every scope of the workspace in which the thing may be named. */
function scopesOf({ documents, desk }: Room, { thing, opened }: Found): Scope[] {
  const home = thing.id.place.file;
  const others = documents.records().filter((id) => id !== opened.id);
  return [opened.judgement, ...others.map((id) => desk.judge(id))]
    .filter((judgement) => judgement !== undefined)
    .filter(({ record, project }) => record.file === home || project?.files.some(({ file }) => file === home))
    .map(scopeOf);
}

function renaming(places: readonly Place[], newText: string, room: Room): WorkspaceEdit {
  const byFile = new Map<string, TextDocumentEdit["edits"][number][]>();
  for (const place of places) {
    const location = locationOf(place, room);
    if (location)
      byFile.set(place.file, [...(byFile.get(place.file) ?? []), { range: location.range, newText }]);
  }
  const { documents } = room;
  return {
    documentChanges: [...byFile].map(([id, edits]) => ({
      textDocument: { uri: documents.uriOf(id), version: documents.get(id)?.version ?? null },
      edits,
    })),
  };
}

function linksOf({ id, judgement, converter }: Opened, { documents }: Room): DocumentLink[] {
  const { install } = judgement.project ?? {};
  return [install?.airframe, install?.kit].flatMap((link) => {
    const target = link && "path" in link ? documents.resolve(id, link.path.value) : undefined;
    if (!link || !("path" in link) || target === undefined) return [];
    return [
      {
        range: converter.range(judgement.record.reading.spanOf(link.path.place.node)),
        target: documents.uriOf(target),
      },
    ];
  });
}

/** The record that a path names, for whoever asks for its definition. */
function linkAt({ textDocument, position }: At, room: Room): Location | null {
  const opened = openedAt(room, textDocument.uri);
  const link =
    opened &&
    linksOf(opened, room).find(
      ({ range }) =>
        range.start.line === position.line &&
        range.start.character <= position.character &&
        position.character <= range.end.character,
    );
  const start = { line: 0, character: 0 };
  return link?.target ? { uri: link.target, range: { start, end: start } } : null;
}

export function locationOf({ file, node }: Place, { documents, desk }: Room): Location | undefined {
  const record = desk.shelf.load(file);
  return (
    record && { uri: documents.uriOf(file), range: converterOf(record).range(record.reading.spanOf(node)) }
  );
}

/** Letters in their order, whatever stands between them, as editors search for symbols. */
function isSubsequence(query: string, name: string): boolean {
  let at = 0;
  const wanted = query.toLowerCase();
  for (const letter of name.toLowerCase()) if (letter === wanted[at]) at++;
  return at >= wanted.length;
}
