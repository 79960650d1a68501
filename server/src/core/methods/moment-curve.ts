import { sameWithinRounding } from "../rounding";

/** What one station carries. */
export interface Load {
  readonly id: string;
  readonly weight: number;
}

/** A loaded aircraft: its total weight and moment, and what the stations carry. */
export interface LoadedPoint {
  readonly weight: number;
  readonly moment: number;
  readonly loads: readonly Load[];
}

/**
 * Loaded aircraft from light to heavy, with a straight line in weight, moment and every load between one and
 * the next. One point alone is a curve too.
 */
export type MomentCurve = readonly LoadedPoint[];

/** The loaded aircraft of exactly this weight; undefined outside the curve's weights. */
export function pointAt(curve: MomentCurve, weight: number): LoadedPoint | undefined {
  const corner = curve.find((point) => sameWithinRounding(point.weight, weight));
  if (corner) return corner;
  const next = curve.findIndex((point) => point.weight > weight);
  const [below, above] = [curve[next - 1], curve[next]];
  if (below === undefined || above === undefined) return undefined;

  const part = (weight - below.weight) / (above.weight - below.weight);
  const between = (from: number, to: number) => from + part * (to - from);
  return {
    weight,
    moment: between(below.moment, above.moment),
    loads: below.loads.map(({ id, weight: load }, index) => ({
      id,
      weight: between(load, above.loads[index]?.weight ?? load),
    })),
  };
}
