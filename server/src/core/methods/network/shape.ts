import type { Condition } from "./model";
import { canGive } from "./ties";

/**
 * What a condition makes of the parts of a topology, whatever its numbers are. What was planned for a shape holds
 * for as long as nothing is switched.
 */
export interface Shape {
  readonly branches: Uint8Array;
  readonly loads: Uint8Array;
  /** 1 for one that can give. */
  readonly sources: Uint8Array;
}

export const branchWay = { resistive: 0, rigid: 1, open: 2 } as const;

/** `drawing`: a current that does not follow from a resistance. */
export const loadWay = { off: 0, resistive: 1, drawing: 2 } as const;

export function shapeOf({ ohms, loads, sources }: Condition): Shape {
  const shape = {
    branches: new Uint8Array(ohms.length),
    loads: new Uint8Array(loads.length),
    sources: new Uint8Array(sources.length),
  };
  for (let branch = 0; branch < ohms.length; branch++) {
    const value = ohms[branch]!;
    if (value === 0) shape.branches[branch] = branchWay.rigid;
    else if (value === Number.POSITIVE_INFINITY) shape.branches[branch] = branchWay.open;
  }
  for (let load = 0; load < loads.length; load++) {
    const kind = loads[load]?.kind;
    if (kind) shape.loads[load] = kind === "resistance" ? loadWay.resistive : loadWay.drawing;
  }
  for (let source = 0; source < sources.length; source++) {
    if (canGive(sources[source])) shape.sources[source] = 1;
  }
  return shape;
}
