import { minus, plus, times, unit } from "./point";
import type { Nearness } from "./segment";

/**
 * The nearness of two things that have grown towards each other by `first` and `second`. The distance goes
 * negative when they have grown past each other; the points are then of no use.
 */
export function grown({ distance, between: [a, b] }: Nearness, first: number, second: number): Nearness {
  const towards = unit(minus(b, a));
  return {
    distance: distance - first - second,
    between: [plus(a, times(towards, first)), minus(b, times(towards, second))],
  };
}

/** The same, with a distance within the tolerance given as the touch that it is. */
export const settled = (nearness: Nearness, tolerance: number): Nearness =>
  nearness.distance > tolerance ? nearness : { ...nearness, distance: 0 };
