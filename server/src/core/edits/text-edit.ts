import type { Span } from "../reading/tree";

/** A stretch of a record's text, absolute, and what stands there afterwards. */
export interface TextEdit extends Span {
  readonly newText: string;
}

/** The text after edits that stand in its order. */
export function applyEdits(text: string, edits: readonly TextEdit[]): string {
  let done = 0;
  const parts: string[] = [];
  for (const { start, end, newText } of edits) {
    parts.push(text.slice(done, start), newText);
    done = end;
  }
  return parts.join("") + text.slice(done);
}

export function insertion(at: number, newText: string): TextEdit {
  return { start: at, end: at, newText };
}

/** The line break that a text uses; that of its first line where they differ. */
export function lineBreakOf(text: string): "\n" | "\r\n" {
  const first = text.indexOf("\n");
  return first > 0 && text[first - 1] === "\r" ? "\r\n" : "\n";
}

/** Where the line of an offset starts, a byte order mark left out. */
export function lineStart(text: string, at: number): number {
  const start = text.lastIndexOf("\n", at - 1) + 1;
  return start === 0 && text.startsWith("\uFEFF") ? 1 : start;
}

/** Where the line of an offset ends, in front of its line break. */
export function lineEnd(text: string, at: number): number {
  const feed = text.indexOf("\n", at);
  if (feed === -1) return text.length;
  return feed > at && text[feed - 1] === "\r" ? feed - 1 : feed;
}

/** How many characters stand before an offset in its line. */
export function columnOf(text: string, at: number): number {
  return at - lineStart(text, at);
}

/** Whether nothing but spaces stands before an offset in its line. */
export function startsLine(text: string, at: number): boolean {
  return /^ *$/.test(text.slice(lineStart(text, at), at));
}
