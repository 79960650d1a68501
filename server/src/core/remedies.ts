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
import type { PlacedProblem, Remedy, Rule } from "./rules/rule";

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
  if (!rule || !isPlace(finding.anchor) || finding.anchor.file !== judgement.record.file) return;
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
  return (problem && rule.corrections?.(problem as PlacedProblem, project)) ?? [];
}

function smallestOf(remedies: readonly Remedy[], trial: Trial): ProvenRemedy | undefined {
  let second: ProvenRemedy | undefined;
  for (const remedy of remedies) {
    const outcome = trial.of(remedy);
    if (outcome?.clearsPlace) return outcome.proven;
    second ??= outcome?.proven;
  }
  return second;
}

/** Checks a record again with changes in it, and compares. */
class Trial {
  private readonly before: ReadonlyMap<string, number>;

  constructor(
    private readonly finding: Finding,
    private readonly rule: Rule,
    private readonly judgement: Judgement,
    private readonly source: RecordSource,
    private readonly options: CheckOptions,
  ) {
    this.before = countOf(judgement.findings);
  }

  /** Undefined where the changes can't be made, the finding stays, or they do harm. */
  of({ title, changes }: Remedy): { proven: ProvenRemedy; clearsPlace: boolean } | undefined {
    const { record, findings } = this.judgement;
    if (changes.some(({ place }) => place.file !== record.file)) return undefined;
    const edits = editsFor(changes, record.reading);
    if (!edits || edits.length === 0) return undefined;
    const text = applyEdits(record.text, edits);
    const after = check(loadRecord(record.file, record.kind, text, record), this.source, this.options);
    const left = countOf(after.findings);
    const isLeft = (one: Finding) => (left.get(keyOf(one)) ?? 0) >= (this.before.get(keyOf(one)) ?? 0);
    if (isLeft(this.finding)) return undefined;
    const faults = after.findings.filter(({ severity }) => severity !== "information");
    const revealed = [...countOf(faults)].filter(([key, count]) => count > (this.before.get(key) ?? 0));
    if (revealed.length > 0 && !this.mayReveal(faults)) return undefined;
    return {
      proven: { title, edits, revealed: revealed.length },
      clearsPlace: !findings.some((one) => this.standsBeside(one) && isLeft(one)),
    };
  }

  /** A text that was put right may show what was hidden, but no new fault of the text itself. */
  private mayReveal(faults: readonly Finding[]): boolean {
    if (!this.rule.isSafe) return false;
    const ofText = faults.filter(({ rule }) => ["text", "record"].includes(ruleById.get(rule)?.area ?? ""));
    return [...countOf(ofText)].every(([key, count]) => count <= (this.before.get(key) ?? 0));
  }

  private standsBeside({ anchor }: Finding): boolean {
    return isPlace(anchor) && isPlace(this.finding.anchor) && anchor.node === this.finding.anchor.node;
  }
}

function countOf(findings: readonly Finding[]): Map<string, number> {
  const counts = new Map<string, number>();
  for (const finding of findings) counts.set(keyOf(finding), (counts.get(keyOf(finding)) ?? 0) + 1);
  return counts;
}

/** A finding is the same one after an edit when its rule and its subject are. */
function keyOf({ rule, subject, what }: Finding): string {
  return `${rule} ${subject || what}`;
}
