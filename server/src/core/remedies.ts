/**
 * Remedies that were tried: the record is checked again with the change in it, and the change is offered only
 * when its finding is gone and no new fault came. What only informs may come: a thicker wire's identification
 * is out of date, and that is to be told, not to keep the wire thin.
 */
import { type CheckOptions, check, type Judgement } from "./check";
import { editsFor } from "./edits/edit";
import { applyEdits, type TextEdit } from "./edits/text-edit";
import { type Finding, isPlace } from "./findings/finding";
import type { RecordSource } from "./project";
import { loadRecord } from "./records/record";
import { ruleById } from "./rules";
import type { PlacedProblem, Remedy, Rule, StretchProblem } from "./rules/rule";

export interface ProvenRemedy {
  readonly title: string;
  /** In the order of the text; none touches another. */
  readonly edits: readonly TextEdit[];
  /**
   * How many faults come to light that could not be seen before. Only what puts a text right may bring any:
   * a gauge whose key was misspelt is judged when it is read.
   */
  readonly revealed: number;
}

/** A series that is tried from end to end sooner than it is asked whether its end is enough. */
const fewRemedies = 3;

/** More candidates than any list of standard sizes has, and no more than that of all series together. */
const mostCandidates = { ofSeries: 24, ofFinding: 72 } as const;

/**
 * The proven remedies of a finding: of each series of its rule the smallest that clears every finding at the
 * same place, or else the smallest that clears this one. In the order in which the rule names the series; one
 * after the other, as each is a check or more.
 */
export function* provenRemedies(
  finding: Finding,
  judgement: Judgement,
  source: RecordSource,
  options: CheckOptions = {},
): Generator<ProvenRemedy, void> {
  const rule = ruleById.get(finding.rule);
  if (!rule || finding.anchor.file !== judgement.record.file) return;
  const series = new Map<string, Remedy[]>();
  let count = 0;
  for (const remedy of candidatesOf(finding, rule, judgement)) {
    if (count++ >= mostCandidates.ofFinding) break;
    const name = remedy.series ?? "";
    series.set(name, [...(series.get(name) ?? []), remedy]);
  }
  const trial = new Trial(finding, rule, judgement, source, options);
  for (const remedies of series.values()) {
    const found = smallestOf(remedies.slice(0, mostCandidates.ofSeries), trial);
    if (found) yield found;
  }
}

/** The first proven remedy of a finding. Undefined where its rule knows none or none proves itself. */
export function proveRemedy(
  finding: Finding,
  judgement: Judgement,
  source: RecordSource,
  options: CheckOptions = {},
): ProvenRemedy | undefined {
  return provenRemedies(finding, judgement, source, options).next().value ?? undefined;
}

/** What was seen when a remedy was tried. */
export function outcomeWords({ revealed }: ProvenRemedy): string {
  if (revealed === 0) return "this finding goes and no new fault comes";
  return `this finding goes, and ${revealed === 1 ? "one comes" : `${revealed} come`} to light`;
}

/** What a finding's rule would try; empty where it knows nothing. */
function candidatesOf(finding: Finding, rule: Rule, { project }: Judgement): Iterable<Remedy> {
  const { assessment, problem } = finding;
  if (assessment && project) return rule.remedies?.(assessment, project) ?? [];
  if (!problem) return [];
  const remedies = isPlace(problem.place)
    ? rule.corrections?.(problem as PlacedProblem, project)
    : rule.layouts?.(problem as StretchProblem);
  return remedies ?? [];
}

/** Each remedy of a series goes further than the one before it: what the last leaves, all of them do. */
function smallestOf(remedies: readonly Remedy[], trial: Trial): ProvenRemedy | undefined {
  let second: ProvenRemedy | undefined;
  for (const [index, remedy] of remedies.entries()) {
    if (index === 1 && remedies.length > fewRemedies && trial.isLeftBy(remedies.at(-1)!)) return second;
    const outcome = trial.of(remedy);
    if (outcome?.clearsPlace) return outcome.proven;
    second ??= outcome?.proven;
  }
  return second;
}

