import type { LoadingResult } from "../../graph/loadings";
import { formatMeasure, type UnitSymbol } from "../../quantities";
import { listWords } from "../wording";

/** What a loading has on board: "front-seats 340 lb". */
export function loadsOf({ stations }: LoadingResult): string[] {
  return stations.flatMap(({ id, weight }) =>
    weight && weight.value !== 0 ? [`${id} ${formatMeasure(weight.value, weight.unit as UnitSymbol)}`] : [],
  );
}

/** "On board: rear-seats 340 lb and baggage 120 lb." */
export function onBoardWords(loads: readonly string[]): string {
  return `On board: ${loads.length > 0 ? listWords(loads, "and") : "nothing"}.`;
}

/** How a loading stood to its limit before the change; nothing while that is not known. */
export type Before = {
  readonly wasKept?: boolean | undefined;
  /** What is held against the limit, as it was. */
  readonly beforeValue?: number | undefined;
  /** How far past the limit it was. */
  readonly beforeBeyond?: number | undefined;
};

/** "; before the change it kept the limit (91.2 in)". */
export function beforeWords({ wasKept, beforeValue, beforeBeyond }: Before, unit: UnitSymbol): string {
  if (wasKept === undefined || beforeValue === undefined || beforeBeyond === undefined) return "";
  return wasKept
    ? `; before the change it kept the limit (${formatMeasure(beforeValue, unit)})`
    : `; before the change it was past the limit too, by ${formatMeasure(beforeBeyond, unit, 3)}`;
}
