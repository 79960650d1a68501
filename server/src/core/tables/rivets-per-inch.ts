import { isAtMost } from "../rounding";
import type { Source } from "../source";
import { covered, type Lookup, list, notCovered, range } from "./lookup";

/** Columns of the tables: 2117-T4 rivets by shank diameter in inches, and AN3 bolts. */
export const rivetDiameters = [3 / 32, 1 / 8, 5 / 32, 3 / 16, 1 / 4] as const;
/** How the trade writes them. */
export const rivetSizeNames = ["3/32", "1/8", "5/32", "3/16", "1/4"] as const;
const boltDiameter = 3 / 16;

export type TableFastener = "2117-rivet" | "AN3-bolt";

export type RivetTableName = "4-9" | "4-10" | "4-11";

export interface RivetTable {
  readonly name: RivetTableName;
  /** Sheets that it is for, as matched by `rivetTablesFor`. */
  readonly sheets: string;
  readonly source: Source;
  /** Thickness in inches, the five columns of rivets, AN3 bolts; undefined where the page leaves a blank. */
  readonly rows: readonly Row[];
}

type Cell = number | undefined;
type Row = readonly [thickness: number, rivets: readonly [Cell, Cell, Cell, Cell, Cell], bolts: Cell];

const _ = undefined;

function sourceOf(name: RivetTableName, page: string, note?: string): Source {
  return {
    document: "FAA AC 43.13-1B",
    edition: "9/8/98",
    at: `Table ${name}, p. ${page}`,
    standing: "published",
    ...(note && { note }),
  };
}

/**
 * 2117-T4 (AD) protruding-head rivets, or AN3 bolts, per inch of width on each side of a joint.
 *
 * Misprints that were found by regenerating every cell (`rivetsByFormula`): in Table 4-9 the AN3 cell for 0.128
 * in prints 3.2 where its formula gives 4.2, which is used here; p. 4-38 leaves out the share of the strength
 * (50 %); p. 4-39 prints 160 % for bearing where its numbers need 165 %.
 */
export const rivetTables: Readonly<Record<RivetTableName, RivetTable>> = {
  "4-9": {
    name: "4-9",
    sheets: "2014-T6, 2024-T3, 2024-T36 and 7075-T6, bare and clad",
    source: sourceOf("4-9", "4-37"),
    rows: [
      [0.016, [6.5, 4.9, _, _, _], _],
      [0.02, [6.9, 4.9, 3.9, _, _], _],
      [0.025, [8.6, 4.9, 3.9, _, _], _],
      [0.032, [11.1, 6.2, 3.9, 3.3, _], _],
      [0.036, [12.5, 7.0, 4.5, 3.3, 2.4], _],
      [0.04, [13.8, 7.7, 5.0, 3.5, 2.4], 3.3],
      [0.051, [_, 9.8, 6.4, 4.5, 2.5], 3.3],
      [0.064, [_, 12.3, 8.1, 5.6, 3.1], 3.3],
      [0.081, [_, _, 10.2, 7.1, 3.9], 3.3],
      [0.091, [_, _, 11.4, 7.9, 4.4], 3.3],
      [0.102, [_, _, 12.8, 8.9, 4.9], 3.4],
      [0.128, [_, _, _, 11.2, 6.2], 3.2],
    ],
  },
  "4-10": {
    name: "4-10",
    sheets: "2017, 2017 clad and 2024-T3 clad",
    source: sourceOf("4-10", "4-38"),
    rows: [
      [0.016, [6.5, 4.9, _, _, _], _],
      [0.02, [6.5, 4.9, 3.9, _, _], _],
      [0.025, [6.9, 4.9, 3.9, _, _], _],
      [0.032, [8.9, 4.9, 3.9, 3.3, _], _],
      [0.036, [10.0, 5.6, 3.9, 3.3, 2.4], _],
      [0.04, [11.1, 6.2, 4.0, 3.3, 2.4], _],
      [0.051, [_, 7.9, 5.1, 3.6, 2.4], 3.3],
      [0.064, [_, 9.9, 6.5, 4.5, 2.5], 3.3],
      [0.081, [_, 12.5, 8.1, 5.7, 3.1], 3.3],
      [0.091, [_, _, 9.1, 6.3, 3.5], 3.3],
      [0.102, [_, _, 10.3, 7.1, 3.9], 3.3],
      [0.128, [_, _, 12.9, 8.9, 4.9], 3.3],
    ],
  },
  "4-11": {
    name: "4-11",
    sheets: "5052, all hardnesses",
    source: sourceOf("4-11", "4-39"),
    rows: [
      [0.016, [6.3, 4.7, _, _, _], _],
      [0.02, [6.3, 4.7, 3.8, _, _], _],
      [0.025, [6.3, 4.7, 3.8, _, _], _],
      [0.032, [6.3, 4.7, 3.8, 3.2, _], _],
      [0.036, [7.1, 4.7, 3.8, 3.2, 2.4], _],
      [0.04, [7.9, 4.7, 3.8, 3.2, 2.4], _],
      [0.051, [10.1, 5.6, 3.8, 3.2, 2.4], _],
      [0.064, [12.7, 7.0, 4.6, 3.2, 2.4], _],
      [0.081, [_, 8.9, 5.8, 4.0, 2.4], 3.2],
      [0.091, [_, 10.0, 6.5, 4.5, 2.5], 3.2],
      [0.102, [_, 11.2, 7.3, 5.1, 2.8], 3.2],
      [0.128, [_, _, 9.2, 6.4, 3.5], 3.2],
    ],
  },
};

