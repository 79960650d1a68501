/** Hoses and rigid tubes: how tightly they bend, how far apart they are held, what they stand. */
import type { Source } from "../source";
import { advisoryCircular } from "./electrical-documents";
import { covered, type Lookup, list, notCovered } from "./lookup";

/** Size of a line: outside diameter in in of the tube, or of the tube that a hose fits; a dash is 1/16 in. */
export const inchesPerDash = {
  value: 1 / 16,
  source: { document: "NAVEDTRA 14018", at: "tube sizes", standing: "published" },
} as const satisfies { value: number; source: Source };

export interface HoseRow {
  readonly dash: number;
  /** Outside diameter of the hose itself, in. */
  readonly outsideDiameter: number;
  /** Operating, burst and proof pressure, psi. */
  readonly operating: number;
  readonly burst: number;
  readonly proof: number;
  /** Least bend radius, in. */
  readonly bendRadius: number;
  /** Highest temperature, degF. */
  readonly hottest: number;
}

const hoseColumns = ["outsideDiameter", "operating", "burst", "proof", "bendRadius", "hottest"] as const;

/** By dash number, in the columns of the print (its tube and inside diameters left out). */
const hoseRows: Readonly<Record<number, readonly [number, number, number, number, number, number]>> = {
  3: [0.45, 3000, 12000, 6000, 3, 250],
  4: [0.52, 3000, 12000, 6000, 3, 250],
  5: [0.58, 3000, 10000, 5000, 3.38, 250],
  6: [0.67, 2000, 9000, 4500, 4, 250],
  8: [0.77, 2000, 8000, 4000, 4.63, 250],
  10: [0.92, 1750, 7000, 3500, 5.5, 250],
  12: [1.08, 1750, 6000, 3000, 6.5, 250],
  16: [1.23, 800, 3200, 1600, 7.38, 275],
  20: [1.5, 600, 2500, 1250, 9, 275],
  24: [1.75, 500, 2000, 1000, 11, 275],
  32: [2.22, 350, 1400, 700, 13.25, 275],
  40: [2.88, 200, 1000, 300, 24, 275],
  48: [3.56, 200, 800, 300, 33, 275],
};

export const hoseSource = advisoryCircular("Table 9-3 (MIL-H-8794 hose)", "published");

/** Highest temperature and highest pressure are not meant to come together. */
export const hoseNote = "The hose's highest temperature and pressure are not meant for the same time.";

/** AC 43.13-1B Table 9-3: single wire braid hose by its size in in. */
export function hoseBySize(size: number): Lookup<HoseRow> {
  const dash = nameOf(size / inchesPerDash.value, Object.keys(hoseRows).map(Number));
  if (dash === undefined) return gap("hose size", size, Object.keys(hoseRows).map(sizeOfDash), hoseSource);
  const row = hoseRows[dash]!;
  const named = Object.fromEntries(hoseColumns.map((column, index) => [column, row[index]]));
  return covered({ dash, ...named } as unknown as HoseRow, hoseSource, [hoseNote]);
}

export type TubeMaterial = "aluminium" | "steel" | "copper";

/** [outside diameter, aluminium, steel], in; undefined where the print has a dash. */
type TubeRow = readonly [od: number, aluminium: number | undefined, steel: number | undefined];

export const tubeBendSource = advisoryCircular("Table 9-2", "memory");

/** Least bend radius to the centre line, in. */
const tubeBendRows: readonly TubeRow[] = [
  [1 / 8, 3 / 8, undefined],
  [3 / 16, 7 / 16, 21 / 32],
  [1 / 4, 9 / 16, 7 / 8],
  [5 / 16, 3 / 4, 1 + 1 / 8],
  [3 / 8, 15 / 16, 1 + 5 / 16],
  [1 / 2, 1 + 1 / 4, 1 + 3 / 4],
  [5 / 8, 1 + 1 / 2, 2 + 3 / 16],
  [3 / 4, 1 + 3 / 4, 2 + 5 / 8],
  [1, 3, 3 + 1 / 2],
  [1 + 1 / 4, 3 + 3 / 4, 4 + 3 / 8],
  [1 + 1 / 2, 5, 5 + 1 / 4],
];

