import { type Dimension, dimensions, unitsOf } from "../../quantities";
import { listWords } from "../wording";

/** "Units of length: m, cm, mm or ft." */
export function unitChoice(dimension: Dimension): string {
  const units = unitsOf(dimension);
  const words =
    units.length === 1
      ? `The unit of ${dimensions[dimension].name}`
      : `Units of ${dimensions[dimension].name}`;
  return `${words}: ${listWords(units, "or")}.`;
}
