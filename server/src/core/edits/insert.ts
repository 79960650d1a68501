/**
 * Where an added key or entry goes in the text, and how it is laid out there: as what stands beside it. Only
 * layouts are looked at here; `edit.ts` reads the result and sees whether it says what it should.
 */
import type { Entry, ListNode, MapNode, Node, Reading } from "../reading/tree";
import { type Content, entryLines, indented, keyLines, onOneLine, pair } from "./content";
import { columnOf, insertion, lineBreakOf, lineEnd, lineStart, startsLine, type TextEdit } from "./text-edit";

/** Adds a key at the end of a map, or a value where a key has none. */
export function keyEdits(
  reading: Reading,
  map: MapNode,
  key: string,
  value: Content,
): readonly TextEdit[] | undefined {
  const entry = map.entries.find((one) => one.key.text === key);
  if (entry) return isEmpty(entry.value) ? valueEdits(reading, map, entry, value) : undefined;
  if (map === reading.root) return [sectionEdit(reading, key, value)];
  if (isInBrackets(reading, map)) return bracketEdits(reading, map, [pair(key, value)]);
  const last = map.entries.at(-1);
  if (!last) return undefined;
  const margin = columnOf(reading.text, reading.spanOf(map).start);
  const lines = keyLines(key, value, margin, dashIndent(reading));
  return [linesAfter(reading, endOf(reading, last), indented(lines, margin))];
}

/** Adds entries at the end of the list under a key, which may have no value yet, or not be there. */
export function listEdits(
  reading: Reading,
  map: MapNode,
  key: string,
  entries: readonly Content[],
): readonly TextEdit[] | undefined {
  const list = map.entries.find((one) => one.key.text === key)?.value;
  if (!list || isEmpty(list)) return keyEdits(reading, map, key, entries);
  if (list.kind !== "list" || list.aliasOf) return undefined;
  if (isInBrackets(reading, list)) return bracketEdits(reading, list, entries.map(onOneLine));
  const last = list.entries.at(-1);
  if (!last) return undefined;
  const margin = columnOf(reading.text, reading.spanOf(list).start);
  const beside = list.entries.findLast((one) => one.kind === "map" && !one.aliasOf);
  const form = beside && !isInBrackets(reading, beside) ? "long" : "short";
  const gap = areApart(reading, list) ? [""] : [];
  const lines = entries.flatMap((entry) => [...gap, ...entryLines(entry, margin, 0, form)]);
  return [linesAfter(reading, endOf(reading, last), indented(lines, margin))];
}

/** A section goes to the end of the record, with a blank line before it where the others have one. */
function sectionEdit(reading: Reading, key: string, value: Content): TextEdit {
  const { text, root } = reading;
  const [first] = root.entries;
  const margin = first ? columnOf(text, reading.spanOf(first.key).start) : 0;
  const lines = indented(keyLines(key, value, margin, dashIndent(reading)), margin);
  const end = text.length - /[ \t\r\n]*$/.exec(text)![0].length;
  if (end === 0 || text.slice(0, end) === "\uFEFF") {
    return insertion(end, joined(reading, lines).replace(/^\r?\n/, "") + lineBreakOf(text));
  }
  const last = root.entries.at(-1);
  const isApart = root.entries.length > 1 && last && hasBlankBefore(text, reading.spanOf(last.key).start);
  return insertion(end, joined(reading, isApart ? ["", ...lines] : lines));
}

