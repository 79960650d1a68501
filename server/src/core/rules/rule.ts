import type { Change } from "../edits/change";
import type { Assessment, Facts, Problem, Severity, Stretch } from "../findings/finding";
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
    | "lines"
    | "climate"
    | "eligibility"
    | "mounts"
    | "placement"
    | "structure"
    | "air"
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
  /** Changes that might make a value keep its limit, the smallest first. Each is tried before it is offered. */
  remedies?(assessment: Assessment, project: Project): Iterable<Remedy>;
  /** The same for a problem; a record that is no install record, or can't be linked, has no project. */
  corrections?(problem: PlacedProblem<F>, project: Project | undefined): Iterable<Remedy>;
  /** The same for a problem that stands where no node does. */
  layouts?(problem: StretchProblem<F>): Iterable<Remedy>;
  /**
   * Its remedies change no part, size or place of the installation: they put right what was written wrongly, or
   * make a statement agree with what the same record holds. So the only one of a finding may be applied with
   * others without a look at each, and a fault that comes to light by it is told instead of held against it.
   */
  readonly isSafe?: true;
  /** Written when somebody asks: a check has no use for them, and all together they are half of the rules. */
  examples(): readonly Example[];
}

export interface Message {
  /** One line that stands alone: what is wrong, with the numbers. */
  readonly what: string;
  /** What to do about it. */
  readonly todo: string;
}

/** A problem that stands at a node, with the facts of its rule. */
export interface PlacedProblem<F extends Facts = Facts> extends Problem {
  readonly facts: F;
  readonly place: Place;
}

/** A problem that stands where no node does, with the facts of its rule. */
export interface StretchProblem<F extends Facts = Facts> extends Problem {
  readonly facts: F;
  readonly place: Stretch;
}

/** What might mend a finding: changes of the record that it stands in, made together. */
export interface Remedy {
  readonly title: string;
  readonly changes: readonly Change[];
  /**
   * Remedies of one series are the same change, each going further than the one before it: only the first that
   * does is offered. Remedies of several series are alternatives. Left out: a series of its own name, "".
   */
  readonly series?: string;
  /** Subjects that have another name afterwards, such as "wire P101A8", by the new name. */
  readonly renames?: Readonly<Record<string, string>>;
}

/** The commonest remedy: another text for one value. */
export function rewrite(title: string, place: Place, text: string, series = ""): Remedy {
  return { title, changes: [{ place, text }], series };
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
