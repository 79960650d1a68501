import { nodeAt, type Reading, type Span } from "../../reading";

/** The word around a cursor, as far as its own line tells. */
export interface Token extends Span {
  /** What is written of it before the cursor. */
  readonly typed: string;
  /** All that is written of it. */
  readonly written: string;
  /** It stands after a key and its colon. */
  readonly isValue: boolean;
  /** A value right after its colon: a space has to come first. */
  readonly needsSpace: boolean;
  /** It is a key that has its colon already. */
  readonly hasColon: boolean;
  readonly isAfterDash: boolean;
  readonly isFlow: boolean;
  /** Columns before the first word of the line. */
  readonly indent: number;
}

/** Undefined in a comment and inside a quoted text. */
export function tokenAt(reading: Reading, offset: number): Token | undefined {
  const { text } = reading;
  const lineStart = Math.max(text.lastIndexOf("\n", offset - 1), text.lastIndexOf("\r", offset - 1)) + 1;
  const nextBreak = /[\r\n]/.exec(text.slice(offset))?.index;
  const lineEnd = nextBreak === undefined ? text.length : offset + nextBreak;
  const before = text.slice(lineStart, offset);
  const scan = scanLine(before, isInFlow(reading, lineStart));
  if (!scan) return undefined;
  const start = lineStart + scan.start;
  const after = text.slice(offset, lineEnd);
  const rest = scan.depth > 0 ? /^[^,}\]#:]*/ : /^(?:[^\s#:]|[ \t]+(?![\s#])|:(?=\S)|#)*/;
  const more =
    scan.start < before.length || !scan.isValue
      ? (rest.exec(after)?.[0].trimEnd() ?? "")
      : valueAfter(after, scan.depth > 0);
  const end = offset + more.length;
  return {
    start,
    end,
    typed: text.slice(start, offset),
    written: text.slice(start, end),
    isValue: scan.isValue,
    needsSpace: scan.isValue && text[start - 1] === ":",
    hasColon: !scan.isValue && /^[ \t]*:(?:\s|$)/.test(text.slice(end, lineEnd)),
    isAfterDash: scan.isAfterDash,
    isFlow: scan.depth > 0,
    indent: before.length - before.trimStart().length,
  };
}

/** A value that the cursor stands right in front of. */
function valueAfter(after: string, isFlow: boolean): string {
  const value = isFlow ? /^[^\s,}\]#][^,}\]#]*/ : /^[^\s#](?:[^\s#]|[ \t]+(?![\s#])|#)*/;
  return value.exec(after)?.[0].trimEnd() ?? "";
}

function isInFlow(reading: Reading, offset: number): boolean {
  return nodeAt(reading, offset).some(({ node }) => {
    if (node.kind === "scalar" || node === reading.root) return false;
    const { start, end } = reading.spanOf(node);
    return start < offset && offset < end && /[[{]/.test(reading.text[start] ?? "");
  });
}

interface Scan {
  readonly start: number;
  readonly isValue: boolean;
  readonly isAfterDash: boolean;
  readonly depth: number;
}

/** Walks a line up to the cursor, from one word to the next. */
function scanLine(line: string, startsInFlow: boolean): Scan | undefined {
  let at = 0;
  let depth = startsInFlow ? 1 : 0;
  let isValue = false;
  let isAfterDash = false;
  let start = 0;
  const next = (from: number, value: boolean) => {
    isValue = value;
    at = from;
    while (line[at] === " " || line[at] === "\t") at++;
    start = at;
  };
  next(0, false);
  while (at < line.length) {
    const sign = line[at]!;
    const isFirst = at === start;
    if (sign === "#" && (at === 0 || /\s/.test(line[at - 1]!))) return undefined;
    if (isFirst && (sign === '"' || sign === "'")) {
      const close = line.indexOf(sign, at + 1);
      if (close === -1) return undefined;
      at = close + 1;
    } else if (isFirst && depth === 0 && !isValue && sign === "-" && /\s/.test(line[at + 1] ?? "x")) {
      isAfterDash = true;
      next(at + 1, false);
    } else if (isFirst && (sign === "{" || sign === "[")) {
      depth++;
      isAfterDash = false;
      next(at + 1, false);
    } else if (depth > 0 && sign === ",") {
      next(at + 1, false);
    } else if (depth > 0 && (sign === "}" || sign === "]")) {
      depth--;
      next(at + 1, true);
    } else if (sign === ":" && (at + 1 === line.length || /\s/.test(line[at + 1]!))) {
      next(at + 1, true);
    } else {
      at++;
    }
  }
  return { start, isValue, isAfterDash, depth };
}
