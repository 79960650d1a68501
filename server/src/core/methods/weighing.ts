import { isAtMost } from "../rounding";
import { type Balance, centreOfGravityFromReactions, combine, type ScaleReading } from "./balance";

/**
 * Something in which the aircraft on the scales differs from its empty weight (AC 43.13-1B 10-2b says what
 * belongs to it, the certification basis whether oil does).
 *
 * - `remove`: was on board and does not belong to the empty weight (usable fuel, oil where it is left out)
 * - `keep`: was on board and belongs to it; on the sheet, so that nobody removes it (hydraulic fluid)
 * - `add`: belongs to it and was not on board (unusable fuel of a drained aircraft, a missing seat)
 */
export interface WeighingItem {
  readonly id: string;
  /** Zero or more, whatever is done with it. */
  readonly weight: number;
  readonly arm: number;
  readonly treatment: "remove" | "keep" | "add";
}

export interface ScaleRow {
  readonly reading: number;
  readonly tare: number;
  /** reading - tare */
  readonly net: number;
  readonly arm: number;
  readonly moment: number;
}

export interface WeighingItemRow {
  readonly id: string;
  readonly treatment: WeighingItem["treatment"];
  /** As it counts: negative when removed, zero when kept. */
  readonly weight: number;
  readonly arm: number;
  readonly moment: number;
}

/** Scales and items are named by their place in the lists given. */
export type WeighingProblem =
  | { readonly reason: "no-scales" | "no-empty-weight" }
  | { readonly reason: "tare-above-reading"; readonly scale: number }
  | { readonly reason: "negative-item"; readonly item: number }
  | { readonly reason: "not-finite"; readonly scale: number }
  | { readonly reason: "not-finite"; readonly item: number };

export interface WeighingSheet {
  readonly scales: readonly ScaleRow[];
  readonly items: readonly WeighingItemRow[];
  readonly asWeighed: Balance;
  readonly empty: Balance;
}

export type WeighingResult =
  | { readonly solved: true; readonly sheet: WeighingSheet }
  | { readonly solved: false; readonly problems: readonly WeighingProblem[] };

/**
 * Empty weight and centre of gravity from a weighing: each scale less its own tare, less what does not belong
 * to the empty weight, plus what does and was missing (AC 43.13-1B 10-2b, 10-2n, 10-2r, 10-15). Any landing
 * gear, any datum, any one consistent set of units. Nothing is rounded.
 */
export function emptyFromWeighing(
  scales: readonly ScaleReading[],
  items: readonly WeighingItem[] = [],
): WeighingResult {
  const problems = weighingProblems(scales, items);
  if (problems.length > 0) return { solved: false, problems };

  const asWeighed = centreOfGravityFromReactions(scales);
  const rows = items.map(({ id, weight, arm, treatment }) => {
    const counted = signs[treatment] * weight;
    return { id, treatment, weight: counted, arm, moment: counted * arm };
  });
  const empty = combine([
    ...scales.map(({ reading, tare = 0, arm }) => ({ weight: reading - tare, arm })),
    ...rows,
  ]);
  if (empty.weight <= 0 || empty.arm === undefined) {
    return { solved: false, problems: [{ reason: "no-empty-weight" }] };
  }
  return { solved: true, sheet: { scales: scales.map(scaleRow), items: rows, asWeighed, empty } };
}

const signs = { remove: -1, keep: 0, add: 1 } as const;

function scaleRow({ reading, tare = 0, arm }: ScaleReading): ScaleRow {
  const net = reading - tare;
  return { reading, tare, net, arm, moment: net * arm };
}

function weighingProblems(
  scales: readonly ScaleReading[],
  items: readonly WeighingItem[],
): WeighingProblem[] {
  const problems: WeighingProblem[] = scales.length === 0 ? [{ reason: "no-scales" }] : [];
  scales.forEach(({ reading, tare = 0, arm }, scale) => {
    if (![reading, tare, arm].every(Number.isFinite)) problems.push({ reason: "not-finite", scale });
    else if (!isAtMost(tare, reading)) problems.push({ reason: "tare-above-reading", scale });
  });
  items.forEach(({ weight, arm }, item) => {
    if (![weight, arm].every(Number.isFinite)) problems.push({ reason: "not-finite", item });
    else if (weight < 0) problems.push({ reason: "negative-item", item });
  });
  return problems;
}
