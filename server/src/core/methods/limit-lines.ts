import { sameWithinRounding } from "../rounding";
import { type LimitGap, type LimitPoint, type LimitSide, limitAt } from "./envelope";

/** A stretch of weights, ends included, over which a limit runs straight in arm and weight. */
export interface LimitLine {
  readonly from: number;
  readonly to: number;
  /** Arm of the limit at `from`. */
  readonly arm: number;
  /** Arm per weight. */
  readonly slope: number;
}

/** A stretch of weights for which a limit is not given. */
export interface UncoveredWeights {
  readonly from: number;
  readonly to: number;
  readonly gap: LimitGap;
}

export interface LimitLines {
  readonly lines: readonly LimitLine[];
  readonly uncovered: readonly UncoveredWeights[];
}

/**
 * One limit between two weights as straight lines. Where it is given at a single weight, and at every weight
 * where it bends or steps, a line of no length says what counts at that very weight.
 *
 * What the points mean (order, steps, "or less") is known to {@link limitAt} alone: each line is read off it
 * at two weights inside its stretch.
 */
export function limitLines(
  points: readonly LimitPoint[],
  side: LimitSide,
  from: number,
  to: number,
): LimitLines {
  const lines: LimitLine[] = [];
  const uncovered: UncoveredWeights[] = [];
  const corners = cornersBetween(points, from, to);

  corners.forEach((start, index) => {
    const here = limitAt(points, side, start);
    if (here.covered) lines.push({ from: start, to: start, arm: here.arm, slope: 0 });
    else if (corners.length === 1) uncovered.push({ from, to, gap: here });

    const end = corners[index + 1];
    if (end === undefined) return;
    const length = end - start;
    const early = limitAt(points, side, start + length / 4);
    const late = limitAt(points, side, end - length / 4);
    if (!early.covered) uncovered.push({ from: start, to: end, gap: early });
    else if (!late.covered) uncovered.push({ from: start, to: end, gap: late });
    else {
      const rise = (late.arm - early.arm) * 2;
      lines.push({ from: start, to: end, arm: early.arm - rise / 4, slope: rise / length });
    }
  });
  return { lines, uncovered };
}

/** `from`, `to` and the weights of points between them, rising, each once. */
function cornersBetween(points: readonly LimitPoint[], from: number, to: number): number[] {
  if (sameWithinRounding(from, to)) return [from];
  const inside = points
    .map((point) => point.weight)
    .filter((weight) => weight > from && weight < to)
    .toSorted((a, b) => a - b);
  const corners = [from];
  for (const weight of inside) {
    if (!sameWithinRounding(weight, corners.at(-1)!) && !sameWithinRounding(weight, to)) corners.push(weight);
  }
  return [...corners, to];
}
