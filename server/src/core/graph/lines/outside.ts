import { hoseBySize } from "../../tables/fluid-lines";
import { covered } from "../../tables/lookup";
import { derived, type Operand, tabled } from "../value";
import type { LineRun } from "./line-run";

/** Outside diameter of a line: of a hose that of the hose itself, by its table; undefined where no table gives it. */
export function outsideOf({ line, size }: LineRun): Operand {
  if (line.kind?.value !== "hose") return derived("outside diameter", size);
  const row = size && line.specification ? hoseBySize(size.value) : undefined;
  const outside = row?.covered ? covered(row.value.outsideDiameter, row.source) : undefined;
  return tabled("outside diameter of the hose", outside, "in", [
    line.dash?.place ?? line.outsideDiameter?.place,
  ]);
}
