import { sameWithinRounding } from "../rounding";
import type { Envelope, LimitSide } from "./envelope";
import { type ExcessReport, excessAlong } from "./envelope-excess";
import { type Loadable, type LoadingProblem, type LoadStation, loadableProblems } from "./loadable";
import type { LoadedPoint, MomentCurve } from "./moment-curve";

/**
 * Every loading that an aircraft can have, not a few chosen ones. Plain numbers in any one consistent set of
 * units.
 */

/** The loadings with the lowest and with the highest centre of gravity at each weight. */
export interface BoundaryCurves {
  /** From the lightest to the heaviest loading, as is `aft`. */
  readonly forward: MomentCurve;
  readonly aft: MomentCurve;
  /** Weight with every station as full as its limits let it be, whatever the maximum weight. */
  readonly full: number;
}

export type BoundaryResult =
  | { readonly solved: true; readonly curves: BoundaryCurves }
  | { readonly solved: false; readonly problems: readonly LoadingProblem[] };

/**
 * The least and the greatest moment among all loadings of each weight, exactly: straight lines with a corner
 * wherever a station or a group is full.
 *
 * It is a linear programme for each weight: loads x between least and most, groups at most so much, sum
 * given, sum of arm x load least. Filling the stations in the order of their arms, each as far as its limits
 * still let it, solves it for all weights in one pass. Why: a station is left only when it is full or when a
 * group around it is, and of such full sets, being nested or apart, the widest are apart and hold all the
 * stations passed so far. No other loading can hold more in any of these sets, nor then in all the stations
 * passed: after each station, the sum so far is the greatest possible. The moment is
 * (last arm) x sum - sum over k of (arm k+1 - arm k) x (sum so far at k), and no factor in it is negative, so
 * that the greatest sums make the least moment. A given total is one more group, around all the others.
 * Crossing groups break the argument (full sets overlap), and are answered with a problem.
 */
export function boundaryCurves(loadable: Loadable): BoundaryResult {
  const problems = loadableProblems(loadable);
  if (problems.length > 0) return { solved: false, problems };
  const rising = loadable.stations.toSorted((a, b) => a.arm - b.arm);
  return { solved: true, curves: new Filled(loadable, rising) };
}

/** Each curve when it is asked for: whoever looks at one side does not pay for the other. */
class Filled implements BoundaryCurves {
  private readonly known: { forward?: MomentCurve; aft?: MomentCurve } = {};

  constructor(
    private readonly loadable: Loadable,
    private readonly rising: readonly LoadStation[],
  ) {}

  get forward(): MomentCurve {
    this.known.forward ??= fill(this.loadable, this.rising);
    return this.known.forward;
  }

  get aft(): MomentCurve {
    this.known.aft ??= fill(this.loadable, this.rising.toReversed());
    return this.known.aft;
  }

  get full(): number {
    return fill({ ...this.loadable, maximum: Number.POSITIVE_INFINITY }, this.rising).at(-1)!.weight;
  }
}

/**
 * The worst loading against one limit of an envelope, over all loadings of all weights, and the weights at
 * which some loading is beyond it.
 */
export function violations(curves: BoundaryCurves, envelope: Envelope, side: LimitSide): ExcessReport {
  return excessAlong(curves[side], envelope[side], side);
}

/** Fills the stations in the order given, and keeps a point for each that took any load. */
function fill(
  { fixed, stations, groups = [], maximum = Number.POSITIVE_INFINITY }: Loadable,
  order: readonly LoadStation[],
): MomentCurve {
  const loads = new Map(stations.map(({ id, least }) => [id, least]));
  let { weight, moment } = fixed;
  for (const { arm, least } of stations) {
    weight += least;
    moment += arm * least;
  }
  const loaded = (): LoadedPoint => ({
    weight,
    moment,
    loads: Array.from(loads, ([id, load]) => ({ id, weight: load })),
  });
  const limits = groups.map(({ ids, most }) => {
    const members = new Set(ids);
    const used = stations.reduce((sum, { id, least }) => (members.has(id) ? sum + least : sum), 0);
    return { members, room: most - used };
  });

  const curve = [loaded()];
  for (const { id, arm, least, most } of order) {
    const around = limits.filter(({ members }) => members.has(id));
    const room = Math.min(most - least, maximum - weight, ...around.map((group) => group.room));
    // Room that is only the noise of a sum would make a corner that is none.
    if (room <= 0 || sameWithinRounding(room, 0, weight)) continue;
    for (const group of around) group.room -= room;
    loads.set(id, least + room);
    weight += room;
    moment += arm * room;
    curve.push(loaded());
  }
  return curve;
}
