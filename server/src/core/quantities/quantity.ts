import { exactly, minus, over, plus, times, toNumber } from "./exact";
import {
  allDimensions,
  type Dimension,
  type DimensionOf,
  definitionOf,
  isUnitOf,
  type OwnUnit,
  type UnitDefinition,
  type UnitSymbol,
} from "./units";

/**
 * A number with its unit, as somebody wrote it, and the same in the SI base unit of its dimension (see
 * `dimensions`). A wire gauge counts down from 30 AWG over 0 for 1/0 to -3 for 4/0, in `written` and in `si`.
 */
export interface Quantity<D extends Dimension = Dimension> {
  readonly dimension: D;
  readonly written: number;
  readonly unit: UnitSymbol<D>;
  readonly si: number;
  /** How far it may be off either way, in `unit`; only where a tolerance was written. */
  readonly tolerance?: number;
}

/**
 * A number in a unit, as a quantity. Units that measure more than one dimension ("g", "degC", "lb/ft") need to
 * be told which. `value` is taken for the decimal number that it prints as, and `si` is rounded once.
 */
export function quantityOf<D extends Dimension>(
  value: number,
  unit: UnitSymbol<D>,
  dimension: D,
): Quantity<D>;
export function quantityOf<U extends OwnUnit>(value: number, unit: U): Quantity<DimensionOf<U>>;
export function quantityOf(value: number, unit: UnitSymbol, dimension = dimensionOf(unit)): Quantity {
  return { dimension, written: value, unit, si: toSi(value, definitionOf(dimension, unit)) };
}

/**
 * The number that a quantity is in another unit of its dimension, rounded once; in its own unit exactly what
 * was written.
 *
 * Precondition: the unit measures the quantity's dimension. The types see to it wherever the dimension is
 * known; a caller that holds any `Quantity` and any `UnitSymbol` sees to it itself (`isUnitOf`).
 */
export function inUnit<D extends Dimension>(quantity: Quantity<D>, unit: UnitSymbol<D>): number {
  if (unit === quantity.unit) return quantity.written;
  return between(
    quantity.written,
    definitionOf(quantity.dimension, quantity.unit),
    definitionOf(quantity.dimension, unit),
  );
}

/**
 * A value in one unit, in another unit of the same dimension; rounded once, so that 12 in are 1 ft and 0.1 ft
 * are 1.2 in. Units that measure more than one dimension need to be told which: 10 degC are 50 degF as a
 * temperature, 18 degF as a difference.
 *
 * Precondition: both units measure one dimension, as the types demand, and the value is finite; one that is
 * not comes back as it is.
 */
export function convert<D extends Dimension>(
  value: number,
  from: UnitSymbol<D>,
  to: UnitSymbol<D>,
  dimension: D,
): number;
export function convert<U extends OwnUnit>(value: number, from: U, to: UnitSymbol<DimensionOf<U>>): number;
export function convert(
  value: number,
  from: UnitSymbol,
  to: UnitSymbol,
  dimension = dimensionOf(from),
): number {
  return between(value, definitionOf(dimension, from), definitionOf(dimension, to));
}

/** The dimension of a unit that measures only one. */
function dimensionOf(unit: UnitSymbol): Dimension {
  return allDimensions.find((dimension) => isUnitOf(dimension, unit))!;
}

function toSi(value: number, unit: UnitDefinition): number {
  if (!Number.isFinite(value)) return value;
  return toNumber(plus(times(exactly(value), unit.factor), unit.offset));
}

function between(value: number, from: UnitDefinition, to: UnitDefinition): number {
  if (!Number.isFinite(value)) return value;
  const si = plus(times(exactly(value), from.factor), from.offset);
  return toNumber(over(minus(si, to.offset), to.factor));
}
