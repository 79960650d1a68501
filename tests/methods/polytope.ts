import type { Loadable } from "../../server/src/core/methods/loadable";

/**
 * The corners of the set of all loadings of one weight, found by brute force: every choice of as many limits
 * as there are stations, less one for the weight, solved as equations, and kept when it respects all limits.
 * A linear function has its least and its greatest value in such corners. Knows nothing of arms and filling.
 */
export function cornersOf({ fixed, stations, groups = [] }: Loadable, weight: number): number[][] {
  const size = stations.length;
  const unit = (index: number) => stations.map((_, other) => (other === index ? 1 : 0));
  const limits: Limit[] = [
    ...stations.map(({ least }, index) => ({ row: unit(index), bound: least, sign: -1 })),
    ...stations.map(({ most }, index) => ({ row: unit(index), bound: most, sign: 1 })),
    ...groups.map(({ ids, most }) => ({
      row: stations.map(({ id }) => (ids.includes(id) ? 1 : 0)),
      bound: most,
      sign: 1,
    })),
  ];
  const total: Limit = { row: stations.map(() => 1), bound: weight - fixed.weight, sign: 1 };
  return choices(limits, size - 1).flatMap((chosen) => {
    const corner = solve([total, ...chosen]);
    return corner && limits.every((limit) => respects(corner, limit)) ? [corner] : [];
  });
}

interface Limit {
  readonly row: readonly number[];
  readonly bound: number;
  /** 1: at most the bound; -1: at least. */
  readonly sign: number;
}

function respects(point: readonly number[], { row, bound, sign }: Limit): boolean {
  const value = row.reduce((sum, factor, index) => sum + factor * point[index]!, 0);
  return sign * (value - bound) <= 1e-9;
}

function choices<T>(list: readonly T[], count: number): T[][] {
  if (count === 0) return [[]];
  return list.flatMap((first, index) =>
    choices(list.slice(index + 1), count - 1).map((rest) => [first, ...rest]),
  );
}

/** Elimination with the largest pivot; undefined when the equations leave a choice or contradict. */
function solve(equations: readonly Limit[]): number[] | undefined {
  const rows = equations.map(({ row, bound }) => [...row, bound]);
  const size = rows.length;
  for (let column = 0; column < size; column++) {
    const order = rows.slice(column).toSorted((a, b) => Math.abs(b[column]!) - Math.abs(a[column]!));
    rows.splice(column, order.length, ...order);
    const pivot = rows[column]!;
    if (Math.abs(pivot[column]!) < 1e-9) return undefined;
    rows.forEach((row, index) => {
      if (index === column) return;
      const factor = row[column]! / pivot[column]!;
      for (let k = column; k <= size; k++) row[k] = row[k]! - factor * pivot[k]!;
    });
  }
  return rows.map((row, index) => row[size]! / row[index]!);
}