/** AC 43.13-1B Table 9-2 as remembered: least bend radius of a tube, in, to its centre line. */
export function tubeBendRadius(material: TubeMaterial, size: number): Lookup<number> {
  return inTubeRows(tubeBendRows, tubeBendSource, material, size);
}

/** MIL-H-8891A Table II: [outside diameter, distance between supports of a steel tube], in. */
const steelSupports: readonly (readonly [number, number])[] = [
  [1 / 4, 16],
  [5 / 16, 18],
  [3 / 8, 20],
  [1 / 2, 23],
  [5 / 8, 25.5],
  [3 / 4, 27.5],
  [1, 30],
  [1 + 1 / 4, 31.5],
  [1 + 1 / 2, 32.5],
];

export const steelSupportSource: Source = {
  document: "MIL-H-8891A",
  at: "Table II",
  standing: "published",
  note: "a column is shifted in the copy; aligned so that 1/4 in has 16 in",
};

/** Its steel column is the one of MIL-H-8891A; that is all that was found in print. */
const handbookSupports: readonly TubeRow[] = [
  [1 / 8, 9.5, 11.5],
  [3 / 16, 12, 14],
  [1 / 4, 13.5, 16],
  [5 / 16, 15, 18],
  [3 / 8, 16.5, 20],
  [1 / 2, 19, 23],
  [5 / 8, 22, 25.5],
  [3 / 4, 24, 27.5],
  [1, 26.5, 30],
];

export const handbookSupportSource: Source = {
  document: "FAA-H-8083-30",
  at: "fluid lines, support spacing",
  standing: "memory",
};

/** Largest distance between the supports of a tube, in. */
export function tubeSupportSpacing(material: TubeMaterial, size: number): Lookup<number> {
  const sizes = steelSupports.map(([od]) => od);
  const od = material === "steel" ? nameOf(size, sizes) : undefined;
  if (od === undefined) return inTubeRows(handbookSupports, handbookSupportSource, material, size);
  return covered(steelSupports[sizes.indexOf(od)]![1], steelSupportSource);
}

/** A tube that carries fittings between its supports has them about a fifth nearer to each other. */
export const spacingShareWithFittings = { value: 0.8, source: steelSupportSource } as const;

/** Long runs of hose: distance between clamps, in. */
export const hoseSupportSpacing = {
  value: 24,
  source: advisoryCircular("ch. 9, hose installation", "published"),
} as const;

/** Slack of a hose as a share of the way that it has to go. */
export const hoseSlack = {
  least: 0.05,
  most: 0.08,
  source: advisoryCircular("ch. 9, hose installation", "published"),
} as const;

/** How much a hose may shorten under pressure, as a share of its length. It may lengthen by 2 %. */
export const hoseShortening = { value: 0.04, source: advisoryCircular("Figure 9-9", "published") } as const;

/** Least diameter across a bend, as a share of the tube's outside diameter. */
export const leastFlattenedShare = {
  value: 0.75,
  source: advisoryCircular("ch. 9, tube bending", "published"),
} as const;

function inTubeRows(
  rows: readonly TubeRow[],
  source: Source,
  material: TubeMaterial,
  size: number,
): Lookup<number> {
  if (material === "copper") {
    const covers = list(["aluminium", "steel"]);
    return notCovered({ quantity: "tube material", asked: material, unit: "", covers }, source);
  }
  const given = rows.filter(
    ([, aluminium, steel]) => (material === "steel" ? steel : aluminium) !== undefined,
  );
  const sizes = given.map(([od]) => od);
  const od = nameOf(size, sizes);
  if (od === undefined) return gap(`${material} tube size`, size, sizes, source);
  const [, aluminium, steel] = given[sizes.indexOf(od)]!;
  return covered((material === "steel" ? steel : aluminium)!, source);
}

function gap(quantity: string, asked: number, sizes: readonly number[], source: Source): Lookup<never> {
  return notCovered({ quantity, asked, unit: "in", covers: list(sizes) }, source);
}

function sizeOfDash(dash: string): number {
  return Number(dash) * inchesPerDash.value;
}

/** The size of the table that a number stands for: sizes are names, so nothing lies between them. */
function nameOf(value: number, names: readonly number[]): number | undefined {
  return names.find((name) => Math.abs(name - value) < 1e-6);
}
