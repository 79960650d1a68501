import type { Source } from "../source";
import { type Covered, covered } from "./lookup";

/** AC 43.13-1B par. 4-57, read as another page quotes it; page 4-17 itself was not found. */
const protrudingSource: Source = {
  document: "FAA AC 43.13-1B",
  edition: "9/8/98, Change 1 of 9/27/01",
  at: "par. 4-57",
  standing: "secondary",
  note: "as quoted by another page",
};

/** FAA-H-8083-31 ch. 4. */
const countersunkSource: Source = {
  document: "FAA-H-8083-31",
  at: "ch. 4, edge distance",
  standing: "memory",
  note: "a study guide repeats it",
};

/**
 * Least distance from a fastener's centre to an edge, in shank diameters: 2 for protruding heads, 2.5 for
 * countersunk ones, single row. The edge of an opening is an edge.
 */
export function fastenerEdgeDistance(head: "protruding" | "countersunk"): Covered<number> {
  return head === "protruding" ? covered(2, protrudingSource) : covered(2.5, countersunkSource);
}
