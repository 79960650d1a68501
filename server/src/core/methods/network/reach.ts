import { DisjointSets } from "./disjoint-sets";
import { type Condition, type Island, reference, type Topology } from "./model";
import type { Plan } from "./plan";
import type { Tie } from "./ties";

/** What the sources reach, through branches and resistive loads; never through the reference. */
export interface Reach {
  /** By unknown, 1 where nothing ties it to the reference. */
  readonly floating: Uint8Array;
  /** By load, 1 where it is on and can draw. */
  readonly alive: Uint8Array;
  readonly islands: readonly Island[];
  /** By unknown: the part of the network that it belongs to, named by one of its unknowns. */
  readonly part: Int32Array;
}

/** Where current can flow at all in a condition. */
export function findReach(topology: Topology, condition: Condition, plan: Plan, ties: readonly Tie[]): Reach {
  const { size } = plan.elimination;
  const sets = new DisjointSets(size);
  const grounded: number[] = [];
  const connect = (element: number) => {
    const from = plan.from[element]!;
    const to = plan.to[element]!;
    if (from !== reference && to !== reference) sets.join(from, to);
    else if (from !== to) grounded.push(Math.max(from, to));
  };
  const firstLoad = topology.branches.length;
  condition.ohms.forEach((ohms, branch) => {
    if (ohms !== Number.POSITIVE_INFINITY) connect(branch);
  });
  condition.loads.forEach((load, index) => {
    if (load?.kind === "resistance") connect(firstLoad + index);
  });

  const part = new Int32Array(size);
  for (let unknown = 0; unknown < size; unknown++) part[unknown] = sets.find(unknown);
  const fed = new Set(ties.flatMap(({ at }) => (at === reference ? [] : [part[at]!])));
  const returning = new Set([...fed, ...grounded.map((unknown) => part[unknown]!)]);
  /** Parts where current flows: those with a source, and those that lead it back from another part's load. */
  const live = new Set(fed);
  const alive = new Uint8Array(condition.loads.length);
  const dead = new Map<number, Dead>();
  const partAt = (unknown: number) => (unknown === reference ? reference : part[unknown]!);

  condition.loads.forEach((load, index) => {
    if (!load || load.kind === "resistance") return;
    const from = partAt(plan.from[firstLoad + index]!);
    const to = partAt(plan.to[firstLoad + index]!);
    const lacks = !fed.has(from) ? "source" : to !== reference && !returning.has(to) ? "return" : undefined;
    if (lacks) note(dead, lacks === "return" || from === reference ? to : from, index, lacks);
    else {
      alive[index] = 1;
      live.add(to);
    }
  });
  condition.loads.forEach((load, index) => {
    if (load?.kind !== "resistance") return;
    const from = partAt(plan.from[firstLoad + index]!);
    const at = from === reference ? partAt(plan.to[firstLoad + index]!) : from;
    if (at !== reference && live.has(at)) alive[index] = 1;
    else note(dead, at, index, "source");
  });

  const floating = new Uint8Array(size);
  part.forEach((root, unknown) => {
    if (returning.has(root)) return;
    floating[unknown] = 1;
    if (!dead.has(root)) dead.set(root, { loads: [], lacks: "source" });
  });
  return { floating, alive, islands: islandsOf(dead, part, plan.nodeUnknown), part };
}

interface Dead {
  readonly loads: number[];
  lacks: Island["lacks"];
}

function note(dead: Map<number, Dead>, part: number, load: number, lacks: Island["lacks"]): void {
  const known = dead.get(part);
  if (!known) dead.set(part, { loads: [load], lacks });
  else {
    known.loads.push(load);
    if (lacks === "source") known.lacks = lacks;
  }
}

function islandsOf(dead: ReadonlyMap<number, Dead>, part: Int32Array, nodeUnknown: Int32Array): Island[] {
  const nodes = new Map<number, number[]>([...dead.keys()].map((root) => [root, []]));
  nodeUnknown.forEach((unknown, node) => {
    if (unknown !== reference) nodes.get(part[unknown]!)?.push(node);
  });
  return [...dead]
    .map(([root, { loads, lacks }]) => ({
      nodes: nodes.get(root)!,
      loads: loads.sort((a, b) => a - b),
      lacks,
    }))
    .sort((a, b) => (a.nodes[0] ?? reference) - (b.nodes[0] ?? reference));
}
