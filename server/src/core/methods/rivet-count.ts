/**
 * The formula behind AC 43.13-1B Tables 4-9 to 4-11, found by regenerating them: it reproduces every printed
 * cell within 0.16, but for one misprint. It serves to check the tables; a record is held against the print.
 */

/** Nominal holes of the five rivets, in inches. */
const holes = [0.096, 0.1285, 0.159, 0.191, 0.257] as const;

/** Shares of shear and bearing strength, in units in which the tables' own numbers come out. */
const constants = {
  "4-9": { shear: 0.4, bearing: 1.6, sheet: 70_000 },
  "4-10": { shear: 0.5, bearing: 1.6, sheet: 55_000 },
  "4-11": { shear: 0.7, bearing: 1.65, sheet: undefined },
} as const;

/** Shear strength of an AN3 bolt in lb: Table 4-9, note d. */
const boltShear = 2126;
const boltDiameter = 0.19;

/**
 * 2117-T4 rivets per inch: the larger of what bearing and what shear ask for.
 *
 * @param thickness of the sheet in inches
 * @param column of the table, from 0 for 3/32 in to 4 for 1/4 in
 */
export function rivetsByFormula(table: keyof typeof constants, thickness: number, column: number): number {
  const { shear, bearing } = constants[table];
  const hole = holes[column]!;
  return Math.max(1 / (bearing * hole), thickness / ((shear * Math.PI * hole ** 2) / 4));
}

/** AN3 bolts per inch; undefined for Table 4-11, whose sheet strength is not known. */
export function boltsByFormula(table: keyof typeof constants, thickness: number): number | undefined {
  const { bearing, sheet } = constants[table];
  return sheet && Math.max(1 / (bearing * boltDiameter), (thickness * sheet) / boltShear);
}

/**
 * Fasteners needed on each side of an opening: those per inch times the width that is cut, reduced for the
 * joint, rounded up to whole ones.
 */
export function fastenersNeeded(perInch: number, widthInches: number, jointFactor: number): number {
  return Math.ceil(perInch * widthInches * jointFactor - 1e-9);
}
