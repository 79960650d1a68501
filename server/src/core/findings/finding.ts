import type { Subject, Value } from "../graph/value";
import type { Node, Span } from "../reading/tree";
import type { Place } from "../records/written";
import { isAtMost } from "../rounding";

export type Severity = "error" | "warning" | "information";

/** Numbers, names and lists that a sentence needs; never the sentence itself. */
export type Facts = Readonly<Record<string, Fact | undefined>>;
export type Fact = string | number | boolean | readonly string[];

/** Something that a rule found wrong, before it is put into words. */
export interface Problem {
  readonly rule: string;
  readonly place: Anchor;
  readonly facts: Facts;
  readonly subject?: Subject;
  readonly related?: readonly Related[];
}

/** A node of a record, or a stretch of its text where no node stands. */
export type Anchor = Place | Stretch;

/** Part of a record's text, such as the white space before a line. */
export interface Stretch {
  readonly file: string;
  readonly span: Span;
}

/** Another place that a reader should look at, with a few words why. */
export interface Related {
  readonly place: Place;
  readonly words: string;
}

/**
 * A value held against its limit. It is kept whether it holds or not: what holds is the margin that hover and
 * worksheet show, what does not is a finding.
 */
export interface Assessment {
  readonly rule: string;
  readonly subject: Subject;
  /** Where a finding would point. */
  readonly place: Place;
  readonly value: Value;
  readonly limit: Value;
  readonly sense: "at-most" | "at-least";
  readonly holds: boolean;
  /**
   * What the margin is a share of: the limit, unless the rule says otherwise, as for an arm, whose number
   * depends on where the datum is. Undefined within: there is nothing to take a share of.
   */
  readonly scale?: { readonly of: number | undefined };
  readonly facts: Facts;
  readonly related: readonly Related[];
}

/** A finding, rendered: what every view and report shows. */
export interface Finding {
  readonly rule: string;
  readonly severity: Severity;
  /** Kind and name of the thing, such as "wire P101A8"; empty for the record as a whole. */
  readonly subject: string;
  readonly anchor: Anchor;
  /** One line that stands alone: what is wrong, with the numbers. */
  readonly what: string;
  /** What to do about it. */
  readonly todo: string;
  /** What the words were made from. */
  readonly facts: Facts;
  readonly related: readonly Related[];
  /** What it was before it was put into words: a value against its limit, or else a problem. */
  readonly assessment?: Assessment;
  readonly problem?: Problem;
  /** Set where the record accepts it; its severity is then only that of information. */
  readonly accepted?: Acceptance;
}

/** A deviation that the record accepts, as its `deviations` state it. */
export interface Acceptance {
  /** What the finding would be without it. */
  readonly severity: Severity;
  readonly reason: string;
  /** The approved data that it rests on. */
  readonly reference: string;
  readonly by: string;
  /** Last day, as YYYY-MM-DD. */
  readonly until: string;
  /** Where the deviation is written. */
  readonly place: Place;
}

/** Compares in full precision; limits are inclusive. */
export function holds(value: number, sense: Assessment["sense"], limit: number): boolean {
  return sense === "at-most" ? isAtMost(value, limit) : isAtMost(limit, value);
}

/** Room that is left, as a share of the limit or of the rule's own scale; negative when it is exceeded. */
export function marginOf({ value, limit, sense, scale }: Assessment): number | undefined {
  const of = scale ? scale.of : limit.value;
  if (of === undefined || of === 0) return undefined;
  return (sense === "at-most" ? limit.value - value.value : value.value - limit.value) / of;
}

/** What fails first, then by margin, the least first; what has none last. */
export function byMargin(a: Assessment, b: Assessment): number {
  if (a.holds !== b.holds) return a.holds ? 1 : -1;
  return (marginOf(a) ?? Number.POSITIVE_INFINITY) - (marginOf(b) ?? Number.POSITIVE_INFINITY) || 0;
}

export function isPlace(anchor: Anchor): anchor is Place {
  return "node" in anchor;
}

export function nodeOf(anchor: Anchor): Node | undefined {
  return isPlace(anchor) ? anchor.node : undefined;
}
