/**
 * Straight-line distance between the centres of neighbours when `count` fasteners stand evenly on a bolt
 * circle of this diameter. Infinity when there is no neighbour (`count` below 2).
 *
 * Source: derived; the chord of an angle 2π/n is D·sin(π/n).
 */
export function boltCircleSpacing(diameter: number, count: number): number {
  return count < 2 ? Infinity : diameter * Math.sin(Math.PI / count);
}

/**
 * Area common to two circles of radius `r1` and `r2` whose centres are `apart`; all in one length unit.
 *
 * Source: derived; the sum of two circular segments on the common chord.
 */
export function circleOverlapArea(r1: number, r2: number, apart: number): number {
  if (apart >= r1 + r2) return 0;
  if (apart <= Math.abs(r1 - r2)) return Math.PI * Math.min(r1, r2) ** 2;
  return (
    segmentBeyond(r1, (apart ** 2 + r1 ** 2 - r2 ** 2) / (2 * apart)) +
    segmentBeyond(r2, (apart ** 2 + r2 ** 2 - r1 ** 2) / (2 * apart))
  );
}

/** Area of the part of a circle beyond a chord at this distance from the centre, negative past the centre. */
function segmentBeyond(radius: number, chord: number): number {
  const share = Math.min(1, Math.max(-1, chord / radius));
  return radius ** 2 * (Math.acos(share) - share * Math.sqrt(1 - share ** 2));
}