/** Gives a key its value: behind it, or below it where it takes several lines. */
function valueEdits(reading: Reading, map: MapNode, { key, value }: Entry, content: Content): TextEdit[] {
  const { text } = reading;
  const at = reading.spanOf(value).start;
  const keySpan = reading.spanOf(key);
  const margin = columnOf(text, keySpan.start);
  const [first, ...rest] = keyLines(key.text, content, margin, dashIndent(reading));
  if (rest.length > 0 && !isInBrackets(reading, map)) {
    return [linesAfter(reading, at, indented(rest, margin))];
  }
  const own = isInBrackets(reading, map) ? onOneLine(content) : first!.slice(first!.indexOf(": ") + 2);
  const colon = text.slice(keySpan.end, at).includes(":") ? "" : ":";
  const before = colon || text[at - 1] !== " " ? `${colon} ` : "";
  const next = text[at] ?? "\n";
  const after = /[^\s,}\]]/.test(next) || (/[}\]]/.test(next) && text[at - 1] === " ") ? " " : "";
  return [insertion(at, before + own + after)];
}

/** Adds pieces at the end of what stands in brackets: behind the last one, or each on its line as that is. */
function bracketEdits(reading: Reading, node: ListNode | MapNode, pieces: readonly string[]): TextEdit[] {
  const { text } = reading;
  const { start, end } = reading.spanOf(node);
  const last = node.entries.at(-1);
  if (!last) {
    const inside = pieces.join(", ");
    if (end - start > 2) return [insertion(start + 1, ` ${inside}`)];
    return [insertion(start + 1, node.kind === "map" ? ` ${inside} ` : inside)];
  }
  const lastStart = reading.spanOf("key" in last ? last.key : last).start;
  const lastEnd = endOf(reading, last);
  const comma = /^[ \t]*,/.test(text.slice(lastEnd, end));
  const hasOwnLine =
    startsLine(text, lastStart) &&
    lineStart(text, lastStart) > start &&
    /^[ \t]*,?[ \t]*(?:#.*)?$/.test(text.slice(lastEnd, lineEnd(text, lastEnd)));
  if (!hasOwnLine) return [insertion(lastEnd, pieces.map((piece) => `, ${piece}`).join(""))];
  const margin = columnOf(text, lastStart);
  const lines = pieces.map((piece, index) => piece + (comma || index < pieces.length - 1 ? "," : ""));
  return [...(comma ? [] : [insertion(lastEnd, ",")]), linesAfter(reading, lastEnd, indented(lines, margin))];
}

/** Lines below the one of an offset. */
function linesAfter(reading: Reading, at: number, lines: readonly string[]): TextEdit {
  return insertion(lineEnd(reading.text, at), joined(reading, lines));
}

/** Each line after a line break, a blank one without spaces. */
function joined({ text }: Reading, lines: readonly string[]): string {
  return lines.map((line) => lineBreakOf(text) + line.trimEnd()).join("");
}

/** How far the dashes of the record's lists stand to the right of their keys. */
function dashIndent(reading: Reading): number {
  const found = reading.root.entries.find(
    ({ value }) => value.kind === "list" && !value.aliasOf && !isInBrackets(reading, value),
  );
  if (!found) return 2;
  const column = (node: Node) => columnOf(reading.text, reading.spanOf(node).start);
  return Math.max(0, column(found.value) - column(found.key));
}

/** Whether each entry of a list has a blank line before it. */
function areApart(reading: Reading, { entries }: ListNode): boolean {
  return (
    entries.length > 1 &&
    entries.slice(1).every((entry) => hasBlankBefore(reading.text, reading.spanOf(entry).start))
  );
}

/** Whether a blank line stands before the line of an offset and the comments above it. */
function hasBlankBefore(text: string, at: number): boolean {
  return /\n[ \t]*\r?\n(?:[ \t]*#.*\n)*$/.test(text.slice(0, lineStart(text, at)));
}

/** Whether a list or a map is written in brackets. */
export function isInBrackets(reading: Reading, node: Node): boolean {
  return /[[{]/.test(reading.text[reading.spanOf(node).start] ?? "");
}

export function endOf(reading: Reading, element: Entry | Node): number {
  if (!("key" in element)) return reading.spanOf(element).end;
  return Math.max(reading.spanOf(element.key).end, reading.spanOf(element.value).end);
}

export function isEmpty(node: Node): boolean {
  return node.kind === "scalar" && node.style === "empty";
}
