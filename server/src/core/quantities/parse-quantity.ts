import { nearestUnits } from "./find-unit";
import { formatMeasure } from "./format";
import { gaugeNumber, sizeAfterUnit } from "./gauge";
import { type Part, partOf } from "./part";
import { impossibility, type Sign } from "./possibility";
import type { ProblemFacts, QuantityProblem } from "./problem";
import { type Quantity, quantityOf } from "./quantity";
import { readNumber } from "./read-number";
import { readUnit, type UnitRead } from "./read-unit";
import { readTolerance, splitTolerance } from "./tolerance";
import { type Dimension, dimensions, type UnitSymbol } from "./units";

/** What a quantity must be. Arms and stations may be negative: the place in a record decides, not the unit. */
export interface Expectation<D extends Dimension = Dimension> {
  readonly dimension: D;
  /** "any" when left out. */
  readonly sign?: Sign;
  /** Whether a tolerance may be written behind it ("31.2 ± 0.5 lb"): only where what it does is computed. */
  readonly tolerance?: boolean;
}

export type Parsed<D extends Dimension = Dimension> =
  | { readonly quantity: Quantity<D> }
  | { readonly problem: QuantityProblem };

/**
 * Reads a number with its unit, such as "14.5 ft", "1-1/4 in", "1/0 AWG" or "20 %", and its tolerance where one
 * may stand: the quantity, or the first thing that is wrong with it. Never throws, and takes time linear in the
 * length of the text.
 */
export function parseQuantity<D extends Dimension>(text: string, expected: Expectation<D>): Parsed<D> {
  const split = splitTolerance(text);
  if (!split) return parseBare(text, expected);
  const { dimension } = expected;
  const fault = problemIn(dimension);
  const { number, at, bare } = split;
  if (number.kind === "fault") {
    return fault(at, { kind: "not-a-number", reason: number.reason, suggestions: [] });
  }
  const parsed = parseBare(bare, expected);
  if ("problem" in parsed) return { problem: { ...parsed.problem, at: split.placeOf(parsed.problem.at) } };
  const { quantity } = parsed;
  const read = readTolerance(text, number, quantity.unit, dimension);
  if ("facts" in read) return fault(read.at, read.facts);
  if (expected.tolerance !== true) return fault(at, { kind: "tolerance-unused", bare });
  return { quantity: { ...quantity, tolerance: read.tolerance } };
}

/** Makes problems of texts that should have been of one dimension. */
function problemIn(dimension: Dimension) {
  return (at: Part, facts: ProblemFacts): { problem: QuantityProblem } => ({
    problem: { ...facts, at, expected: dimension, example: dimensions[dimension].example },
  });
}

/** A number with its unit and nothing else. */
function parseBare<D extends Dimension>(text: string, expected: Expectation<D>): Parsed<D> {
  const { dimension } = expected;
  const problem = problemIn(dimension);

  const afterUnit = dimension === "gauge" ? sizeAfterUnit(text) : undefined;
  const number = readNumber(text, afterUnit ?? 0);
  const { at } = number;
  if (number.kind === "fault") {
    const suggestions = number.meant.map((meant) =>
      (text.slice(0, at.start) + meant + text.slice(at.end)).trim(),
    );
    return problem(at, { kind: "not-a-number", reason: number.reason, suggestions });
  }

  const unit = afterUnit === undefined ? readUnit(text, at.end, dimension) : gaugeBefore(text, at);
  if (unit.kind === "missing") return problem(at, { kind: "unit-missing" });
  if (unit.kind === "unknown") {
    const nearest = nearestUnits(text.slice(unit.at.start, unit.at.end), dimension);
    return problem(unit.at, { kind: "unit-unknown", nearest });
  }
  if (unit.found.dimension !== dimension) {
    return problem(unit.at, { kind: "wrong-dimension", unit: unit.found.unit, found: unit.found.dimension });
  }
  if (unit.trailing) {
    const understood = text.slice(0, unit.trailing.start).trim();
    const rest = text.slice(unit.trailing.start, unit.trailing.end);
    const meant = inOneUnit(number.value, unit.found.unit, rest, dimension);
    return problem(unit.trailing, { kind: "not-understood", understood, ...(meant && { meant }) });
  }

  const written = dimension === "gauge" ? gaugeNumber(text.slice(at.start, at.end)) : number.value;
  const quantity = quantityOf(written, unit.found.unit as UnitSymbol<D>, dimension);
  const fault = impossibility(quantity, expected.sign ?? "any");
  return fault ? problem(at, { kind: "impossible", ...fault }) : { quantity };
}

/** Feet and inches, pounds and ounces, hours and minutes. */
const inTwoUnits: ReadonlySet<Dimension> = new Set(["length", "mass", "time", "angle"]);

/** What two parts of one quantity come to in the unit of the first: "21.5 ft" for 21 ft and "6 in". */
function inOneUnit(first: number, unit: UnitSymbol, rest: string, dimension: Dimension): string | undefined {
  if (!inTwoUnits.has(dimension) || first < 0) return undefined;
  const number = readNumber(rest, 0);
  if (number.kind === "fault") return undefined;
  const second = readUnit(rest, number.at.end, dimension);
  if (second.kind !== "found" || second.trailing || second.found.dimension !== dimension) return undefined;
  const share = quantityOf(number.value, second.found.unit, dimension).si / quantityOf(1, unit, dimension).si;
  return share > 0 && share < 1 ? formatMeasure(first + share, unit, 6) : undefined;
}

/** The unit of a wire size that has it in front. */
function gaugeBefore(text: string, size: Part): UnitRead {
  const found = { dimension: "gauge", unit: "AWG" } as const;
  const at = partOf(text, 0, size.start);
  const trailing = partOf(text, size.end);
  return trailing.start === trailing.end
    ? { kind: "found", at, found }
    : { kind: "found", at, found, trailing };
}
