import { showMeasure } from "../../core/graph/value";
import type { Cell, Page } from "../../core/views/pages";
import { type Row, table, wrap } from "./layout";

/** A page for a terminal or a printer of `width` columns: its title, what it states, its table. */
export function renderPage({ title, statements, head, rows, digits }: Page, width: number): string {
  const cells = rows.map((row) => row.map((cell) => textOf(cell, digits)));
  return [
    title.toUpperCase(),
    ...statements.map((line) => wrap(line, width)),
    tableWithin(width, head, cells),
  ]
    .filter((part) => part !== "")
    .join("\n");
}

/** Whole, on one line, without signs that nobody sees. */
function textOf(cell: Cell, digits: number | undefined): string {
  return typeof cell === "string"
    ? cell.replace(/[\s\p{C}]+/gu, " ").trim()
    : showMeasure(cell.value, cell.unit, digits);
}

/** The table, its widest column broken onto lines below where it would not fit: nothing is cut. */
function tableWithin(width: number, head: Row, rows: readonly Row[]): string {
  const whole = table(head, rows);
  const over = Math.max(...whole.split("\n").map((line) => line.length)) - width;
  if (over <= 0) return whole;
  const longest = head.map((name, at) => Math.max(name.length, ...rows.map((row) => (row[at] ?? "").length)));
  const widest = longest.indexOf(Math.max(...longest));
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
