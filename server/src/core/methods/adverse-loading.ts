import { isBelow } from "../rounding";
import type { Source } from "../source";
import { advisoryCircular } from "../tables/electrical-documents";
import { type Balance, combine, type PointMass } from "./balance";
import { type Limit, type LimitPoint, type LimitSide, limitAt } from "./envelope";

/**
 * The published adverse-loading check, step by step, as a sheet. It tries one loading; `loadings.ts` tries
 * them all. Plain numbers in any one consistent set of units; arms positive aft of the datum.
 */

export const adverseLoadingSource: Source = advisoryCircular("chapter 10, par. 10-16 and 10-17", "published");

/** Seats and baggage. */
export interface AdverseItem {
  readonly id: string;
  readonly arm: number;
  /** Carried where that is the adverse choice; nothing when left out. */
  readonly least?: number;
  readonly most: number;
}

export interface AdversePilot {
  readonly id: string;
  readonly weight: number;
  /** Every seat, or end of a seat's travel, from which the aircraft may be flown alone. */
  readonly arms: readonly [number, ...number[]];
}

export interface AdverseTank {
  readonly id: string;
  readonly arm: number;
  readonly capacity: number;
}

export interface AdverseCase {
  readonly empty: PointMass;
  readonly pilot: AdversePilot;
  /** Full oil, where the empty weight leaves it out. */
  readonly oil?: PointMass & { readonly id: string };
  readonly items: readonly AdverseItem[];
  readonly tanks: readonly AdverseTank[];
  /** Of all tanks together: see `minimumFuel`. */
  readonly minimumFuel: number;
  readonly maximumWeight: number;
}

/** Why a row carries what it carries. `not-ahead` and `not-behind` count an arm exactly at the limit. */
export type AdverseReason =
  | "empty-weight"
  | "pilot-required"
  | "oil-full"
  | "ahead-of-limit"
  | "not-ahead-of-limit"
  | "behind-limit"
  | "not-behind-limit";

export interface AdverseRow {
  readonly id: string;
  readonly kind: "empty" | "pilot" | "oil" | "item" | "tank";
  readonly weight: number;
  readonly arm: number;
  readonly moment: number;
  readonly carried: "always" | "most" | "least";
  readonly reason: AdverseReason;
}

/**
 * - `sloping-limit`: the limit is not one arm. Items are sorted by its arm at the sheet's own weight; another
 *   loading may be worse
 * - `unsettled-split`: no such arm agrees with the weight that it leads to; the sheet uses the last one tried
 * - `fuel-below-minimum`: the tanks cannot hold the minimum fuel
 */
export type AdverseNote = "sloping-limit" | "unsettled-split" | "fuel-below-minimum";

export interface AdverseSheet {
  readonly side: LimitSide;
  readonly rows: readonly AdverseRow[];
  readonly total: Balance;
  /** At the weight of the total. */
  readonly limit: Limit;
  /** Length beyond the limit, negative when inside; undefined where the limit is not given. */
  readonly excess: number | undefined;
  /** Weight above the maximum, negative when below it. */
  readonly overweight: number;
  readonly verdict: "within" | "beyond-limit" | "above-maximum-weight" | "beyond-both" | "limit-not-given";
  readonly notes: readonly AdverseNote[];
}

/**
 * The forward or aft check of AC 43.13-1B 10-16 and 10-17 (worked: figure 10-10). Everything ahead of the
 * forward limit (behind the aft limit) at its most, everything else at its least, the pilot always, in the
 * control seat that is farthest that way, oil full. Tanks on the adverse side are full; the others hold what
 * is then missing of the minimum fuel, the tank least in the way first.
 *
 * The circular knows a limit of one arm. Of a sloping limit the arm at the sheet's own weight is meant here,
 * found by trying, and noted. Undefined where the limit has no points.
 */
export function adverseLoading(
  aircraft: AdverseCase,
  points: readonly LimitPoint[],
  side: LimitSide,
): AdverseSheet | undefined {
  const arms = points.map((point) => point.arm);
  if (arms.length === 0) return undefined;
  const notes = new Set<AdverseNote>();
  if (arms.some((arm) => arm !== arms[0])) notes.add("sloping-limit");
  if (
    isBelow(
      sumOf(aircraft.tanks, (tank) => tank.capacity),
      aircraft.minimumFuel,
    )
  )
    notes.add("fuel-below-minimum");

  let split = side === "forward" ? Math.max(...arms) : Math.min(...arms);
  let sheet = sheetFor(aircraft, points, side, split);
  // Where heavier means stricter, each try takes rows away, and one try for each is enough.
  const tries = aircraft.items.length + aircraft.tanks.length + 1;
  for (let tried = 0; tried < tries && sheet.limit.covered && sheet.limit.arm !== split; tried++) {
    split = sheet.limit.arm;
    sheet = sheetFor(aircraft, points, side, split);
  }
  if (sheet.limit.covered && sheet.limit.arm !== split) notes.add("unsettled-split");
  return { ...sheet, notes: [...notes] };
}

