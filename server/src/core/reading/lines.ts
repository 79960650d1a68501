/** A place in a text as editors count it: both from 0, `character` in UTF-16 code units. */
export interface Position {
  readonly line: number;
  readonly character: number;
}

/** Converts between offsets and positions of one text. Whatever is outside the text is clamped into it. */
export interface LineIndex {
  readonly lineCount: number;
  /** A place inside or after a line break belongs to the end of its line. */
  positionAt(offset: number): Position;
  /** A character beyond the line's end means the line's end, before its line break. */
  offsetAt(position: Position): number;
}

/** Indexes the lines of a text. Lines end with `\n`, `\r\n` or a lone `\r`, as in the language server protocol. */
export function lineIndex(text: string): LineIndex {
  const starts = lineStarts(text);

  const contentEnd = (line: number): number => {
    const next = starts[line + 1];
    if (next === undefined) return text.length;
    return text[next - 1] === "\n" && text[next - 2] === "\r" && next - 2 >= starts[line]!
      ? next - 2
      : next - 1;
  };

  return {
    lineCount: starts.length,
    positionAt(offset) {
      const at = clamp(offset, 0, text.length);
      let low = 0;
      let high = starts.length - 1;
      while (low < high) {
        const middle = (low + high + 1) >> 1;
        if (starts[middle]! <= at) low = middle;
        else high = middle - 1;
      }
      return { line: low, character: Math.min(at, contentEnd(low)) - starts[low]! };
    },
    offsetAt({ line, character }) {
      if (!(line >= 0)) return 0;
      const start = starts[Math.trunc(line)];
      if (start === undefined) return text.length;
      return clamp(start + character, start, contentEnd(Math.trunc(line)));
    },
  };
}

function lineStarts(text: string): number[] {
  const starts = [0];
  let feed = text.indexOf("\n");
  let carriage = text.indexOf("\r");
  while (feed !== -1 || carriage !== -1) {
    let end: number;
    if (carriage === -1 || (feed !== -1 && feed < carriage)) end = feed + 1;
    else end = feed === carriage + 1 ? feed + 1 : carriage + 1;
    starts.push(end);
    if (feed !== -1 && feed < end) feed = text.indexOf("\n", end);
    if (carriage !== -1 && carriage < end) carriage = text.indexOf("\r", end);
  }
  return starts;
}

/** NaN counts as the lower bound. */
function clamp(value: number, low: number, high: number): number {
  return value > low ? Math.min(Math.trunc(value), high) : low;
}
