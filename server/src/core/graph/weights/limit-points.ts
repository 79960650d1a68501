import { type Crossing, crossingOf, type LimitPoint, type LimitSide } from "../../methods/envelope";
import { onceEach } from "../../once-each";
import type { Envelope } from "../../records/types";
import { isWholeList } from "../entries";
import { type Operand, written } from "../value";
import { type BalanceUnits, balanceUnits } from "./balance-units";

/** One side of an envelope, in the units of the derivation. */
export interface LimitPoints {
  readonly weights: readonly Operand[];
  readonly arms: readonly Operand[];
  readonly points: readonly LimitPoint[];
}

/** Undefined while any of its points is not known, and where the two sides leave nothing between them. */
export function limitPointsOf(
  envelope: Envelope,
  side: LimitSide,
  units: BalanceUnits,
): LimitPoints | undefined {
  return isCrossed(envelope) ? undefined : pointsOf(envelope, side, units);
}

/** Where the forward limit of an envelope lies aft of its aft limit; undefined where it does nowhere. */
export function crossedLimits(envelope: Envelope, units: BalanceUnits): Crossing | undefined {
  const [forward, aft] = (["forward", "aft"] as const).map((side) => pointsOf(envelope, side, units)?.points);
  return forward && aft && crossingOf({ forward, aft });
}

const isCrossed = onceEach(
  (envelope: Envelope) => crossedLimits(envelope, balanceUnits(undefined)) !== undefined,
);

function pointsOf(envelope: Envelope, side: LimitSide, units: BalanceUnits): LimitPoints | undefined {
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
