/** Whether a reinforcement lies on the sheet of its panel alone. */
import { containment, relation } from "../../methods/geometry";
import { inUnit } from "../../quantities";
import type { Stiffener } from "../../records/types";
import { isBelow } from "../../rounding";
import { outlineOf } from "./figures";
import type { ReinforcementParts } from "./reinforcement";
import { stripOf } from "./stiffeners";

export interface Reach {
  readonly isBeyondPanel: boolean;
  /** Stiffeners whose feet it lies over, but those that the opening cuts. */
  readonly over: readonly Stiffener[];
}

/** A ring reaches as far from its opening as it is wide. */
export function reachOf({
  opening: { placed, panel },
  reinforcement,
  unit,
  outline,
}: ReinforcementParts): Reach {
  const width = outline || !reinforcement.width ? 0 : inUnit(reinforcement.width.value, unit);
  const shape = outline ?? placed;
  const edge = panel.outline && outlineOf(panel.outline, unit);
  const inPanel = edge && containment(shape, edge);
  const over = (panel.stiffeners ?? []).filter((stiffener) => {
    const strip = stripOf(stiffener, unit);
    if (!strip || relation(placed, strip).kind !== "clear") return false;
    const found = relation(shape, strip);
    return found.kind !== "clear" || isBelow(found.distance, width);
  });
  return {
    isBeyondPanel: inPanel !== undefined && (inPanel.kind !== "inside" || isBelow(inPanel.distance, width)),
    over,
  };
}
