import { reference, type Terminals } from "./model";

/** Rigid connections that hang together, from one of their nodes outwards: each node after its parent. */
export type RigidWalk = readonly Stop[];

interface Stop {
  /** Undefined for the reference. */
  readonly node: number | undefined;
  /** Place in the walk of the node that it was reached from; −1 for the first. */
  readonly parent: number;
  /** The branch that it was reached by. */
  readonly by: number;
  /** That branch leads from here to the parent, and not from there to here. */
  readonly isUpwards: boolean;
  /** That branch is the only way from what lies beyond it to the rest. */
  readonly isOnlyWay: boolean;
}

/** @param rigid by branch, 1 where it is a rigid connection */
export function walkRigid(
  nodeCount: number,
  branches: readonly Terminals[],
  rigid: Uint8Array,
): readonly RigidWalk[] {
  const ground = nodeCount;
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
    if (rigid[index] !== 1 || from === to) return;
    lead(from, { branch: index, end: to });
    lead(to, { branch: index, end: from });
  });

  const walks: RigidWalk[] = [];
  const met = new Int32Array(ground + 1).fill(-1);
  for (let root = 0; root <= ground; root++) {
    if (met[root] !== -1 || !ways[root]) continue;
    const walk = walkDepthFirst(root, ways, met);
    const earliest = earliestOf(walk, ways, met);
    walks.push(
      walk.map(({ node, parent, by }, index) => ({
        node: node === ground ? undefined : node,
        parent,
        by,
        isUpwards: parent >= 0 && place(branches[by]!.from) === node,
        isOnlyWay: parent >= 0 && earliest[index]! >= index,
      })),
    );
  }
  return walks;
}

/**
 * Currents of rigid connections, from what the rest of the network puts into their nodes.
 *
 * A connection that is the only one between two sides carries the sum of one side. In a loop of rigid
 * connections the division is undetermined, and so is a current between two sides that both have a node
 * whose inflow is not known.
 *
 * @param inflow by node, into the rigid connections; NaN where it is not known. The reference's never is.
 * @param give takes each current that is determined, along `from` → `to` of its branch
 */
export function rigidAmps(
  walks: readonly RigidWalk[],
  inflow: Float64Array,
  give: (branch: number, amps: number) => void,
): void {
  for (const walk of walks) {
    /** By stop, of all that lies beyond it, itself included: the known inflow, and how many have an unknown one. */
    const sums = new Float64Array(walk.length);
    const unknown = new Int32Array(walk.length);
    for (let index = walk.length - 1; index >= 0; index--) {
      const { node, parent } = walk[index]!;
      const own = node === undefined ? Number.NaN : inflow[node]!;
      if (Number.isNaN(own)) unknown[index]! += 1;
      else sums[index]! += own;
      if (parent < 0) continue;
      sums[parent]! += sums[index]!;
      unknown[parent]! += unknown[index]!;
    }
    walk.forEach(({ by, isUpwards, isOnlyWay }, index) => {
      if (!isOnlyWay) return;
      const [sum, all] = [sums[index]!, sums[0]!];
      const upwards = unknown[index] === 0 ? sum : unknown[0] === unknown[index] ? sum - all : undefined;
      if (upwards !== undefined) give(by, isUpwards ? upwards : 0 - upwards);
    });
  }
}

interface Way {
  readonly branch: number;
  readonly end: number;
}

/** By node. */
type Ways = readonly (readonly Way[] | undefined)[];

interface Step {
  readonly node: number;
  readonly parent: number;
  readonly by: number;
}

/** The nodes that hang together with `root`, in the order met; `met` gets each one's place. */
function walkDepthFirst(root: number, ways: Ways, met: Int32Array): Step[] {
  const walk: Step[] = [{ node: root, parent: -1, by: -1 }];
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

/** By step: the earliest one that is reached from it or from beyond it, but by the way it was reached. */
function earliestOf(walk: readonly Step[], ways: Ways, met: Int32Array): Int32Array {
  const earliest = Int32Array.from(walk, ({ node, by }, index) =>
    ways[node]!.reduce(
      (first, { branch, end }) => (branch === by ? first : Math.min(first, met[end]!)),
      index,
    ),
  );
  for (let index = walk.length - 1; index > 0; index--) {
    const { parent } = walk[index]!;
    earliest[parent] = Math.min(earliest[parent]!, earliest[index]!);
  }
  return earliest;
}
