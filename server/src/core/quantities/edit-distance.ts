/**
 * How many letters must be added, dropped, changed or swapped with their neighbour to turn one text into the
 * other (optimal string alignment). Takes time and room of the two lengths multiplied: for short texts.
 */
export function editDistance(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, column) => column);
  for (let row = 1; row <= a.length; row++) {
    const current = [row];
    for (let column = 1; column <= b.length; column++) {
      const same = a[row - 1] === b[column - 1];
      let best = Math.min(last[column]! + 1, current[column - 1]! + 1, last[column - 1]! + (same ? 0 : 1));
      if (a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1] && row > 1 && column > 1) {
        best = Math.min(best, beforeLast[column - 2]! + 1);
      }
      current.push(best);
    }
    beforeLast = last;
    last = current;
  }
  return last[b.length]!;
}
