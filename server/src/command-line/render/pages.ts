import { showMeasure } from "../../core/graph/value";
import { shorten } from "../../core/rules/wording";
import type { Cell, Page } from "../../core/views/pages";
import { table, wrap } from "./layout";

/** A page for a terminal or a printer of `width` columns: its title, what it states, its table. */
export function renderPage({ title, statements, head, rows, digits }: Page, width: number): string {
  const cells = rows.map((row) => row.map((cell) => textOf(cell, digits)));
  const body = table(head, narrowed(cells, head, width));
  return [title.toUpperCase(), ...statements.map((line) => wrap(line, width)), body]
    .filter((part) => part !== "")
    .join("\n");
}

function textOf(cell: Cell, digits: number | undefined): string {
  return typeof cell === "string" ? shorten(cell) : showMeasure(cell.value, cell.unit, digits);
}

/** With the widest column of words cut to what fits; the JSON report has it whole. */
function narrowed(rows: readonly (readonly string[])[], head: readonly string[], width: number) {
  const lines = table(head, rows).split("\n");
  const over = Math.max(...lines.map((line) => line.length)) - width;
  if (over <= 0) return rows;
  const longest = head.map((_, column) => Math.max(...rows.map((row) => (row[column] ?? "").length)));
  const wordy = longest.indexOf(Math.max(...longest));
  const room = Math.max(8, (longest[wordy] ?? 0) - over);
  return rows.map((row) =>
    row.map((cell, column) =>
      column === wordy && cell.length > room ? `${cell.slice(0, room - 1)}…` : cell,
    ),
  );
}
