/**
 * Stress concentration at openings in plates under one load: all factors are on the net nominal stress, that of
 * the section that is left, except where a plate is endless and both are the same.
 */
import type { Source } from "../source";
import { covered, type Lookup, notCovered, range } from "../tables/lookup";

export const roarkCircle: Source = {
  document: "Roark's Formulas for Stress and Strain",
  at: "Table 17.1, circular hole in a plate of finite width",
  standing: "published",
  note: "on the net nominal stress",
};

export const roarkRoundedRectangle: Source = {
  document: "Roark's Formulas for Stress and Strain",
  at: "Table 17.1, rectangular hole with round corners in a wide plate",
  standing: "published",
  note: "for a wide plate; held on the net stress of a finite one, which errs to the safe side (derived)",
};

/**
 * Factor of a circular hole in the middle of a plate of finite width: 3 - 3.13x + 3.66x2 - 1.53x3, x = d / W.
 *
 * @param share hole diameter over plate width, 0 to 1
 */
export function circleFactor(share: number): Lookup<number> {
  if (!(share >= 0 && share < 1)) {
    const covers = range(0, 1);
    return notCovered({ quantity: "hole over width", asked: share, unit: "", covers }, roarkCircle);
  }
  return covered(3 - 3.13 * share + 3.66 * share ** 2 - 1.53 * share ** 3, roarkCircle);
}

/**
 * Factor of a rectangle with round corners, or of a slot, in a wide plate.
 *
 * @param a half of the opening across the load
 * @param b half of the opening along the load
 * @param r corner radius; the polynomial holds for 0.2 <= r/b <= 1 and 0.3 <= b/a <= 1
 */
export function roundedRectangleFactor(a: number, b: number, r: number): Lookup<number> {
  const y = b / a;
  const q = r / b;
  const source = roarkRoundedRectangle;
  const isWithin = (value: number, least: number) => value >= least - 1e-9 && value <= 1 + 1e-9;
  if (!isWithin(y, 0.3)) {
    const quantity = "opening along the load over across it";
    return notCovered({ quantity, asked: y, unit: "", covers: range(0.3, 1) }, source);
  }
  if (!isWithin(q, 0.2)) {
    const quantity = "corner radius over half the opening along the load";
    return notCovered({ quantity, asked: q, unit: "", covers: range(0.2, 1) }, source);
  }
  const s = Math.sqrt(q);
  const c1 = 14.815 - 15.774 * s + 8.149 * q;
  const c2 = -11.201 - 9.75 * s + 9.6 * q;
  const c3 = 0.202 + 38.662 * s - 27.374 * q;
  const c4 = 3.232 - 23.002 * s + 15.482 * q;
  return covered(c1 + c2 * y + c3 * y ** 2 + c4 * y ** 3, source);
}

/** Mean stress in what is left of a plate: force over thickness times the width that is left, in any one unit. */
export const netStress = (force: number, thickness: number, width: number, opening: number): number =>
  force / (thickness * (width - opening));