function sheetFor(
  aircraft: AdverseCase,
  points: readonly LimitPoint[],
  side: LimitSide,
  split: number,
): AdverseSheet {
  const rows = rowsFor(aircraft, side, split);
  const total = combine(rows);
  const limit = limitAt(points, side, total.weight);
  const excess = excessOf(total, limit, side);
  return {
    side,
    rows,
    total,
    limit,
    excess,
    overweight: total.weight - aircraft.maximumWeight,
    verdict: verdictOn(total, excess, aircraft.maximumWeight),
    notes: [],
  };
}

function rowsFor(
  { empty, pilot, oil, items, tanks, minimumFuel }: AdverseCase,
  side: LimitSide,
  split: number,
) {
  const isAdverse = (arm: number) => (side === "forward" ? arm < split : arm > split);
  const [adverse, other] =
    side === "forward"
      ? (["ahead-of-limit", "not-ahead-of-limit"] as const)
      : (["behind-limit", "not-behind-limit"] as const);
  const seat = side === "forward" ? Math.min(...pilot.arms) : Math.max(...pilot.arms);
  const fuel = fuelIn(tanks, isAdverse, minimumFuel, side);

  const row = (
    { id, weight, arm }: PointMass & { readonly id: string },
    kind: AdverseRow["kind"],
    carried: AdverseRow["carried"],
    reason: AdverseReason,
  ): AdverseRow => ({ id, kind, weight, arm, moment: weight * arm, carried, reason });
  const choice = (point: PointMass & { readonly id: string }, kind: "item" | "tank") =>
    isAdverse(point.arm) ? row(point, kind, "most", adverse) : row(point, kind, "least", other);

  return [
    row({ id: "empty", ...empty }, "empty", "always", "empty-weight"),
    ...(oil ? [row(oil, "oil", "always", "oil-full")] : []),
    row({ id: pilot.id, weight: pilot.weight, arm: seat }, "pilot", "always", "pilot-required"),
    ...items.map(({ id, arm, least = 0, most }) =>
      choice({ id, arm, weight: isAdverse(arm) ? most : least }, "item"),
    ),
    ...tanks.map(({ id, arm }, index) => choice({ id, arm, weight: fuel[index] ?? 0 }, "tank")),
  ];
}

/** What each tank holds, in the order given. */
function fuelIn(
  tanks: readonly AdverseTank[],
  isAdverse: (arm: number) => boolean,
  minimum: number,
  side: LimitSide,
): number[] {
  const fuel = tanks.map(({ arm, capacity }) => (isAdverse(arm) ? capacity : 0));
  let missing = minimum - sumOf(fuel, (weight) => weight);
  // Fuel on the far side of the limit helps: the nearest tank takes the minimum first.
  const order = tanks
    .map(({ arm }, index) => ({ arm, index }))
    .toSorted((a, b) => (side === "forward" ? a.arm - b.arm : b.arm - a.arm));
  for (const { arm, index } of order) {
    if (isAdverse(arm)) continue;
    const taken = Math.max(0, Math.min(missing, tanks[index]!.capacity));
    fuel[index] = taken;
    missing -= taken;
  }
  return fuel;
}

function excessOf(total: Balance, limit: Limit, side: LimitSide): number | undefined {
  if (!limit.covered || total.arm === undefined) return undefined;
  return side === "forward" ? limit.arm - total.arm : total.arm - limit.arm;
}

function verdictOn(
  { weight, arm = 0 }: Balance,
  excess: number | undefined,
  maximumWeight: number,
): AdverseSheet["verdict"] {
  const isHeavy = isBelow(maximumWeight, weight);
  const isBeyond = excess !== undefined && isBelow(0, excess, Math.abs(arm));
  if (isHeavy) return isBeyond ? "beyond-both" : "above-maximum-weight";
  if (excess === undefined) return "limit-not-given";
  return isBeyond ? "beyond-limit" : "within";
}

function sumOf<T>(list: readonly T[], value: (item: T) => number): number {
  return list.reduce((sum, item) => sum + value(item), 0);
}
