import { type Part, partOf } from "./part";
import type { ProblemFacts } from "./problem";
import { convert } from "./quantity";
import { type NumberRead, readNumber } from "./read-number";
import { readUnit } from "./read-unit";
import type { Dimension, UnitSymbol } from "./units";

/** The ways to write the sign: "±", "+/-", "+ / -". */
const sign = /\u00b1|\+\s?\/\s?[-\u2212]/;

/** A quantity's text taken apart at the sign of its tolerance. */
export interface ToleranceText {
  /** The same quantity without its tolerance: "31.2 lb" of "31.2 ± 0.5 lb". */
  readonly bare: string;
  /** Where a part of `bare` stands in the text. */
  readonly placeOf: (part: Part) => Part;
  /** The sign and all behind it. */
  readonly at: Part;
  /** The number of the tolerance. */
  readonly number: NumberRead;
}

/**
 * Takes "31.2 ± 0.5 lb", "31.2 +/- 0.5 lb" or "31.2 lb ± 8 oz" apart; undefined where no tolerance is written.
 * Where the unit stands behind the tolerance alone, it is that of both numbers. Linear in the text's length.
 */
export function splitTolerance(text: string): ToleranceText | undefined {
  const found = sign.exec(text);
  const head = text.slice(0, found?.index ?? 0).trimEnd();
  if (!found || head === "") return undefined;
  const from = found.index + found[0].length;
  const [value, number] = [readNumber(head, 0), readNumber(text, from)];
  const hasUnit = value.kind === "fault" || value.at.end < head.length;
  const behind = hasUnit ? text.length : number.at.end;
  const inText = (offset: number) => (offset > head.length ? offset - head.length + behind : offset);
  return {
    bare: head + text.slice(behind),
    placeOf: ({ start, end }) =>
      partOf(text, start < head.length ? start : inText(start + 1) - 1, inText(end)),
    at: partOf(text, found.index),
    number,
  };
}

/** The tolerance as a number in the unit of its quantity, or what is wrong with it. */
export function readTolerance<D extends Dimension>(
  text: string,
  { at, value }: { readonly at: Part; readonly value: number },
  unit: UnitSymbol<D>,
  dimension: D,
): { readonly tolerance: number } | { readonly at: Part; readonly facts: ProblemFacts } {
  const own = readUnit(text, at.end, dimension);
  if (own.kind === "missing") return { at, facts: { kind: "unit-missing" } };
  if (own.kind === "unknown") return { at: own.at, facts: { kind: "unit-unknown", nearest: [] } };
  const { found, trailing } = own;
  if (found.dimension !== dimension) {
    return { at: own.at, facts: { kind: "wrong-dimension", unit: found.unit, found: found.dimension } };
  }
  if (trailing) {
    return {
      at: trailing,
      facts: { kind: "not-understood", understood: text.slice(0, trailing.start).trim() },
    };
  }
  if (!(value >= 0) || !Number.isFinite(value)) {
    const facts = { kind: "impossible", reason: "negative", relation: "at-least", bound: 0 } as const;
    return { at, facts: { ...facts, unit: found.unit } };
  }
  return { tolerance: convert(value, found.unit as UnitSymbol<D>, unit, dimension) };
}
