import type { LoadingResult } from "../../graph/loadings";
import { formatApart, formatMeasure, type UnitSymbol } from "../../quantities";
import { listWords } from "../wording";

/** What a loading has on board: "front-seats 340 lb". */
export function loadsOf({ stations }: LoadingResult): string[] {
  return stations.flatMap(({ id, weight }) =>
    weight && weight.value !== 0 ? [`${id} ${formatMeasure(weight.value, weight.unit as UnitSymbol)}`] : [],
  );
}

/** "Loading full-aft (rear-seats 340 lb and baggage 120 lb)". */
export function loadingWords(loading: string, loads: readonly string[]): string {
  return `Loading ${loading} (${loads.length > 0 ? listWords(loads, "and") : "nothing on board"})`;
}

/** How a loading stood to the same limit before the change; nothing while that is not known. */
export type Before = {
  readonly wasKept?: boolean | undefined;
  readonly beforeValue?: number | undefined;
  readonly beforeLimit?: number | undefined;
};

/** "; before the change it kept the limit (91.2 in)". */
export function beforeWords({ wasKept, beforeValue, beforeLimit }: Before, unit: UnitSymbol): string {
  if (wasKept === undefined || beforeValue === undefined || beforeLimit === undefined) return "";
  if (wasKept) return `; before the change it kept the limit (${formatMeasure(beforeValue, unit)})`;
  const [value, limit] = formatApart(beforeValue, beforeLimit);
  return `; before the change it was past the limit too (${value} ${unit} against ${limit} ${unit})`;
}