/** What a check found, as far as it is compared: how often each fault was found. */
interface Tally {
  readonly all: ReadonlyMap<string, number>;
  /** Without what only informs. */
  readonly faults: ReadonlyMap<string, number>;
  /** Of the text and of the record's shape. */
  readonly ofText: ReadonlyMap<string, number>;
}

/**
 * What was found with each set of edits, by judgement: the next gauge is tried for the drop, the rating and the
 * breaker of one wire.
 */
const tallies = new WeakMap<Judgement, Map<string, Tally>>();

/** Checks a record again with changes in it, and compares. */
class Trial {
  private readonly before: ReadonlyMap<string, number>;
  private readonly known: Map<string, Tally>;

  constructor(
    private readonly finding: Finding,
    private readonly rule: Rule,
    private readonly judgement: Judgement,
    private readonly source: RecordSource,
    private readonly options: CheckOptions,
  ) {
    this.before = countOf(judgement.findings);
    this.known = tallies.get(judgement) ?? new Map();
    tallies.set(judgement, this.known);
  }

  /** Whether the finding stays, once the changes are made. */
  isLeftBy(remedy: Remedy): boolean {
    const made = this.made(remedy);
    return made !== undefined && this.isLeft(this.finding, made.after);
  }

  /** Undefined where the changes can't be made, the finding stays, or they do harm. */
  of(remedy: Remedy): { proven: ProvenRemedy; clearsPlace: boolean } | undefined {
    const made = this.made(remedy);
    if (!made) return undefined;
    const { edits, after } = made;
    if (this.isLeft(this.finding, after)) return undefined;
    const revealed = this.newIn(after.faults);
    // A text that was put right may show what was hidden, but no new fault of the text itself.
    if (revealed > 0 && !(this.rule.isSafe && this.newIn(after.ofText) === 0)) return undefined;
    return {
      proven: { title: remedy.title, edits, revealed },
      clearsPlace: !this.judgement.findings.some((one) => this.standsBeside(one) && this.isLeft(one, after)),
    };
  }

  /** Undefined where the changes can't be made. */
  private made({ changes, renames = {} }: Remedy): { edits: readonly TextEdit[]; after: Tally } | undefined {
    const { record } = this.judgement;
    if (changes.some(({ place }) => place.file !== record.file)) return undefined;
    const edits = editsFor(changes, record.reading);
    if (!edits || edits.length === 0) return undefined;
    const name = JSON.stringify(edits);
    const after = this.known.get(name) ?? this.tally(edits, renames);
    this.known.set(name, after);
    return { edits, after };
  }

  private isLeft(finding: Finding, after: Tally): boolean {
    return (after.all.get(keyOf(finding)) ?? 0) >= (this.before.get(keyOf(finding)) ?? 0);
  }

  private tally(edits: readonly TextEdit[], renames: Readonly<Record<string, string>>): Tally {
    const { record } = this.judgement;
    const text = applyEdits(record.text, edits);
    const { findings } = check(loadRecord(record.file, record.kind, text, record), this.source, this.options);
    const faults = findings.filter(({ severity }) => severity !== "information");
    const ofText = faults.filter(({ rule }) => ["text", "record"].includes(ruleById.get(rule)?.area ?? ""));
    return {
      all: countOf(findings, renames),
      faults: countOf(faults, renames),
      ofText: countOf(ofText, renames),
    };
  }

  /** How many faults there are more than before, of each kind where there are more. */
  private newIn(after: ReadonlyMap<string, number>): number {
    let count = 0;
    for (const [key, found] of after) count += Math.max(0, found - (this.before.get(key) ?? 0));
    return count;
  }

  private standsBeside({ anchor }: Finding): boolean {
    return isPlace(anchor) && isPlace(this.finding.anchor) && anchor.node === this.finding.anchor.node;
  }
}

function countOf(findings: readonly Finding[], renames: Remedy["renames"] = {}): Map<string, number> {
  const counts = new Map<string, number>();
  for (const finding of findings) {
    const key = keyOf(finding, renames);
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  return counts;
}

/** A finding is the same one after an edit when its rule and its subject are. */
function keyOf(finding: Finding, renames: Remedy["renames"] = {}): string {
  const { rule, subject } = finding;
  return `${rule} ${(renames[subject] ?? subject) || finding.what}`;
}
