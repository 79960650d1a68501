import { isAtMost, sameWithinRounding } from "../rounding";

/**
 * Centre-of-gravity limits as type certificates word them: arms at given weights with a straight line
 * between them in arm and weight, limits included, and nothing said outside the weights given.
 * Plain numbers in any one consistent set of units; arms positive aft.
 */

export interface LimitPoint {
  readonly weight: number;
  readonly arm: number;
  /** "At this weight or less": the arm holds for every lower weight. Only the lowest point may say so. */
  readonly orLess?: boolean;
}

export type LimitSide = "forward" | "aft";

/**
 * The points of each limit. They may come in any order. Two arms at one weight are a step: at that very
 * weight the stricter arm counts. Points that run from light to heavy, or from heavy to light, also tell
 * which arm of the step belongs to the lighter side.
 */
export interface Envelope {
  readonly forward: readonly LimitPoint[];
  readonly aft: readonly LimitPoint[];
}

/**
 * - `no-points`: the limit is not given
 * - `above-highest`, `below-lowest`: `boundary` is the last weight that the limit is given for
 * - `unclear-step`: the points are in no order, and the weight lies beside the step at `boundary`
 * - `misplaced-or-less`: "or less" stands at `boundary`, and a lower point contradicts it
 */
export type LimitGap =
  | { readonly reason: "no-points" }
  | {
      readonly reason: "above-highest" | "below-lowest" | "unclear-step" | "misplaced-or-less";
      readonly boundary: number;
    };

export type Limit =
  | { readonly covered: true; readonly arm: number }
  | ({ readonly covered: false } & LimitGap);

/** The arm of one limit at a weight: straight between points (worked: 35.0 at 1,950 lb to 38.5 at 2,300 lb). */
export function limitAt(points: readonly LimitPoint[], side: LimitSide, weight: number): Limit {
  const levels = levelsOf(points);
  const [lowest, highest] = [levels[0], levels.at(-1)];
  if (lowest === undefined || highest === undefined) return { covered: false, reason: "no-points" };

  const misplaced = levels.find((level) => level !== lowest && level.orLess.length > 0);
  if (misplaced) return { covered: false, reason: "misplaced-or-less", boundary: misplaced.weight };

  const level = levels.find((level) => sameWithinRounding(level.weight, weight));
  if (level) return { covered: true, arm: stricter(level.arms, side) };
  if (weight < lowest.weight) {
    return lowest.orLess.length > 0
      ? { covered: true, arm: stricter(lowest.orLess, side) }
      : { covered: false, reason: "below-lowest", boundary: lowest.weight };
  }

  const next = levels.findIndex((level) => level.weight > weight);
  const [below, above] = [levels[next - 1], levels[next]];
  if (below === undefined || above === undefined) {
    return { covered: false, reason: "above-highest", boundary: highest.weight };
  }
  if (below.upward === undefined) return { covered: false, reason: "unclear-step", boundary: below.weight };
  if (above.downward === undefined) return { covered: false, reason: "unclear-step", boundary: above.weight };
  const part = (weight - below.weight) / (above.weight - below.weight);
  return { covered: true, arm: below.upward + part * (above.downward - below.upward) };
}

/** The two limits at a weight at which the forward one lies aft of the aft one. */
export interface Crossing {
  readonly weight: number;
  readonly forward: number;
  readonly aft: number;
  /** At no weight is the forward limit ahead of the aft one: the two may have been taken for each other. */
  readonly isEverywhere: boolean;
}

/**
 * Where the limits of an envelope leave no centre of gravity between them, at its worst; undefined where they do
 * at every weight that both are given for. At the weight of a step each side of it counts by itself.
 */
export function crossingOf({ forward, aft }: Envelope): Crossing | undefined {
  const at = (weight: number) => {
    const [ahead, behind] = [limitAt(forward, "forward", weight), limitAt(aft, "aft", weight)];
    return ahead.covered && behind.covered ? [{ weight, forward: ahead.arm, aft: behind.arm }] : [];
  };
  const weights = [...new Set([...forward, ...aft].map(({ weight }) => weight))].toSorted((a, b) => a - b);
  // Between two weights both limits are straight: two points inside tell them up to the ends.
  const inside = weights.slice(1).flatMap((end, index) => {
    const start = weights[index]!;
    const [one] = at(start + (end - start) / 3);
    const [two] = at(start + ((end - start) * 2) / 3);
    if (!one || !two) return [];
    return [
      { weight: start, forward: 2 * one.forward - two.forward, aft: 2 * one.aft - two.aft },
      { weight: end, forward: 2 * two.forward - one.forward, aft: 2 * two.aft - one.aft },
    ];
  });
  // What holds at the lowest weight "or less" holds at half of it.
  const lowest = weights.slice(0, 1).flatMap((weight) => at(weight / 2).map((spot) => ({ ...spot, weight })));
  const spots = [...lowest, ...(inside.length > 0 ? inside : weights.flatMap(at))];
  // Arms near the datum are differences of larger ones.
  const scale = Math.max(0, ...[...forward, ...aft].map(({ arm }) => Math.abs(arm)));
  const crossed = spots.filter((spot) => !isAtMost(spot.forward, spot.aft, scale));
  const [worst] = crossed.toSorted((a, b) => a.aft - a.forward - (b.aft - b.forward));
  if (!worst) return undefined;
  const { weight, forward: ahead, aft: behind } = worst;
  return { weight, forward: ahead, aft: behind, isEverywhere: crossed.length === spots.length };
}

/** Everything that one limit says at one weight. */
interface Level {
  readonly weight: number;
  readonly arms: readonly number[];
  /** Arms that also hold at every lower weight. */
  readonly orLess: readonly number[];
  /** The arm where the line goes on to the next lighter and the next heavier level; undefined if unclear. */
  readonly downward: number | undefined;
  readonly upward: number | undefined;
}

/** From light to heavy. */
function levelsOf(points: readonly LimitPoint[]): Level[] {
  const rising = runs(points, (a, b) => isAtMost(a.weight, b.weight));
  const falling = runs(points, (a, b) => isAtMost(b.weight, a.weight));
  const walk = rising
    ? points
    : falling
      ? points.toReversed()
      : points.toSorted((a, b) => a.weight - b.weight);

  const groups: LimitPoint[][] = [];
  for (const point of walk) {
    const group = groups.at(-1);
    if (group?.[0] && sameWithinRounding(group[0].weight, point.weight)) group.push(point);
    else groups.push([point]);
  }

  return groups.map((group) => {
    const arms = group.map((point) => point.arm);
    const clear = rising || falling || arms.every((arm) => arm === arms[0]);
    return {
      weight: group[0]!.weight,
      arms,
      orLess: group.filter((point) => point.orLess).map((point) => point.arm),
      downward: clear ? arms[0] : undefined,
      upward: clear ? arms.at(-1) : undefined,
    };
  });
}

function runs<T>(items: readonly T[], inOrder: (a: T, b: T) => boolean): boolean {
  return items.every((item, index) => index === 0 || inOrder(items[index - 1]!, item));
}

function stricter(arms: readonly number[], side: LimitSide): number {
  return side === "forward" ? Math.max(...arms) : Math.min(...arms);
}