/** What Table 4-9 means in the one cell that its own formula contradicts, in AN3 bolts per inch. */
export const misprintedBolts = { table: "4-9", thickness: 0.128, printed: 3.2, meant: 4.2 } as const;

/** The same sheet is called 0.050 in one list of gauges and 0.051 in the other (from memory). */
const sameGauges: readonly (readonly [number, number])[] = [
  [0.05, 0.051],
  [0.063, 0.064],
  [0.08, 0.081],
  [0.09, 0.091],
  [0.1, 0.102],
  [0.125, 0.128],
];

/**
 * Tables for a sheet by its name, such as "2024-T3 clad". Two for clad 2024-T3, which the circular lists in both
 * 4-9 and 4-10: the larger count holds. None for a sheet that no table names.
 */
export function rivetTablesFor(material: string): readonly RivetTable[] {
  const name = material.toLowerCase().replaceAll(/alclad|clad/g, "clad");
  const isClad = name.includes("clad");
  const has = (pattern: RegExp) => pattern.test(name);
  if (has(/\b2024[- ]?t36\b|\b2014[- ]?t6\b|\b7075[- ]?t6\b|\b2024[- ]?t4\b/)) return [rivetTables["4-9"]];
  if (has(/\b2024[- ]?t3\b/)) {
    return isClad ? [rivetTables["4-9"], rivetTables["4-10"]] : [rivetTables["4-9"]];
  }
  if (has(/\b2017\b/)) return [rivetTables["4-10"]];
  if (has(/\b5052\b/)) return [rivetTables["4-11"]];
  return [];
}

/**
 * Fasteners per inch of width on each side of a joint.
 *
 * @param thickness of the sheet in inches; between two rows the thicker one counts, which asks for more
 * @param diameter of the shank in inches; only the columns of the page are covered
 */
export function rivetsPerInch(
  table: RivetTable,
  thickness: number,
  fastener: TableFastener,
  diameter: number,
): Lookup<number> {
  const { source } = table;
  const columns = fastener === "AN3-bolt" ? [boltDiameter] : rivetDiameters;
  const column = columns.findIndex((one) => Math.abs(one - diameter) < 5e-4);
  if (column < 0) {
    const covers = list(columns);
    return notCovered({ quantity: "fastener diameter", asked: diameter, unit: "in", covers }, source);
  }
  const sheet = sameGauges.find(([other]) => Math.abs(other - thickness) < 1e-6)?.[1] ?? thickness;
  const cellOf = ([, rivets, bolts]: Row) => (fastener === "AN3-bolt" ? bolts : rivets[column]);
  const given = table.rows.filter((row) => cellOf(row) !== undefined);
  const row = given.find(([gauge]) => isAtMost(sheet, gauge));
  const thinnest = given[0]![0];
  if (!row || !isAtMost(thinnest, sheet)) {
    const covers = range(thinnest, given.at(-1)![0]);
    const name = fastener === "AN3-bolt" ? "AN3 bolts" : `${rivetSizeNames[column]} in rivets`;
    return notCovered(
      { quantity: "sheet thickness", asked: thickness, unit: "in", covers, given: name },
      source,
    );
  }
  const [gauge] = row;
  const isMisprint =
    fastener === "AN3-bolt" && table.name === misprintedBolts.table && gauge === misprintedBolts.thickness;
  return covered(isMisprint ? misprintedBolts.meant : cellOf(row)!, source, [
    ...(Math.abs(gauge - sheet) > 1e-6
      ? [`${thickness} in stands between two rows: that of ${gauge} in counts.`]
      : []),
    ...(isMisprint
      ? [`The page prints ${misprintedBolts.printed}; its own formula gives ${misprintedBolts.meant}.`]
      : []),
  ]);
}

/** What the notes of all three tables reduce the count to, by the kind of joint. */
export const jointFactors = { "single-lap": 0.75, stringer: 0.8, "intermediate-frame": 0.6 } as const;

export const jointFactorSource: Source = {
  document: "FAA AC 43.13-1B",
  edition: "9/8/98",
  at: "Tables 4-9 to 4-11, notes a to c",
  standing: "published",
};
