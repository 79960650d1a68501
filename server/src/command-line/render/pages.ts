import { showMeasure } from "../../core/graph/value";
import type { Cell, Page } from "../../core/views/pages";
import { tableWithin, wrap } from "./layout";

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
