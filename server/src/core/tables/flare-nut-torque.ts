import type { Source } from "../source";
import { covered, type Lookup, list, notCovered } from "./lookup";

/** The published tables differ, so that a torque is judged by the one that the record names. */
export type TorqueTable = "NAVEDTRA 14018 Table 5-9" | "TM 55-1520-240";

export type TorqueColumn = "aluminium-tube" | "steel-tube" | "hose";

/** Least and greatest torque, in lb. */
export type TorqueRange = readonly [least: number, most: number];

/** [outside diameter of the tube in in, range] */
type TorqueRows = readonly (readonly [number, TorqueRange])[];

const navySource: Source = {
  document: "NAVEDTRA 14018",
  at: "Table 5-9",
  standing: "published",
  note: "read from a run-together line, verified by its pattern",
};
const armySource: Source = {
  document: "TM 55-1520-240",
  at: "flared fittings, columns C to E",
  standing: "published",
};

const tables: Readonly<
  Record<
    TorqueTable,
    { readonly source: Source; readonly columns: Partial<Record<TorqueColumn, TorqueRows>> }
  >
> = {
  "NAVEDTRA 14018 Table 5-9": {
    source: navySource,
    columns: {
      "steel-tube": [
        [1 / 8, [75, 85]],
        [3 / 16, [95, 105]],
        [1 / 4, [135, 145]],
        [5 / 16, [170, 190]],
        [3 / 8, [215, 245]],
        [1 / 2, [430, 470]],
        [5 / 8, [620, 680]],
        [3 / 4, [855, 945]],
        [1, [1140, 1260]],
      ],
      "aluminium-tube": [
        [1 / 8, [20, 30]],
        [3 / 16, [25, 35]],
        [1 / 4, [50, 65]],
        [5 / 16, [70, 90]],
        [3 / 8, [110, 130]],
        [1 / 2, [230, 260]],
        [5 / 8, [330, 360]],
        [3 / 4, [460, 500]],
        [1, [640, 700]],
      ],
    },
  },
  "TM 55-1520-240": {
    source: armySource,
    columns: {
      "aluminium-tube": [
        [1 / 4, [50, 65]],
        [3 / 8, [100, 125]],
        [1 / 2, [210, 250]],
        [5 / 8, [300, 350]],
        [3 / 4, [425, 500]],
        [1, [600, 700]],
      ],
      "steel-tube": [
        [1 / 4, [135, 150]],
        [3 / 8, [270, 300]],
        [1 / 2, [450, 500]],
        [5 / 8, [650, 700]],
        [3 / 4, [900, 1000]],
        [1, [1200, 1400]],
      ],
      hose: [
        [1 / 4, [100, 120]],
        [3 / 8, [210, 250]],
        [1 / 2, [340, 420]],
        [5 / 8, [400, 480]],
        [3 / 4, [725, 850]],
        [1, [900, 1150]],
      ],
    },
  },
};

/** Outside diameters of tubes in in, from the smallest, as the table of rigid tubes lists them. */
export const tubeDiameters: readonly number[] = tables["NAVEDTRA 14018 Table 5-9"].columns["steel-tube"]!.map(
  ([od]) => od,
);

export const tubeDiametersSource = navySource;

export const torqueSources: readonly Source[] = [navySource, armySource];

/** Range of a flare nut's torque by the table and column that a record names; `size` in in. */
export function flareNutTorque(table: TorqueTable, column: TorqueColumn, size: number): Lookup<TorqueRange> {
  const { source, columns } = tables[table];
  const rows = columns[column];
  if (!rows) {
    const covers = list(Object.keys(columns));
    return notCovered({ quantity: "column", asked: column, unit: "", covers }, source);
  }
  const row = rows.find(([od]) => Math.abs(od - size) < 1e-6);
  if (row) return covered(row[1], source);
  const covers = list(rows.map(([od]) => od));
  return notCovered({ quantity: "tube size", asked: size, unit: "in", covers }, source);
}
