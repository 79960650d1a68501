import type { Elements } from "./elements";
import { reference } from "./model";
import { branchWay } from "./shape";
import { zeros } from "./zeros";

/**
 * Rigid connections that hang together, from one of their nodes outwards: each node after its parent, one walk
 * after the other. By stop of these walks:
 */
export interface RigidWalks {
  /** Its node, or the reference. */
  readonly node: Int32Array;
  /** The first stop of its walk. */
  readonly first: Int32Array;
  /** The stop that it was reached from; −1 for the first of a walk. */
  readonly parent: Int32Array;
  /** The branch that it was reached by, where that is the only way from what lies beyond to the rest; else −1. */
  readonly by: Int32Array;
  /** 1 where that branch leads from here to the parent, and not from there to here. */
  readonly isUpwards: Uint8Array;
}

/** @param ways by branch, its `branchWay` */
export function walkRigid({ nodeCount, from, to }: Elements, ways: Uint8Array): RigidWalks {
  const ground = nodeCount;
  const place = (node: number) => (node === reference ? ground : node);
  // Most nodes have none.
  const leading = new Array<Way[] | undefined>(ground + 1).fill(undefined);
  const lead = (node: number, way: Way) => {
    const known = leading[node];
    if (known) known.push(way);
    else leading[node] = [way];
  };
  ways.forEach((way, branch) => {
    const start = place(from[branch]!);
    const end = place(to[branch]!);
    if (way !== branchWay.rigid || start === end) return;
    lead(start, { branch, end });
    lead(end, { branch, end: start });
  });

  const stops: Stop[] = [];
  const met = new Int32Array(ground + 1).fill(-1);
  for (let root = 0; root <= ground; root++) {
    if (met[root] !== -1 || !leading[root]) continue;
    const first = stops.length;
    const walk = walkDepthFirst(root, leading, met);
    const earliest = earliestOf(walk, leading, met);
    walk.forEach(({ node, parent, by }, index) => {
      stops.push({
        node: node === ground ? reference : node,
        first,
        parent: parent < 0 ? -1 : first + parent,
        by: parent >= 0 && earliest[index]! >= index ? by : -1,
        isUpwards: parent >= 0 && place(from[by]!) === node,
      });
    });
  }
  return {
    node: Int32Array.from(stops, ({ node }) => node),
    first: Int32Array.from(stops, ({ first }) => first),
    parent: Int32Array.from(stops, ({ parent }) => parent),
    by: Int32Array.from(stops, ({ by }) => by),
    isUpwards: Uint8Array.from(stops, ({ isUpwards }) => Number(isUpwards)),
  };
}

/**
 * Currents of rigid connections, from what the rest of the network puts into their nodes.
 *
 * A connection that is the only one between two sides carries the sum of one side. In a loop of rigid
 * connections the division is undetermined, and so is a current between two sides that both have a node
 * whose inflow is not known.
 *
 * @param inflow by node, into the rigid connections; NaN where it is not known. The reference's never is.
 * @param amps by branch, takes each current that is determined, along `from` → `to`
 */
export function giveRigidAmps(walks: RigidWalks, inflow: Float64Array, amps: Float64Array): void {
  const { node, first, parent, by, isUpwards } = walks;
  /** By stop, of all that lies beyond it, itself included: the known inflow, and how many have an unknown one. */
  const { sums, unknown } = zeros({ sums: node.length, unknown: node.length });
  for (let stop = node.length - 1; stop >= 0; stop--) {
    const own = node[stop] === reference ? Number.NaN : inflow[node[stop]!]!;
    if (Number.isNaN(own)) unknown[stop]! += 1;
    else sums[stop]! += own;
    const above = parent[stop]!;
    if (above < 0) continue;
    sums[above]! += sums[stop]!;
    unknown[above]! += unknown[stop]!;
  }
  for (let stop = 0; stop < node.length; stop++) {
    const branch = by[stop]!;
    if (branch < 0) continue;
    const root = first[stop]!;
    if (unknown[stop] !== 0 && unknown[stop] !== unknown[root]) continue;
    const upwards = unknown[stop] === 0 ? sums[stop]! : sums[stop]! - sums[root]!;
    amps[branch] = isUpwards[stop] ? upwards : 0 - upwards;
  }
}

interface Stop {
  readonly node: number;
  readonly first: number;
  readonly parent: number;
  readonly by: number;
  readonly isUpwards: boolean;
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
