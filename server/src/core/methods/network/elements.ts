import type { Terminals, Topology } from "./model";

/** A topology as flat lists. Elements are the branches, then the loads. */
export interface Elements {
  readonly nodeCount: number;
  /** How many of the elements are branches. */
  readonly branchCount: number;
  readonly loadCount: number;
  /** By element: the nodes at its ends. */
  readonly from: Int32Array;
  readonly to: Int32Array;
  /** By source: its node. */
  readonly fed: Int32Array;
}

export function elementsOf({ nodeCount, branches, loads, sources }: Topology): Elements {
  const elements: readonly Terminals[] = [...branches, ...loads];
  return {
    nodeCount,
    branchCount: branches.length,
    loadCount: loads.length,
    from: Int32Array.from(elements, ({ from }) => from),
    to: Int32Array.from(elements, ({ to }) => to),
    fed: Int32Array.from(sources, ({ node }) => node),
  };
}
