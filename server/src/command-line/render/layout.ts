/** Text for a terminal: wrapping and indenting by columns. */
import type { Severity } from "../../core/findings/finding";

/** Signs that act on a terminal, or turn the direction of writing, instead of being shown. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what must not reach a terminal
export const acting = /(\u001b\[\d+m)|[\p{Cc}\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu;

/** Whatever a record holds, only line breaks and, where it is wanted, colour act on the terminal. */
export function printable(text: string, withColor: boolean): string {
  return text.replace(acting, (sign, color) => (sign === "\n" || (withColor && color) ? sign : " "));
}

/** Whatever a record holds, no line of text reads as a command to the runner of a forge that logs it. */
export function withoutCommands(text: string): string {
  return text.replace(/^(\s*)(:(?=:)|#(?=#(?:\[|vso)))/gm, "$1$2 ");
}

/** Breaks a paragraph at spaces; a word longer than the width keeps its own line. */
export function wrap(text: string, width: number): string {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(/\s+/)) {
    if (line !== "" && line.length + 1 + word.length > width) {
      lines.push(line);
      line = word;
    } else {
      line = line === "" ? word : `${line} ${word}`;
    }
  }
  return [...lines, line].join("\n");
}

export function indent(text: string, columns: number): string {
  const margin = " ".repeat(columns);
  return text
    .split("\n")
    .map((line) => (line === "" ? line : margin + line))
    .join("\n");
}

/** One line with an indent of its own, wrapped so that what follows hangs two columns further in. */
export function hang(line: string, width: number): string {
  const own = line.length - line.trimStart().length;
  if (line.length <= width) return line;
  const [first = "", ...rest] = wrap(line.trimStart(), width - own - 2).split("\n");
  return [indent(first, own), ...rest.map((one) => indent(one, own + 2))].join("\n");
}

/** A label in the margin with a wrapped paragraph beside it. */
export function labelled(label: string, text: string, width: number, labelWidth = 9): string {
  const body = indent(wrap(text, width - labelWidth), labelWidth);
  return label.padEnd(labelWidth) + body.slice(labelWidth);
}

export type Row = readonly string[];

/** Columns as wide as their widest cell; numbers are set flush right, so that their units line up. */
export function table(head: Row, rows: readonly Row[]): string {
  if (rows.length === 0) return "";
  const all = head.some((cell) => cell !== "") ? [head, ...rows] : rows;
  const columns = greatest(all.map((row) => row.length));
  const widths = Array.from({ length: columns }, (_, column) =>
    greatest(all.map((row) => (row[column] ?? "").length)),
  );
  const isNumeric = widths.map((_, column) => rows.some((row) => /^[<>=\s-]*\d/.test(row[column] ?? "")));
  return all
    .map((row) =>
      widths
        .map((width, column) => {
          const cell = row[column] ?? "";
          return isNumeric[column] ? cell.padStart(width) : cell.padEnd(width);
        })
        .join("  ")
        .trimEnd(),
    )
    .join("\n");
}

/** Of lengths; a long record makes tables of more rows than a call takes arguments. */
function greatest(lengths: readonly number[]): number {
  return lengths.reduce((most, length) => Math.max(most, length), 0);
}

/** The table, its widest column broken onto lines below where it would not fit: nothing is cut. */
export function tableWithin(width: number, head: Row, rows: readonly Row[]): string {
  const whole = table(head, rows);
  const over = greatest(whole.split("\n").map((line) => line.length)) - width;
  if (over <= 0) return whole;
  const longest = head.map((_, at) => greatest([head, ...rows].map((row) => (row[at] ?? "").length)));
  const widest = longest.indexOf(greatest(longest));
  const room = Math.max(8, longest[widest]! - over);
  // Filled up, or a line that begins with a number would have the column set flush right.
  const filled = (row: Row) => row.with(widest, (row[widest] ?? "").padEnd(room));
  const broken = rows.flatMap((row) =>
    brokenWithin(room, row[widest] ?? "").map((line, index) =>
      filled(head.map((_, at) => (at === widest ? line : index === 0 ? (row[at] ?? "") : ""))),
    ),
  );
  return table(filled(head), broken);
}

/** Lines no longer than `room`: broken at spaces, and inside a word that has no room on any line. */
function brokenWithin(room: number, text: string): string[] {
  return wrap(text, room)
    .split("\n")
    .flatMap((line) => line.match(new RegExp(`.{1,${room}}`, "gu")) ?? [""]);
}

const colors: Readonly<Record<Severity, number>> = { error: 31, warning: 33, information: 36 };

export function paint(text: string, severity: Severity, withColor: boolean): string {
  return withColor ? `\u001b[${colors[severity]}m${text}\u001b[0m` : text;
}
