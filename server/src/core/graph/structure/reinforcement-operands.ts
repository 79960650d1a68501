/** Inputs that several measures of a reinforcement have in common. */
import { counted } from "../recorded";
import { assumed, type Operand } from "../value";
import { figureOperands, type Operands } from "./figures";
import { directionOperand } from "./load-path";
import type { ReinforcementParts } from "./reinforcement";

/** Rows of fasteners on each side; one, where the record names none. */
export function rowsOnSide({ fasteners }: Pick<ReinforcementParts, "fasteners">): Operand {
  return (
    counted("rows on each side", fasteners?.rows) ??
    assumed("rows on each side", 1, "1", "The record names no rows: one.")
  );
}

/** The opening, the doubler around it, and the direction of the load where it is recorded. */
export function doublerOperands({ opening, reinforcement, path, unit }: ReinforcementParts): Operands {
  return {
    ...figureOperands(opening.cutout.opening!, unit),
    ...figureOperands(reinforcement.outline!, unit, "doubler "),
    ...directionOperand(path.direction),
  };
}
