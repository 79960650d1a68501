import type { LimitPoint, LimitSide } from "../../methods/envelope";
import type { Envelope } from "../../records/types";
import { isWholeList } from "../entries";
import { type Operand, written } from "../value";
import type { BalanceUnits } from "./balance-units";

/** One side of an envelope, in the units of the derivation. */
export interface LimitPoints {
  readonly weights: readonly Operand[];
  readonly arms: readonly Operand[];
  readonly points: readonly LimitPoint[];
}

/** Undefined while any of its points is not known. */
export function limitPointsOf(
  envelope: Envelope,
  side: LimitSide,
  units: BalanceUnits,
): LimitPoints | undefined {
  const listed = envelope[side];
  if (!listed || !isWholeList(envelope, side, listed)) return undefined;
  const weights = listed.map((point) => written(`${side} point, weight`, point.weight, units.weight));
  const arms = listed.map((point) => written(`${side} point, arm`, point.arm, units.arm));
  if ([...weights, ...arms].includes(undefined)) return undefined;
  const points = listed.map((point, index) => ({
    weight: weights[index]!.value,
    arm: arms[index]!.value,
    orLess: point.orLess?.value ?? false,
  }));
  return { weights, arms, points };
}
