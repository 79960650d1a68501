/**
 * The value that `share` of the samples do not exceed, by nearest rank: always one that was measured.
 *
 * @param {readonly number[]} samples at least one
 * @param {number} share above 0, up to 1
 */
export function quantile(samples, share) {
  const rising = [...samples].sort((a, b) => a - b);
  return rising[Math.ceil(share * rising.length) - 1];
}

/** @param {readonly number[]} samples at least one */
export function median(samples) {
  return quantile(samples, 0.5);
}

/** Numbers from 0 up to 1 that are the same in each run (mulberry32). */
export function randomNumbers(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}
