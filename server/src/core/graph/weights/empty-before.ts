/** Where the computation starts: the empty weight statement, or without one the weighing. */
import type { AirframeRecord } from "../../records/types";
import type { Place } from "../../records/written";
import { derived, type Keep, type Operand, toleranceOf, written } from "../value";
import type { BalanceUnits } from "./balance-units";
import type { ItemOfChange } from "./changed-items";
import { deriveWeighing, type WeighingSheet } from "./weighing";

/** Something that weighs, with how far it may be off; a negative weight is taken away. */
export type Uncertain = Pick<
  ItemOfChange,
  "weight" | "arm" | "buttLine" | "weightTolerance" | "armTolerance"
>;

export interface PartBefore extends Uncertain {
  /** Where its weight is written; undefined where it is not. */
  readonly place: Place | undefined;
  /** What stands at that place. */
  readonly words: string;
}

export interface EmptyBefore {
  readonly weight: Operand;
  readonly arm: Operand;
  /** Undefined where the aircraft's data give none. */
  readonly buttLine: Operand;
  readonly waterLine: Operand;
  /** How far the weight may be off either way; undefined where no tolerance is written. */
  readonly weightTolerance: Operand;
  /** What may be off by itself: the statement as a whole, or each scale and item of the weighing. */
  readonly parts: readonly PartBefore[];
  readonly weighing: WeighingSheet | undefined;
}

export function deriveEmptyBefore(
  airframe: AirframeRecord | undefined,
  units: BalanceUnits,
  keep: Keep,
): EmptyBefore {
  const weighing = deriveWeighing(airframe, units, keep);
  const empty = airframe?.empty;
  const waterLine = written("empty water line before", empty?.waterLine, units.arm);
  if (!empty && weighing) {
    return {
      weight: derived("empty weight before", weighing.emptyWeight),
      arm: derived("empty arm before", weighing.emptyCg),
      buttLine: derived("empty butt line before", weighing.emptyButtLine),
      waterLine,
      weightTolerance: derived("tolerance of the scales", weighing.weighedTolerance),
      parts: partsOf(weighing, units),
      weighing,
    };
  }
  const statement = {
    weight: written("empty weight before", empty?.weight, units.weight),
    arm: written("empty arm before", empty?.arm, units.arm),
    buttLine: written("empty butt line before", empty?.buttLine, units.arm),
    weightTolerance: toleranceOf("tolerance of the empty weight before", empty?.weight, units.weight),
  };
  const armTolerance = toleranceOf("tolerance of the empty arm before", empty?.arm, units.arm);
  const part = {
    ...statement,
    armTolerance,
    place: empty?.weight?.place,
    words: "empty weight before the change",
  };
  return { ...statement, waterLine, parts: [part], weighing };
}

function partsOf({ scales, items }: WeighingSheet, units: BalanceUnits): PartBefore[] {
  return [
    ...scales.map(({ id, scale, net, arm, tolerance }) => ({
      weight: derived(`net weight on ${id}`, net),
      arm: derived(`arm of ${id}`, arm),
      buttLine: written(`butt line of ${id}`, scale.buttLine, units.arm),
      weightTolerance: tolerance,
      place: scale.reading?.place,
      words: `what scale ${id} read`,
    })),
    ...items.map(({ id, item, weight }) => ({
      weight: derived(`correction for ${id}`, weight),
      arm: written(`arm of ${id}`, item.arm, units.arm),
      buttLine: written(`butt line of ${id}`, item.buttLine, units.arm),
      place: item.place,
      words: `${id}, weighed with the aircraft`,
    })),
  ];
}
