import type { Span } from "./tree";

/** A text made fit for the parser. Every replacement keeps the length, so offsets hold. */
export interface PreparedText {
  readonly source: string;
  /** 1 when the text starts with a byte order mark, which `source` leaves out; else 0. */
  readonly skipped: number;
  /** The first marker line of each conflict block, without its line break. Offsets in `source`. */
  readonly conflicts: readonly Span[];
  /** Lines whose indentation has tabs. Offsets in `source`. */
  readonly tabs: readonly TabIndent[];
}

export interface TabIndent extends Span {
  readonly lineStart: number;
  /** False on a blank line or a comment, where the tabs do no harm. */
  readonly beforeContent: boolean;
  readonly written: string;
}

/** Replaces what the parser would stumble over: byte order mark, lone carriage returns, conflict markers, tabs. */
export function prepare(text: string): PreparedText {
  const skipped = text.startsWith("\uFEFF") ? 1 : 0;
  let source = skipped ? text.slice(1) : text;
  if (source.includes("\r")) source = source.replace(/\r(?!\n)/g, "\n");

  const conflicts: Span[] = [];
  if (hasConflictMarker(source)) source = blankConflicts(source, conflicts);

  const tabs: TabIndent[] = [];
  if (source.includes("\t")) source = blankTabs(source, tabs);

  return { source, skipped, conflicts, tabs };
}

/** Puts the tabs back that turned out to be content of a block scalar, as the parse without them has shown. */
export function restoreTabs(source: string, tabs: readonly TabIndent[]): string {
  const parts: string[] = [];
  let at = 0;
  for (const tab of tabs) {
    parts.push(source.slice(at, tab.start), tab.written);
    at = tab.end;
  }
  return parts.join("") + source.slice(at);
}

/** Tabs that stand at or right of the indentation that their block scalar set with spaces. */
export function tabsInBlocks(
  source: string,
  tabs: readonly TabIndent[],
  bodies: readonly Span[],
): readonly TabIndent[] {
  const content: TabIndent[] = [];
  let next = 0;
  for (const body of bodies) {
    while (next < tabs.length && tabs[next]!.start < body.start) next++;
    const first = next;
    while (next < tabs.length && tabs[next]!.start < body.end) next++;
    const inside = tabs.slice(first, next);
    if (inside.length === 0) continue;
    const indent = writtenIndent(source, body, inside);
    for (const tab of inside) if (indent > 0 && tab.start - tab.lineStart >= indent) content.push(tab);
  }
  return content;
}

/** Spaces before the first content of a block scalar, not counting from a tab on. */
function writtenIndent(source: string, body: Span, tabs: readonly TabIndent[]): number {
  let at = body.start;
  let lineStart = at;
  while (at < body.end && (source[at] === " " || source[at] === "\n" || source[at] === "\r")) {
    if (source[at] === "\n") lineStart = at + 1;
    at++;
  }
  const tab = tabs.find((candidate) => candidate.lineStart === lineStart);
  return (tab ? tab.start : at) - lineStart;
}

const marker = /^(?:<{7}|={7}|>{7}|\|{7})(?=[ \t\r]|$)/;

/** True when some line starts as a conflict marker does; the cheap test before the exact one. */
export function hasConflictMarker(text: string): boolean {
  for (const start of ["<<<<<<<", "=======", ">>>>>>>", "|||||||"]) {
    let at = text.indexOf(start);
    while (at !== -1) {
      if (at === 0 || text[at - 1] === "\n" || text[at - 1] === "\r" || text[at - 1] === "\uFEFF")
        return true;
      at = text.indexOf(start, at + 1);
    }
  }
  return false;
}

/**
 * Blanks the marker lines, and whole the common ancestor that some tools write between `|||||||` and
 * `=======`, so that both sides are read and nothing else.
 */
function blankConflicts(source: string, conflicts: Span[]): string {
  const lines = source.split("\n");
  let at = 0;
  let inBlock = false;
  let inAncestor = false;
  for (const [index, line] of lines.entries()) {
    const kind = marker.exec(line)?.[0][0];
    if (kind) {
      if (!inBlock) conflicts.push({ start: at, end: at + line.trimEnd().length });
      inBlock = kind !== ">" && (inBlock || kind === "<");
      inAncestor = inBlock && kind === "|";
    }
    if (kind || inAncestor) lines[index] = blank(line);
    at += line.length + 1;
  }
  return lines.join("\n");
}

function blank(line: string): string {
  return line.endsWith("\r") ? `${" ".repeat(line.length - 1)}\r` : " ".repeat(line.length);
}

function blankTabs(source: string, tabs: TabIndent[]): string {
  return source.replace(
    /(^|\n)( *)(\t[ \t]*)/g,
    (_all, lineBreak: string, spaces: string, run: string, at) => {
      const lineStart = at + lineBreak.length;
      const start = lineStart + spaces.length;
      const end = start + run.length;
      const next = source[end];
      const beforeContent = next !== undefined && next !== "\n" && next !== "\r" && next !== "#";
      tabs.push({ start, end, lineStart, beforeContent, written: run });
      return lineBreak + spaces + " ".repeat(run.length);
    },
  );
}
