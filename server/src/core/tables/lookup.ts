import type { Source } from "../source";

/**
 * The answer of every published table: a value with its source, or the facts of why the table has none.
 * A table is never stretched: what lies outside it, and what its page leaves blank, is not covered.
 */
export type Lookup<T> = Covered<T> | NotCovered;

export interface Covered<T> {
  readonly covered: true;
  readonly value: T;
  readonly source: Source;
  /** What a reader of the number has to know besides its source, one sentence each. */
  readonly notes: readonly string[];
}

export interface NotCovered {
  readonly covered: false;
  readonly reason: CoverageGap;
  readonly source: Source;
}

/** Facts, so that each view can say them in its own words. */
export interface CoverageGap {
  /** The quantity that falls outside, in words: "gauge", "temperature rise". */
  readonly quantity: string;
  readonly asked: number | string;
  /** Unit of `asked` and of the bounds; empty for a plain number, a gauge or a word. */
  readonly unit: string;
  readonly covers: Coverage;
  /** The other quantity that narrows the bounds, such as "bundle of 25 wires". */
  readonly given?: string;
}

export type Coverage =
  | { readonly kind: "range"; readonly from: number; readonly to: number }
  | { readonly kind: "list"; readonly values: readonly (number | string)[] };

export function covered<T>(value: T, source: Source, notes: readonly string[] = []): Covered<T> {
  return { covered: true, value, source, notes };
}

export function notCovered(reason: CoverageGap, source: Source): NotCovered {
  return { covered: false, reason, source };
}

export function range(from: number, to: number): Coverage {
  return { kind: "range", from, to };
}

export function list(values: readonly (number | string)[]): Coverage {
  return { kind: "list", values };
}
