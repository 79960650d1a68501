import { DisjointSets } from "./disjoint-sets";
import { type Island, reference } from "./model";
import type { Plan } from "./plan";
import { branchWay, loadWay, type Shape } from "./shape";

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

/** Where current can flow at all in a condition of this shape. */
export function findReach({ branches, loads, sources }: Shape, plan: Plan): Reach {
  const { size } = plan.elimination;
  const sets = new DisjointSets(size);
  const grounded: number[] = [];
  const connect = (element: number) => {
    const from = plan.from[element]!;
    const to = plan.to[element]!;
    if (from !== reference && to !== reference) sets.join(from, to);
    else if (from !== to) grounded.push(Math.max(from, to));
  };
  const firstLoad = plan.elements.branchCount;
  branches.forEach((way, branch) => {
    if (way !== branchWay.open) connect(branch);
  });
  loads.forEach((way, load) => {
    if (way === loadWay.resistive) connect(firstLoad + load);
  });

  const part = new Int32Array(size);
  for (let unknown = 0; unknown < size; unknown++) part[unknown] = sets.find(unknown);
  const partAt = (unknown: number) => (unknown === reference ? reference : part[unknown]!);
  const fed = new Set<number>();
  plan.fed.forEach((unknown, source) => {
    if (sources[source] === 1 && unknown !== reference) fed.add(part[unknown]!);
  });
  const returning = new Set([...fed, ...grounded.map((unknown) => part[unknown]!)]);
  /** Parts where current flows: those with a source, and those that lead it back from another part's load. */
  const live = new Set(fed);
  const alive = new Uint8Array(loads.length);
  const dead = new Map<number, Dead>();

  loads.forEach((way, load) => {
    if (way !== loadWay.drawing) return;
    const from = partAt(plan.from[firstLoad + load]!);
    const to = partAt(plan.to[firstLoad + load]!);
    const lacks = !fed.has(from) ? "source" : to !== reference && !returning.has(to) ? "return" : undefined;
    if (lacks) note(dead, lacks === "return" || from === reference ? to : from, load, lacks);
    else {
      alive[load] = 1;
      live.add(to);
    }
  });
  loads.forEach((way, load) => {
    if (way !== loadWay.resistive) return;
    const from = partAt(plan.from[firstLoad + load]!);
    const at = from === reference ? partAt(plan.to[firstLoad + load]!) : from;
    if (at !== reference && live.has(at)) alive[load] = 1;
    else note(dead, at, load, "source");
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
