import { advisoryCircular } from "./electrical-documents";
import { covered, type Lookup, list, notCovered, range } from "./lookup";

/** Most strands of a conductor that may be damaged where its insulation is taken off. */
export interface StrandDamage {
  /** Nicked and broken ones together. */
  readonly damaged: number;
  readonly broken: number;
}

interface StrandRow {
  /** AWG numbers; 0 is 1/0, -1 is 00, -2 is 000, -3 is 0000. */
  readonly gauges: readonly number[];
  /** Numbers of strands that the row is for, ends included. */
  readonly strands: readonly [from: number, to: number];
  readonly nicked: number;
  readonly broken: number;
}

/** Copper and copper alloy, in the rows of the print. */
export const copperStrandDamage: readonly StrandRow[] = [
  { gauges: [24, 22, 20, 18, 16, 14], strands: [19, 19], nicked: 2, broken: 0 },
  { gauges: [12, 10], strands: [37, 37], nicked: 4, broken: 0 },
  { gauges: [8, 6, 4], strands: [133, 133], nicked: 6, broken: 6 },
  { gauges: [2, 1], strands: [665, 817], nicked: 6, broken: 6 },
  { gauges: [0, -1], strands: [1045, 1330], nicked: 6, broken: 6 },
  { gauges: [-2], strands: [1665, Number.POSITIVE_INFINITY], nicked: 6, broken: 6 },
  { gauges: [-3], strands: [2109, Number.POSITIVE_INFINITY], nicked: 6, broken: 6 },
];

/** Aluminium: none of any number of strands. */
export const aluminiumStrandDamage: StrandRow = {
  gauges: [8, 6, 4, 2, 1, 0, -1, -2],
  strands: [1, Number.POSITIVE_INFINITY],
  nicked: 0,
  broken: 0,
};

export const strandDamageSource = advisoryCircular(
  "Table 11-13, p. 11-62",
  "published",
  "its column is headed as a total, so that “6 nicked, 6 broken” is read as 6 in all: the stricter way",
);

/**
 * Table 11-13. Not covered: other gauges, and conductors with a number of strands that is not their row's.
 *
 * @param strands of the conductor; undefined where the record does not give them, and the row's are taken
 */
export function strandDamage(
  material: "copper" | "aluminium",
  gauge: number,
  strands: number | undefined,
): Lookup<StrandDamage> {
  const rows = material === "aluminium" ? [aluminiumStrandDamage] : copperStrandDamage;
  const row = rows.find(({ gauges }) => gauges.includes(gauge));
  if (!row) {
    const covers = list(rows.flatMap(({ gauges }) => gauges));
    return notCovered(
      { quantity: "gauge", asked: gauge, unit: "", covers, given: material },
      strandDamageSource,
    );
  }
  const [from, to] = row.strands;
  if (strands !== undefined && !(strands >= from && strands <= to)) {
    const covers = from === to ? list([from]) : range(from, to);
    return notCovered(
      { quantity: "number of strands", asked: strands, unit: "", covers },
      strandDamageSource,
    );
  }
  return covered(
    { damaged: row.nicked, broken: row.broken },
    strandDamageSource,
    strands === undefined ? ["The number of strands is not recorded: that of the table is taken."] : [],
  );
}
