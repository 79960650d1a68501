/** Where the computation starts: the empty weight statement, or without one the weighing. */
import type { AirframeRecord } from "../../records/types";
import { derived, type Keep, type Operand, toleranceOf, written } from "../value";
import type { BalanceUnits } from "./balance-units";
import { deriveWeighing, type WeighingSheet } from "./weighing";

export interface EmptyBefore {
  readonly weight: Operand;
  readonly arm: Operand;
  /** Undefined where the aircraft's data give none. */
  readonly buttLine: Operand;
  readonly waterLine: Operand;
  /** How far the statement's weight and arm may be off either way; undefined where it writes no tolerance. */
  readonly weightTolerance: Operand;
  readonly armTolerance: Operand;
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
      weightTolerance: undefined,
      armTolerance: undefined,
      weighing,
    };
  }
  return {
    weight: written("empty weight before", empty?.weight, units.weight),
    arm: written("empty arm before", empty?.arm, units.arm),
    buttLine: written("empty butt line before", empty?.buttLine, units.arm),
    waterLine,
    weightTolerance: toleranceOf("tolerance of the empty weight before", empty?.weight, units.weight),
    armTolerance: toleranceOf("tolerance of the empty arm before", empty?.arm, units.arm),
    weighing,
  };
}
