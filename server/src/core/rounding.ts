/**
 * What binary rounding may and may not decide.
 *
 * Values compare in full precision, but 35 in written in one record and 0.889 m in another must be the same
 * arm, and a sum must not leave an inclusive limit by the last bit of a double. The room below is far wider
 * than such noise, and far finer than any scale or tape reads.
 */
const room = 1e-9;

/**
 * Whether two numbers differ by no more than binary rounding.
 *
 * @param scale the size of the numbers that the two were computed from, where that is larger than they are:
 *   a small difference of large numbers carries the noise of the large ones
 */
export function sameWithinRounding(a: number, b: number, scale = 0): boolean {
  return a === b || Math.abs(a - b) < room * Math.max(Math.abs(a), Math.abs(b), scale);
}

/** `value <= limit`, where noise beyond the limit still counts as at the limit. */
export function isAtMost(value: number, limit: number, scale = 0): boolean {
  return value <= limit || sameWithinRounding(value, limit, scale);
}

/** `value < limit`, where noise short of the limit does not count as below it. */
export function isBelow(value: number, limit: number, scale = 0): boolean {
  return value < limit && !sameWithinRounding(value, limit, scale);
}
