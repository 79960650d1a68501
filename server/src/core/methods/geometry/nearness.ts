import { minus, plus, times } from "./point";
import type { Nearness } from "./segment";

/**
 * The nearness of two things that have grown towards each other by `first` and `second`. The distance goes
 * negative when they have grown past each other; the points are then of no use.
 */
export function grown({ distance, between: [a, b] }: Nearness, first: number, second: number): Nearness {
  if (distance === 0) return { distance: -first - second, between: [a, b] };
  const unit = times(minus(b, a), 1 / distance);
  return {
    distance: distance - first - second,
    between: [plus(a, times(unit, first)), minus(b, times(unit, second))],
  };
}

/** The same, with a distance within the tolerance given as the touch that it is. */
export const settled = (nearness: Nearness, tolerance: number): Nearness =>
  nearness.distance > tolerance ? nearness : { ...nearness, distance: 0 };
