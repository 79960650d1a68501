/** What a flare nut is tightened to, by the table that the record names. */
import type { LineFitting } from "../../records/types";
import { flareNutTorque } from "../../tables/flare-nut-torque";
import { covered } from "../../tables/lookup";
import type { QuantityName } from "../quantity-names";
import { derive, type Keep, tabled, type Value } from "../value";
import type { LineGap } from "./line-run";

export interface FittingResult {
  readonly fitting: LineFitting;
  readonly id: string;
  readonly least: Value | undefined;
  readonly most: Value | undefined;
}

/** @param gaps takes what the named table leaves out */
export function fittingOf(
  fitting: LineFitting,
  id: string,
  size: Value | undefined,
  gaps: LineGap[],
  keep: Keep,
): FittingResult {
  const { table, column } = fitting;
  const lookup = table && column && size && flareNutTorque(table.value, column.value, size.value);
  if (lookup && !lookup.covered) {
    gaps.push({ wanted: `torque of ${id}`, place: table.place, table: lookup });
  }
  const end = (quantity: QuantityName, index: 0 | 1) =>
    keep(
      derive({
        subject: { kind: "fitting", id },
        quantity,
        unit: "in lb",
        formula: "t",
        operands: {
          t: tabled(
            index === 0 ? "least torque" : "greatest torque",
            lookup?.covered ? covered(lookup.value[index], lookup.source) : undefined,
            "in lb",
            [table?.place, column?.place],
          ),
        },
        compute: ({ t }) => t,
        sources: lookup ? [lookup.source] : [],
      }),
    );
  return { fitting, id, least: end("least-fitting-torque", 0), most: end("most-fitting-torque", 1) };
}
