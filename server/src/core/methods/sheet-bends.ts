/** Flat layout of bent sheet; lengths in any one unit. */
import type { Source } from "../source";

/** Its Table 4-7 has the same numbers as the two formulas. */
export const bendSource: Source = {
  document: "FAA AC 43.13-1B",
  edition: "9/8/98",
  at: "par. 4-56, Table 4-7",
  standing: "published",
};

/**
 * From the tangent of a bend to where the outsides of its legs would meet.
 *
 * @param angle how far the sheet is turned out of the flat, rad, less than half a turn
 * @param radius inside
 */
export function setback(angle: number, radius: number, thickness: number): number {
  return Math.tan(angle / 2) * (radius + thickness);
}

/** Length of sheet that a bend takes up; its angle in degrees, as the formula has it. */
export function bendAllowance(degrees: number, radius: number, thickness: number): number {
  return (0.01743 * radius + 0.0078 * thickness) * degrees;
}
