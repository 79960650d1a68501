import type { Impossible } from "./problem";
import { inUnit, type Quantity } from "./quantity";
import { gaugeRange, type UnitSymbol } from "./units";

/** Signs that a value may have. Of no meaning for temperatures and wire gauges, which have bounds of their own. */
export type Sign = "any" | "not-negative" | "positive";

type Fault = Pick<Impossible, "reason" | "unit" | "relation" | "bound">;

/**
 * Sizes beyond which a written number is a slip, whatever its unit: nothing in an aircraft needs them, and
 * inside them no square or quotient of two quantities leaves the range of a number.
 */
const largest = 1e15;
const smallest = 1e-15;

const absoluteZero: Quantity<"temperature"> = { dimension: "temperature", written: 0, unit: "K", si: 0 };

/** Why a quantity can't be true, or undefined if it can. */
export function impossibility(quantity: Quantity, sign: Sign): Fault | undefined {
  if (isOf(quantity, "gauge")) return gaugeFault(quantity.written);
  const { written, unit } = quantity;
  const size = Math.abs(written);
  if (Number.isNaN(size)) return { reason: "not-finite", unit };
  if (size > largest) return fault("too-large", "at-most", largest, unit);
  if (size > 0 && size < smallest) return fault("too-small", "at-least", smallest, unit);
  if (isOf(quantity, "temperature")) {
    const bound = inUnit(absoluteZero, quantity.unit);
    return quantity.si < 0 ? fault("below-absolute-zero", "at-least", bound, unit) : undefined;
  }
  if (sign === "positive" && written <= 0) return fault("not-positive", "more-than", 0, unit);
  if (sign === "not-negative" && written < 0) return fault("negative", "at-least", 0, unit);
  return undefined;
}

/** A size that was written as no gauge is (NaN) has no bound to name. */
function gaugeFault(gauge: number): Fault | undefined {
  if (Number.isNaN(gauge)) return { reason: "not-a-gauge", unit: "AWG" };
  if (gauge > gaugeRange.thinnest) return fault("not-a-gauge", "at-most", gaugeRange.thinnest, "AWG");
  if (gauge < gaugeRange.thickest) return fault("not-a-gauge", "at-least", gaugeRange.thickest, "AWG");
  return undefined;
}

function fault(
  reason: Impossible["reason"],
  relation: NonNullable<Impossible["relation"]>,
  bound: number,
  unit: UnitSymbol,
): Fault {
  return { reason, relation, bound, unit };
}

function isOf<D extends "gauge" | "temperature">(quantity: Quantity, dimension: D): quantity is Quantity<D> {
  return quantity.dimension === dimension;
}
