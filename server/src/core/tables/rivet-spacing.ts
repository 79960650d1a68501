/** How fasteners stand in a sheet: pitch, rows, and diameter against thickness. Lengths in shank diameters. */
import type { Source } from "../source";
import { type Covered, covered } from "./lookup";

export type Head = "protruding" | "countersunk";

const singleRow: Source = {
  document: "FAA AC 43.13-1B",
  edition: "9/8/98, Change 1 of 9/27/01",
  at: "par. 4-57",
  standing: "secondary",
  note: "as quoted by another page; NAVEDTRA 14018 has the same",
};

const doubleRow: Source = {
  document: "FAA AC 43.13-1B",
  edition: "9/8/98",
  at: "par. 4-58g and fig. 4-5",
  standing: "derived",
  note: "from its worked example: 20 rivets of 1/8 in in a row of 10 in",
};

const handbook: Source = {
  document: "FAA-H-8083-31",
  at: "ch. 4, rivet spacing",
  standing: "memory",
  note: "a study guide repeats it",
};

const navy: Source = { document: "NAVEDTRA 14018", at: "rivet spacing and selection", standing: "published" };

/**
 * Least pitch: 3 diameters in one or three rows, 4 in two; half a diameter more for countersunk heads, which
 * rests on memory.
 */
export function leastPitch(rows: number, head: Head): Covered<number> {
  const protruding = rows === 2 ? 4 : 3;
  if (head === "countersunk") return covered(protruding + 0.5, handbook);
  return covered(protruding, rows === 1 ? singleRow : rows === 2 ? doubleRow : handbook);
}

/** Pitch that is seldom exceeded: 8 diameters. The handbook's 10 to 12 rests on memory. */
export const widestPitch: Covered<number> = covered(8, navy, [
  "FAA-H-8083-31 allows 10 to 12 diameters (from memory).",
]);

/** Least distance between rows: 2.5 diameters. */
export const leastRowPitch: Covered<number> = covered(2.5, handbook);

/** AC 43.13-1B asks for about three times the sheet, in the next standard size; NAVEDTRA for no more. */
const nextSize: Source = {
  document: "FAA AC 43.13-1B",
  edition: "9/8/98",
  at: "par. 4-58g(2)(a)",
  standing: "published",
  note: "NAVEDTRA 14018 allows at most three times",
};

/** Shank diameter against the thickest sheet: at least its thickness, about three times it. */
export const diameterRange = {
  least: covered(1, navy),
  largest: covered(3, nextSize),
} as const;
