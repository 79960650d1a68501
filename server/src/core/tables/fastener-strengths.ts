import type { Source } from "../source";
import { covered, type Lookup, list, notCovered } from "./lookup";

/** Kinds of fasteners with a strength that is known here; any other comes with its maker's. */
export type FastenerKind = "an-bolt" | "ad-rivet" | "other";

interface Strength {
  /** in */
  readonly diameter: number;
  /** lbf, single shear */
  readonly shear: number;
  readonly shearSource: Source;
  /** lbf */
  readonly tension?: number;
}

const noteD: Source = {
  document: "FAA AC 43.13-1B",
  edition: "9/8/98, Change 1 of 9/27/01",
  at: "Table 4-9, note d",
  standing: "published",
};
const byArea: Source = {
  document: "FAA AC 43.13-1B",
  edition: "9/8/98, Change 1 of 9/27/01",
  at: "Table 4-9, note d",
  standing: "derived",
  note: "the stress of the AN3 bolt's 2126 lbf, 75 ksi, times the nominal area",
};
const boltTension: Source = { document: "ANC-5", at: "tension of AN bolts", standing: "memory" };
const rivetShear: Source = {
  document: "MIL-HDBK-5",
  at: "Table 8.1.2(b), 2117-T3",
  standing: "memory",
  note: "30 ksi on the area of the hole (p. 8-9) gives the same within 0.3 %",
};

const strengths: Readonly<Record<Exclude<FastenerKind, "other">, readonly Strength[]>> = {
  "an-bolt": [
    { diameter: 0.1875, shear: 2126, shearSource: noteD, tension: 2210 },
    { diameter: 0.25, shear: 3682, shearSource: byArea, tension: 4080 },
    { diameter: 0.3125, shear: 5752, shearSource: byArea, tension: 6500 },
    { diameter: 0.375, shear: 8283, shearSource: byArea, tension: 10_100 },
    { diameter: 0.4375, shear: 11_275, shearSource: byArea, tension: 13_600 },
    { diameter: 0.5, shear: 14_726, shearSource: byArea, tension: 18_500 },
  ],
  "ad-rivet": [
    { diameter: 0.09375, shear: 217, shearSource: rivetShear },
    { diameter: 0.125, shear: 388, shearSource: rivetShear },
    { diameter: 0.15625, shear: 596, shearSource: rivetShear },
    { diameter: 0.1875, shear: 862, shearSource: rivetShear },
    { diameter: 0.25, shear: 1555, shearSource: rivetShear },
  ],
};

/** AN3 is sold as 3/16 in and its shank is 0.190 in: a diameter so near to a size is that size. */
const sameSize = 0.004;

/** Diameters of a kind in in, smallest first; none for `other`. */
export function fastenerDiameters(kind: FastenerKind): readonly number[] {
  return kind === "other" ? [] : strengths[kind].map(({ diameter }) => diameter);
}

export const fastenerDiametersSource = noteD;

/** Single shear strength in lbf of a fastener of this diameter in in. Not covered: other kinds and sizes. */
export function fastenerShear(kind: FastenerKind, diameter: number): Lookup<number> {
  const found = strengthOf(kind, diameter);
  return found
    ? covered(found.shear, found.shearSource)
    : notCovered(gapOf(kind, diameter), kind === "ad-rivet" ? rivetShear : noteD);
}

/** Tension strength in lbf. Not covered: rivets, which are not meant for it, other kinds and sizes. */
export function fastenerTension(kind: FastenerKind, diameter: number): Lookup<number> {
  const tension = strengthOf(kind, diameter)?.tension;
  return tension === undefined
    ? notCovered(gapOf(kind, diameter), boltTension)
    : covered(tension, boltTension);
}

function strengthOf(kind: FastenerKind, diameter: number): Strength | undefined {
  if (kind === "other") return undefined;
  return strengths[kind].find((one) => Math.abs(one.diameter - diameter) <= sameSize);
}

function gapOf(kind: FastenerKind, diameter: number) {
  return {
    quantity: "diameter",
    asked: diameter,
    unit: "in",
    covers: list(fastenerDiameters(kind)),
    given: kind,
  };
}

/** MIL-HDBK-5 par. 1.5.3.5: Rs^3 + Rt^2 of a bolt in shear and tension is at most 1. */
export const interactionLimit = covered(1, {
  document: "MIL-HDBK-5",
  at: "par. 1.5.3.5, bolts in shear and tension",
  standing: "memory",
} satisfies Source);

/** Bearing strength counts from this ratio of sheet thickness to fastener diameter on. */
export const leastThicknessRatio = covered(0.18, {
  document: "MIL-HDBK-5H",
  at: "p. 8-9",
  standing: "published",
} satisfies Source);

interface SheetRow {
  /** in, both included */
  readonly from: number;
  readonly to: number;
  /** psi, at an edge distance of 1.5 and of 2 diameters */
  readonly at15: number;
  readonly at20: number;
}

const sheets: Readonly<Record<string, SheetRow>> = {
  "2024-T3": { from: 0.01, to: 0.128, at15: 104_000, at20: 129_000 },
  "2024-T3 clad": { from: 0.01, to: 0.062, at15: 97_000, at20: 121_000 },
  "6061-T6": { from: 0.01, to: 0.249, at15: 67_000, at20: 88_000 },
  "7075-T6": { from: 0.04, to: 0.125, at15: 118_000, at20: 156_000 },
};

const bearing: Source = {
  document: "MIL-HDBK-5H",
  at: "ultimate bearing strength of sheet, A basis",
  standing: "memory",
};

/**
 * Ultimate bearing strength in psi of a sheet, by edge distance over diameter: from 2 on the figure of 2, from
 * 1.5 on that of 1.5, nothing between is interpolated. Not covered: other materials and thicknesses (in), and
 * shorter edge distances.
 */
export function sheetBearing(material: string, thickness: number, edgeRatio: number): Lookup<number> {
  const name = Object.keys(sheets).find((one) => one.toLowerCase() === material.trim().toLowerCase());
  const sheet = name === undefined ? undefined : sheets[name]!;
  if (!sheet) {
    return notCovered(
      { quantity: "material", asked: material, unit: "", covers: list(Object.keys(sheets)) },
      bearing,
    );
  }
  if (!(thickness >= sheet.from && thickness <= sheet.to)) {
    const covers = { kind: "range", from: sheet.from, to: sheet.to } as const;
    return notCovered({ quantity: "thickness", asked: thickness, unit: "in", covers, given: name! }, bearing);
  }
  if (edgeRatio >= 2 - 1e-9) return covered(sheet.at20, bearing);
  if (edgeRatio >= 1.5 - 1e-9) return covered(sheet.at15, bearing);
  const covers = { kind: "range", from: 1.5, to: Number.POSITIVE_INFINITY } as const;
  return notCovered({ quantity: "edge distance in diameters", asked: edgeRatio, unit: "", covers }, bearing);
}
