import { isBelow } from "../rounding";
import type { LimitPoint, LimitSide } from "./envelope";
import { type LimitLine, limitLines, type UncoveredWeights } from "./limit-lines";
import { type Load, type MomentCurve, pointAt } from "./moment-curve";

/** A loaded aircraft held against one limit. */
export interface ExcessPoint {
  readonly weight: number;
  readonly cg: number;
  readonly limit: number;
  /** Length beyond the limit; negative when inside it. */
  readonly excess: number;
  readonly loads: readonly Load[];
}

/** A whole stretch of weights beyond a limit. Its ends lie on the limit, or where curve or limit end or step. */
export interface Violation {
  readonly from: number;
  readonly to: number;
  readonly worst: ExcessPoint;
}

export interface ExcessReport {
  /** The point farthest beyond the limit, or nearest to it; undefined where the limit is given nowhere. */
  readonly worst: ExcessPoint | undefined;
  /** From light to heavy, apart from each other. */
  readonly violations: readonly Violation[];
  /** Weights of the curve for which the limit is not given: nothing is judged there. */
  readonly uncovered: readonly UncoveredWeights[];
}

/**
 * How far a curve of loaded aircraft lies beyond one limit, exactly, over all of its weights.
 * Weights above zero are taken for granted.
 *
 * Where the moment is straight in weight, M = m + a W, and so is the limit's arm, L = c + d W, the excess
 * M / W - L = a + m / W - c - d W has one turning point, W = sqrt(-m / d), and is zero at the roots of a
 * quadratic. The worst point is therefore at an end or a turning point of such a piece, and the violated
 * weights end at roots: no stepping through weights is needed (derived).
 */
export function excessAlong(
  curve: MomentCurve,
  points: readonly LimitPoint[],
  side: LimitSide,
): ExcessReport {
  const [lightest, heaviest] = [curve[0], curve.at(-1)];
  if (lightest === undefined || heaviest === undefined) {
    return { worst: undefined, violations: [], uncovered: [] };
  }
  const { lines, uncovered } = limitLines(points, side, lightest.weight, heaviest.weight);
  const stretches = piecesOf(curve, lines, side).flatMap(stretchesOf);
  const spelt = ({ weight, cg, limit, excess }: Sample): ExcessPoint => ({
    weight,
    cg,
    limit,
    excess,
    loads: pointAt(curve, weight)?.loads ?? [],
  });
  const worst = stretches.map((stretch) => stretch.worst).reduce(worseOf, undefined);
  return {
    worst: worst && spelt(worst),
    violations: joined(stretches.filter((stretch) => isBeyond(stretch.worst))).map((stretch) => ({
      from: stretch.from,
      to: stretch.to,
      worst: spelt(stretch.worst),
    })),
    uncovered,
  };
}

interface Sample {
  readonly weight: number;
  readonly cg: number;
  readonly limit: number;
  readonly excess: number;
  /** Size of the lengths that the excess was computed from: its noise is theirs. */
  readonly scale: number;
}

/** Weights over which moment and limit are both straight. */
interface Piece {
  readonly from: number;
  readonly to: number;
  readonly sampleAt: (weight: number) => Sample;
  /** Where the excess may turn or be zero. */
  readonly turn: number;
  readonly zeros: readonly number[];
}

/** Weights of one piece over which the excess keeps its sign. */
interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly worst: Sample;
}

function piecesOf(curve: MomentCurve, lines: readonly LimitLine[], side: LimitSide): Piece[] {
  const ends = curve.length === 1 ? curve : curve.slice(1);
  return ends.flatMap((end, index) => {
    const start = curve[index]!;
    const width = end.weight - start.weight;
    const arm = width > 0 ? (end.moment - start.moment) / width : 0;
    return lines.flatMap((line) => {
      const [from, to] = [Math.max(start.weight, line.from), Math.min(end.weight, line.to)];
      if (from > to) return [];
      const rest = start.moment - arm * start.weight;
      const sampleAt = (weight: number): Sample => {
        const added = arm * (weight - start.weight);
        const cg = (start.moment + added) / weight;
        const rise = line.slope * (weight - line.from);
        const limit = line.arm + rise;
        // Near the datum both lengths are small differences of large ones.
        const scale = Math.max(
          (Math.abs(start.moment) + Math.abs(added)) / weight,
          Math.abs(line.arm) + Math.abs(rise),
        );
        return { weight, cg, limit, excess: side === "aft" ? cg - limit : limit - cg, scale };
      };
      const turn = Math.sqrt(-rest / line.slope);
      const zeros = rootsOf(-line.slope, arm - (line.arm - line.slope * line.from), rest);
      return [{ from, to, sampleAt, turn, zeros }];
    });
  });
}

function stretchesOf({ from, to, sampleAt, turn, zeros }: Piece): Stretch[] {
  const inside = zeros.filter((zero) => zero > from && zero < to).toSorted((a, b) => a - b);
  const cuts = [from, ...inside, to];
  return cuts.slice(1).map((end, index) => {
    const start = cuts[index]!;
    const worst = worseOf(sampleAt(start), sampleAt(end));
    return {
      from: start,
      to: end,
      worst: turn > start && turn < end ? worseOf(worst, sampleAt(turn)) : worst,
    };
  });
}

/** Real roots of a x^2 + b x + c, without cancellation; none that is not finite. */
function rootsOf(a: number, b: number, c: number): number[] {
  const discriminant = b * b - 4 * a * c;
  if (discriminant < 0) return [];
  const q = -(b + (b < 0 ? -1 : 1) * Math.sqrt(discriminant)) / 2;
  return [q / a, c / q].filter(Number.isFinite);
}

function worseOf(a: Sample | undefined, b: Sample): Sample {
  return a === undefined || b.excess > a.excess ? b : a;
}

/** On a limit is inside, also when the last bit says otherwise. */
function isBeyond({ excess, scale }: Sample): boolean {
  return isBelow(0, excess, scale);
}

/** Stretches that touch become one. */
function joined(stretches: readonly Stretch[]): Stretch[] {
  const result: Stretch[] = [];
  for (const stretch of stretches.toSorted((a, b) => a.from - b.from || a.to - b.to)) {
    const last = result.at(-1);
    if (last === undefined || stretch.from > last.to) result.push(stretch);
    else {
      const to = Math.max(last.to, stretch.to);
      result[result.length - 1] = { from: last.from, to, worst: worseOf(last.worst, stretch.worst) };
    }
  }
  return result;
}
