import { DisjointSets } from "./disjoint-sets";
import type { Elements } from "./elements";
import { type Elimination, pairOf, planElimination } from "./elimination";
import { reference } from "./model";
import { type RigidWalks, walkRigid } from "./rigid-amps";
import { branchWay } from "./shape";

/**
 * The network with rigidly connected nodes merged and open branches left out: what stays the same as long as no
 * branch is switched. Unknowns are numbered by their step of elimination; `reference` stands for every node that
 * is rigidly grounded.
 */
export interface Plan {
  readonly elements: Elements;
  readonly elimination: Elimination;
  readonly nodeUnknown: Int32Array;
  /** By element: the unknowns at its ends. */
  readonly from: Int32Array;
  readonly to: Int32Array;
  /** By element: its pair in the elimination; −1 when an end is the reference or both are one unknown, or it is open. */
  readonly pair: Int32Array;
  /** By source: the unknown that it feeds. */
  readonly fed: Int32Array;
  /** The branches that are neither rigid nor open. */
  readonly resistive: Int32Array;
  readonly rigid: RigidWalks;
}

/** @param ways by branch, its `branchWay` */
export function makePlan(elements: Elements, ways: Uint8Array): Plan {
  const { nodeCount } = elements;
  const ground = nodeCount;
  const place = (node: number) => (node === reference ? ground : node);
  const merged = new DisjointSets(nodeCount + 1);
  ways.forEach((way, branch) => {
    if (way === branchWay.rigid) merged.join(place(elements.from[branch]!), place(elements.to[branch]!));
  });

  const grounded = merged.find(ground);
  const numbers = new Int32Array(nodeCount + 1).fill(reference);
  let size = 0;
  for (let node = 0; node < nodeCount; node++) {
    if (merged.find(node) === node && node !== grounded) numbers[node] = size++;
  }
  const numberOf = (node: number) => numbers[merged.find(place(node))]!;

  const from = elements.from.map(numberOf);
  const to = elements.to.map(numberOf);
  const isPair = (element: number) =>
    from[element] !== reference &&
    to[element] !== reference &&
    from[element] !== to[element] &&
    ways[element] !== branchWay.open;
  const edges: number[] = [];
  for (let element = 0; element < from.length; element++) {
    if (isPair(element)) edges.push(from[element]!, to[element]!);
  }
  const elimination = planElimination(size, edges);
  const pair = from.map((a, element) =>
    isPair(element) ? pairOf(elimination, elimination.stepOf[a]!, elimination.stepOf[to[element]!]!) : -1,
  );
  const stepOf = (number: number) => (number === reference ? reference : elimination.stepOf[number]!);
  const nodeUnknown = Int32Array.from({ length: nodeCount }, (_, node) => stepOf(numberOf(node)));
  return {
    elements,
    elimination,
    nodeUnknown,
    from: from.map(stepOf),
    to: to.map(stepOf),
    pair,
    fed: elements.fed.map((node) => (node === reference ? reference : nodeUnknown[node]!)),
    resistive: Int32Array.from([...ways.keys()].filter((branch) => ways[branch] === branchWay.resistive)),
    rigid: walkRigid(elements, ways),
  };
}
