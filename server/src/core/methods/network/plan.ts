import { DisjointSets } from "./disjoint-sets";
import { type Elimination, pairOf, planElimination } from "./elimination";
import { reference, type Topology } from "./model";
import { type RigidWalk, walkRigid } from "./rigid-amps";

/**
 * The network with rigidly connected nodes merged: what stays the same as long as the same branches are
 * rigid. Unknowns are numbered by their step of elimination; `reference` stands for every node that is
 * rigidly grounded. Elements are the branches, then the loads.
 */
export interface Plan {
  readonly elimination: Elimination;
  readonly nodeUnknown: Int32Array;
  /** By element: the unknowns at its ends. */
  readonly from: Int32Array;
  readonly to: Int32Array;
  /** By element: its pair in the elimination; −1 when an end is the reference or both are one unknown. */
  readonly pair: Int32Array;
  readonly rigid: readonly RigidWalk[];
}

/** @param rigid by branch, 1 where it is a rigid connection */
export function makePlan({ nodeCount, branches, loads }: Topology, rigid: Uint8Array): Plan {
  const ground = nodeCount;
  const place = (node: number) => (node === reference ? ground : node);
  const merged = new DisjointSets(nodeCount + 1);
  branches.forEach(({ from, to }, index) => {
    if (rigid[index]) merged.join(place(from), place(to));
  });

  const grounded = merged.find(ground);
  const numbers = new Int32Array(nodeCount + 1).fill(reference);
  let size = 0;
  for (let node = 0; node < nodeCount; node++) {
    if (merged.find(node) === node && node !== grounded) numbers[node] = size++;
  }
  const numberOf = (node: number) => numbers[merged.find(place(node))]!;

  const elements = [...branches, ...loads];
  const ends = elements.map(({ from, to }) => [numberOf(from), numberOf(to)] as const);
  const elimination = planElimination(
    size,
    ends.filter(([from, to]) => from !== reference && to !== reference).flat(),
  );
  const stepOf = (number: number) => (number === reference ? reference : elimination.stepOf[number]!);
  const from = Int32Array.from(ends, ([end]) => stepOf(end));
  const to = Int32Array.from(ends, ([, end]) => stepOf(end));
  return {
    elimination,
    nodeUnknown: Int32Array.from({ length: nodeCount }, (_, node) => stepOf(numberOf(node))),
    from,
    to,
    pair: from.map((a, element) => {
      const b = to[element]!;
      return a === reference || b === reference || a === b ? -1 : pairOf(elimination, a, b);
    }),
    rigid: walkRigid(nodeCount, branches, rigid),
  };
}
