import type { Assessment, Facts, Problem, Severity } from "../findings/finding";
import type { Project } from "../project";
import type { Place } from "../records/written";
import type { Source } from "../source";

/** One thing that can be wrong with a record. Each rule is one file of this folder. */
export interface Rule<F extends Facts = Facts> {
  /** Names the fault in the trade's words; kebab-case; published. */
  readonly id: string;
  readonly severity: Severity;
  readonly area:
    | "text"
    | "record"
    | "wires"
    | "protection"
    | "sources"
    | "weights"
    | "cutouts"
    | "deviations";
  /** The fault in one line. */
  readonly title: string;
  /** Why it matters, in plain Markdown; the why of every message. */
  readonly why: string;
  readonly sources: readonly Source[];
  /** Puts the facts of one finding into words. */
  say(facts: F): Message;
  /** Judges a project; rules of the text and of the record's shape are raised where it is read instead. */
  check?(project: Project): Iterable<Assessment | Problem>;
  /** Changes that might mend a finding, the smallest first. Each is tried before it is offered. */
  remedies?(assessment: Assessment, project: Project): Iterable<Remedy>;
  readonly examples: readonly Example[];
}

export interface Message {
  /** One line that stands alone: what is wrong, with the numbers. */
  readonly what: string;
  /** What to do about it. */
  readonly todo: string;
}

/** What might mend a finding: changes of the record that it stands in, made together. */
export interface Remedy {
  readonly title: string;
  readonly changes: readonly Change[];
}

/** Puts another text where a node stands. */
export interface Change {
  readonly place: Place;
  readonly text: string;
}

/** The commonest remedy: another text for one value. */
export function rewrite(title: string, place: Place, text: string): Remedy {
  return { title, changes: [{ place, text }] };
}

/** A record that shows the rule; executed by the tests, and printed by `tailcone explain`. */
export interface Example {
  readonly title: string;
  /** Text of an install record, or of the kind that `file` names. */
  readonly text: string;
  /** Defaults to `example.install.yaml`. */
  readonly file?: string;
  /** Other records that it links, by file name. */
  readonly others?: Readonly<Record<string, string>>;
  /** Words that the rule's findings have, in order; empty when the rule must be silent. */
  readonly finds: readonly string[];
}

/** Gives a rule its exact type of facts, and hides it from those who only list rules. */
export function defineRule<F extends Facts>(rule: Rule<F>): Rule {
  return rule as unknown as Rule;
}
