import type { Span } from "./tree";

/** A text made fit for the parser. Every replacement keeps the length, so offsets hold. */
export interface PreparedText {
  readonly source: string;
  /** 1 when the text starts with a byte order mark, which `source` leaves out; else 0. */
  readonly skipped: number;
  /** The first marker line of each conflict block, without its line break. Offsets in `source`. */
  readonly conflicts: readonly Span[];
}

/**
 * Replaces what the parser would stumble over: byte order mark, lone carriage returns, conflict markers, and tabs on
 * lines that are blank, where nobody sees them. Other tabs that indent are laid out before (`tabs.ts`).
 */
export function prepare(text: string): PreparedText {
  const skipped = text.startsWith("\uFEFF") ? 1 : 0;
  let source = skipped ? text.slice(1) : text;
  if (source.includes("\r")) source = source.replace(/\r(?!\n)/g, "\n");

  const conflicts: Span[] = [];
  if (hasConflictMarker(source)) source = blankConflicts(source, conflicts);

  if (source.includes("\t")) source = source.replace(/^[ \t]*\t[ \t]*$/gm, blank);
  return { source, skipped, conflicts };
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
