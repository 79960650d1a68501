/** More steps than any remedy is looked for in. */
const mostSteps = 100_000;

/**
 * How many steps it takes, at least, until something holds: the smallest count from 0 to `most` for which `holds`
 * does, where it goes on holding with more. Undefined where it does not hold at `most` either.
 */
export function leastSteps(most: number, holds: (steps: number) => boolean): number | undefined {
  let high = Math.min(Math.floor(most), mostSteps);
  if (!(high >= 0) || !holds(high)) return undefined;
  let low = -1;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (holds(middle)) high = middle;
    else low = middle;
  }
  return high;
}
