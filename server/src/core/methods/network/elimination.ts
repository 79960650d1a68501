/**
 * The symbolic half of the factorisation: in which order the unknowns are eliminated, and which pairs of
 * them that ties together. It depends on the connections alone.
 *
 * Eliminating a node of a resistive network replaces its star of branches by the mesh of its neighbours
 * (star–mesh transformation). Each time the node with the fewest neighbours goes (minimum degree), so that
 * a near-tree stays one: leaves and series nodes make no new pair that matters.
 */
export interface Elimination {
  readonly size: number;
  /** By unknown: when it is eliminated. */
  readonly stepOf: Int32Array;
  /** Step k has the pairs `start[k]` … `start[k + 1] − 1`. */
  readonly start: Int32Array;
  /** By pair: the later step that it leads to; ascending within a step. */
  readonly later: Int32Array;
  /** For each step, for each two of its pairs in order: the pair between their far ends. */
  readonly mesh: Int32Array;
}

/** Plans the elimination of `size` unknowns where `edges` (flat, two by two) say which are connected. */
export function planElimination(size: number, edges: readonly number[]): Elimination {
  const neighbours = Array.from({ length: size }, () => new Set<number>());
  for (let i = 0; i < edges.length; i += 2) {
    const a = edges[i]!;
    const b = edges[i + 1]!;
    if (a === b) continue;
    neighbours[a]!.add(b);
    neighbours[b]!.add(a);
  }
  const order = eliminate(neighbours);
  const stepOf = new Int32Array(size);
  order.forEach((unknown, step) => {
    stepOf[unknown] = step;
  });

  const columns = order.map((unknown) => [...neighbours[unknown]!].map((other) => stepOf[other]!));
  for (const column of columns) column.sort((a, b) => a - b);
  const start = new Int32Array(size + 1);
  columns.forEach((column, step) => {
    start[step + 1] = start[step]! + column.length;
  });
  const later = Int32Array.from(columns.flat());
  const plan = { size, stepOf, start, later, mesh: new Int32Array(0) };

  const mesh: number[] = [];
  for (const column of columns) {
    column.forEach((near, index) => {
      for (let other = index + 1; other < column.length; other++)
        mesh.push(pairOf(plan, near, column[other]!));
    });
  }
  return { ...plan, mesh: Int32Array.from(mesh) };
}

/** The pair between two steps that are neighbours when the earlier is eliminated; −1 when they are not. */
export function pairOf({ start, later }: Elimination, a: number, b: number): number {
  const near = Math.min(a, b);
  const far = Math.max(a, b);
  let low = start[near]!;
  let high = start[near + 1]!;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (later[middle]! < far) low = middle + 1;
    else high = middle;
  }
  return low < start[near + 1]! && later[low] === far ? low : -1;
}

/** Leaves in `neighbours` those at the time of elimination, and answers the order. */
function eliminate(neighbours: readonly Set<number>[]): number[] {
  const order: number[] = [];
  const gone = new Uint8Array(neighbours.length);
  // A node is listed again whenever its degree changes; entries that no longer hold are skipped.
  const byDegree: number[][] = [];
  const list = (node: number) => {
    const degree = neighbours[node]!.size;
    while (byDegree.length <= degree) byDegree.push([]);
    byDegree[degree]!.push(node);
  };
  for (let node = neighbours.length - 1; node >= 0; node--) list(node);

  for (let degree = 0; degree < byDegree.length; ) {
    const node = byDegree[degree]!.pop();
    if (node === undefined) {
      degree += 1;
      continue;
    }
    const around = neighbours[node]!;
    if (gone[node] || around.size !== degree) continue;
    gone[node] = 1;
    order.push(node);
    const ring = [...around];
    for (const one of ring) {
      const its = neighbours[one]!;
      its.delete(node);
      for (const other of ring) if (other !== one) its.add(other);
    }
    for (const one of ring) list(one);
    degree = Math.max(0, degree - 1);
  }
  return order;
}
