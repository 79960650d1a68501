/** How wide an opening stands across the load of its panel. */
import { extentAlong, greatestExtent } from "../../methods/geometry";
import type { Quantity } from "../../quantities";
import type { Written } from "../../records/written";
import type { CutoutResult } from "../openings";
import { derive, type Keep, type Value, written } from "../value";
import { figureOperands, geometrySource, type Operands, unitOf } from "./figures";

export interface LoadPath {
  /** Direction across the load, in radians from the panel's x axis. */
  readonly across: number;
  /** Undefined where the panel records none: then the greatest width of the opening counts. */
  readonly direction: Written<Quantity<"angle">> | undefined;
  /** Width of the opening across the load, in the panel's unit. */
  readonly opening: Value | undefined;
}

/** The width that an opening takes out of its panel. */
export function loadPathOf({ cutout, id, panel, placed }: CutoutResult, keep: Keep): LoadPath {
  const unit = unitOf(panel);
  const direction = panel.load?.direction;
  const greatest = greatestExtent(placed);
  const across = direction ? direction.value.si + Math.PI / 2 : greatest.direction;
  const opening = keep(
    derive({
      subject: { kind: "cutout", id },
      quantity: "opening-width",
      unit,
      method: direction ? "extent of the outline across the load" : "greatest extent of the outline",
      operands: {
        ...figureOperands(cutout.opening!, unit),
        ...directionOperand(direction),
      },
      compute: () => (direction ? extentAlong(placed, across) : greatest.length),
      sources: [geometrySource],
      notes: direction
        ? []
        : ["The panel's record gives no direction of its load: the greatest width counts."],
    }),
  );
  return { across, direction, opening };
}

/** Empty where the panel records none. */
export function directionOperand(direction: LoadPath["direction"]): Operands {
  const operand = written("direction of the load", direction, "deg");
  return operand ? { direction: operand } : {};
}
