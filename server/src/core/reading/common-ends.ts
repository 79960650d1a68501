/** Compares halves instead of characters: comparing two slices is far quicker than a loop over them. */
export function commonPrefix(a: string, b: string): number {
  let low = 0;
  let high = Math.min(a.length, b.length);
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (a.slice(low, middle) === b.slice(low, middle)) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** As far as it does not overlap a common prefix. */
export function commonSuffix(a: string, b: string, prefix: number): number {
  let low = 0;
  let high = Math.min(a.length, b.length) - prefix;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (a.slice(a.length - middle, a.length - low) === b.slice(b.length - middle, b.length - low))
      low = middle;
    else high = middle - 1;
  }
  return low;
}
