import { reference, type Terminals } from "./model";

/**
 * Currents of rigid connections, from what the rest of the network puts into their nodes.
 *
 * A connection that is the only one between two sides carries the sum of one side. In a loop of rigid
 * connections the division is undetermined, and so is a current between two sides that both have a node
 * whose inflow is not known.
 *
 * @param inflow by node, into the rigid connections; NaN where it is not known. The reference's never is.
 * @returns by branch, along `from` → `to`; undefined where undetermined, or not rigid
 */
export function rigidAmps(
  branches: readonly Terminals[],
  isRigid: (branch: number) => boolean,
  inflow: Float64Array,
): (number | undefined)[] {
  const ground = inflow.length;
  const place = (node: number) => (node === reference ? ground : node);
  // Most nodes have none.
  const ways = new Array<Way[] | undefined>(ground + 1).fill(undefined);
  const lead = (node: number, way: Way) => {
    const known = ways[node];
    if (known) known.push(way);
    else ways[node] = [way];
  };
  branches.forEach((branch, index) => {
    const from = place(branch.from);
    const to = place(branch.to);
    if (!isRigid(index) || from === to) return;
    lead(from, { branch: index, end: to });
    lead(to, { branch: index, end: from });
  });

  const amps: (number | undefined)[] = branches.map(() => undefined);
  const met = new Int32Array(ground + 1).fill(-1);
  for (let root = 0; root <= ground; root++) {
    if (met[root] !== -1 || !ways[root]) continue;
    const walk = walkDepthFirst(root, ways, met);
    const sides = sumSides(walk, ways, met, (node) => (node === ground ? Number.NaN : inflow[node]!));
    const all = sides[0]!;
    walk.forEach(({ node, parent, by }, index) => {
      const side = sides[index]!;
      if (parent < 0 || side.earliest < index) return;
      const upwards =
        side.unknown === 0 ? side.sum : all.unknown === side.unknown ? side.sum - all.sum : undefined;
      if (upwards === undefined) return;
      amps[by] = place(branches[by]!.from) === node ? upwards : 0 - upwards;
    });
  }
  return amps;
}

interface Way {
  readonly branch: number;
  readonly end: number;
}

/** By node. */
type Ways = readonly (readonly Way[] | undefined)[];

interface Stop {
  readonly node: number;
  /** Place in the walk of the node that it was reached from; −1 for the first. */
  readonly parent: number;
  readonly by: number;
}

/** The nodes that hang together with `root`, in the order met; `met` gets each one's place. */
function walkDepthFirst(root: number, ways: Ways, met: Int32Array): Stop[] {
  const walk: Stop[] = [{ node: root, parent: -1, by: -1 }];
  met[root] = 0;
  const open = [{ index: 0, next: 0 }];
  for (let at = open.at(-1); at; at = open.at(-1)) {
    const way = ways[walk[at.index]!.node]![at.next++];
    if (!way) open.pop();
    else if (met[way.end] === -1) {
      met[way.end] = walk.length;
      walk.push({ node: way.end, parent: at.index, by: way.branch });
      open.push({ index: walk.length - 1, next: 0 });
    }
  }
  return walk;
}

/** What lies beyond a stop of the walk, itself included. */
interface Side {
  /** Known inflow, and how many nodes have an unknown one. */
  sum: number;
  unknown: number;
  /** The earliest stop that it reaches but by the way it was reached. */
  earliest: number;
}

function sumSides(
  walk: readonly Stop[],
  ways: Ways,
  met: Int32Array,
  inflowOf: (node: number) => number,
): readonly Side[] {
  const sides = walk.map(({ node, by }, index): Side => {
    const inflow = inflowOf(node);
    const known = !Number.isNaN(inflow);
    const earliest = ways[node]!.reduce(
      (first, { branch, end }) => (branch === by ? first : Math.min(first, met[end]!)),
      index,
    );
    return { sum: known ? inflow : 0, unknown: known ? 0 : 1, earliest };
  });
  for (let index = walk.length - 1; index > 0; index--) {
    const side = sides[index]!;
    const above = sides[walk[index]!.parent]!;
    above.sum += side.sum;
    above.unknown += side.unknown;
    above.earliest = Math.min(above.earliest, side.earliest);
  }
  return sides;
}
