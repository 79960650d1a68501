import type { FixedLoad } from "./loadable";
import type { LoadedPoint, MomentCurve } from "./moment-curve";

/** What one station of a particular loading carries, and where. */
export interface PlacedLoad {
  readonly id: string;
  readonly arm: number;
  readonly weight: number;
}

export interface Loading {
  readonly fixed: FixedLoad;
  readonly loads: readonly PlacedLoad[];
}

/**
 * - `in-order`: each tank runs empty before the next is used, in the order in which they are named
 * - `proportional`: all tanks run empty at the same moment
 */
export type BurnOrder = "in-order" | "proportional";

/**
 * The loaded aircraft from zero fuel to full as fuel burns, exactly: moment is straight in weight while the
 * same tanks feed, each tank being at one arm. Hold it against a limit with `excessAlong`; its own lowest and
 * highest centre of gravity are at corners, for between two corners the centre of gravity moves one way only.
 *
 * Names that are no load are left out. Fuel at an arm that changes with its quantity needs a load for each
 * part of the tank.
 */
export function fuelBurnPath(
  { fixed, loads }: Loading,
  tanks: readonly string[],
  order: BurnOrder,
): MomentCurve {
  const known = new Set(loads.map(({ id }) => id));
  const used = [...new Set(tanks)].filter((id) => known.has(id));
  const phases = order === "in-order" ? used.map((id) => [id]) : [used];

  const empty = new Set<string>();
  const path = [loadedWithout(fixed, loads, empty)];
  for (const phase of phases) {
    for (const id of phase) empty.add(id);
    const point = loadedWithout(fixed, loads, empty);
    if (point.weight < path.at(-1)!.weight) path.push(point);
  }
  return path.reverse();
}

function loadedWithout(
  fixed: FixedLoad,
  loads: readonly PlacedLoad[],
  empty: ReadonlySet<string>,
): LoadedPoint {
  const left = loads.map((load) => (empty.has(load.id) ? { ...load, weight: 0 } : load));
  return {
    weight: left.reduce((sum, { weight }) => sum + weight, fixed.weight),
    moment: left.reduce((sum, { arm, weight }) => sum + arm * weight, fixed.moment),
    loads: left.map(({ id, weight }) => ({ id, weight })),
  };
}
