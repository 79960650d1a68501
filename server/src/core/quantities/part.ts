/** A part of a quantity's text: UTF-16 offsets, half-open. */
export interface Part {
  readonly start: number;
  readonly end: number;
}

/** What stands between two offsets, without the blanks at its ends. */
export function partOf(text: string, from: number, to = text.length): Part {
  const part = text.slice(from, to);
  const start = from + part.length - part.trimStart().length;
  return { start, end: Math.max(start, from + part.trimEnd().length) };
}
