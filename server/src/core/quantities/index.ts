/** Quantities with units: reading what a record says, converting, and writing for people. */
export { formatApart, formatMeasure, formatNumber, roundDown, roundUp } from "./format";
export { type Expectation, type Parsed, parseQuantity } from "./parse-quantity";
export type { Part } from "./part";
export type { Sign } from "./possibility";
export type {
  Impossible,
  NotANumber,
  NotUnderstood,
  NumberFault,
  QuantityProblem,
  ToleranceUnused,
  UnitMissing,
  UnitUnknown,
  WrongDimension,
} from "./problem";
export { convert, inUnit, type Quantity, quantityOf } from "./quantity";
export {
  allDimensions,
  type Dimension,
  type DimensionOf,
  dimensions,
  isUnitOf,
  type OwnUnit,
  type SharedUnit,
  type UnitSymbol,
  unitsOf,
} from "./units";
