import type { Part } from "./part";
import type { Dimension, UnitSymbol } from "./units";

/** Facts about a text that is not the quantity expected; whoever shows them makes the sentence. */
export type QuantityProblem =
  | NotANumber
  | UnitMissing
  | UnitUnknown
  | WrongDimension
  | Impossible
  | NotUnderstood
  | ToleranceUnused;

interface Problem {
  /** The wrong part; empty only if the text is. */
  readonly at: Part;
  readonly expected: Dimension;
  /** A right value of the expected dimension, such as "14.5 ft". */
  readonly example: string;
}

/** The text does not start with a number as records write it. */
export interface NotANumber extends Problem {
  readonly kind: "not-a-number";
  readonly reason: NumberFault;
  /** The whole text with the number put right, likeliest first: two if it can be read in two ways. */
  readonly suggestions: readonly string[];
}

/** "malformed" is a run of digits and signs that is no single number, such as "1.2.3" or "5-6". */
export type NumberFault =
  | "empty"
  | "no-number"
  | "decimal-comma"
  | "thousands-comma"
  | "thousands-space"
  | "malformed";

/** A number and nothing else. */
export interface UnitMissing extends Problem {
  readonly kind: "unit-missing";
}

/** No unit of any dimension is written like this. */
export interface UnitUnknown extends Problem {
  readonly kind: "unit-unknown";
  /** Units of the expected dimension that may have been meant, likeliest first; may be empty. */
  readonly nearest: readonly UnitSymbol[];
}

/** A unit that measures something else. */
export interface WrongDimension extends Problem {
  readonly kind: "wrong-dimension";
  readonly unit: UnitSymbol;
  readonly found: Dimension;
}

/** A number with a right unit that can't be true. */
export interface Impossible extends Problem {
  readonly kind: "impossible";
  readonly reason:
    | "not-finite"
    | "too-large"
    | "too-small"
    | "negative"
    | "not-positive"
    | "below-absolute-zero"
    | "not-a-gauge";
  /** As written; the bound is in this unit. */
  readonly unit: UnitSymbol;
  /**
   * What the value must keep to; both are left out where no number says it. For "too-small" and "too-large" it
   * is about the size, whatever the sign.
   */
  readonly relation?: "at-least" | "more-than" | "at-most";
  readonly bound?: number;
}

/** More text behind a quantity that is right in itself. */
export interface NotUnderstood extends Problem {
  readonly kind: "not-understood";
  /** The quantity before it, as written. */
  readonly understood: string;
  /** Both together in the unit of the first, where the second is a lesser part of the same: "21.5 ft". */
  readonly meant?: string;
}

/** A tolerance where nothing is computed from one. */
export interface ToleranceUnused extends Problem {
  readonly kind: "tolerance-unused";
  /** The quantity without it. */
  readonly bare: string;
}

type FactsOf<P> = P extends Problem ? Omit<P, keyof Problem> : never;

/** What a problem says beyond where it is and what was expected. */
export type ProblemFacts = FactsOf<QuantityProblem>;
