/** What a page of the worksheet is: every view makes them, one renderer prints them, the JSON report has them whole. */
import type { ValueUnit } from "../../graph/value";
import type { Quantity } from "../../quantities";
import type { Written } from "../../records/written";

/** A number with its unit, or words. */
export type Cell = string | { readonly value: number; readonly unit: ValueUnit };

/** A title, what it states, and a table; one without rows is left out. */
export interface Page {
  readonly id: string;
  readonly title: string;
  readonly statements: readonly string[];
  readonly head: readonly string[];
  readonly rows: readonly (readonly Cell[])[];
  /** Significant digits of its numbers for people. Left out: as everywhere. */
  readonly digits?: number;
}

/** A page that is only a table. */
export function tablePage(
  id: string,
  title: string,
  head: Page["head"],
  rows: Page["rows"],
  digits?: number,
): Page {
  return { id, title, statements: [], head, rows, ...(digits !== undefined && { digits }) };
}

/** Empty for a number that is not known. */
export function cell(value: { readonly value: number; readonly unit: ValueUnit } | undefined): Cell {
  return value ? { value: value.value, unit: value.unit } : "";
}

/** A quantity as it stands in the record. */
export function recorded(quantity: Written<Quantity> | undefined): Cell {
  return quantity ? { value: quantity.value.written, unit: quantity.value.unit } : "";
}
