/**
 * Remedies that were tried: the record is checked again with the change in it, and the change is offered only
 * when its finding is gone and no new fault came. What only informs may come: a thicker wire's identification
 * is out of date, and that is to be told, not to keep the wire thin.
 */
import { type CheckOptions, check, type Judgement } from "./check";
import { type Finding, isPlace } from "./findings/finding";
import type { RecordSource } from "./project";
import type { Node, Span } from "./reading/tree";
import { type LoadedRecord, loadRecord } from "./records/record";
import { ruleById } from "./rules";
import type { Remedy } from "./rules/rule";

export interface ProvenRemedy {
  readonly title: string;
  /** In the order of the text; none touches another. */
  readonly edits: readonly TextEdit[];
}

/** A stretch of a record's text, absolute, and what stands there afterwards. */
export interface TextEdit extends Span {
  readonly newText: string;
}

/** More candidates than any list of standard sizes has. */
const mostCandidates = 24;

/**
 * The smallest proven remedy of a finding: the first that clears every finding at the same place, or else the
 * first that clears this one. Undefined where the rule knows none or none proves itself.
 */
export function proveRemedy(
  finding: Finding,
  judgement: Judgement,
  source: RecordSource,
  options: CheckOptions = {},
): ProvenRemedy | undefined {
  const { project, record } = judgement;
  if (!finding.assessment || !project || !isPlace(finding.anchor)) return undefined;
  const candidates = ruleById.get(finding.rule)?.remedies?.(finding.assessment, project);
  const before = new Set(judgement.findings.map(keyOf));
  const node = finding.anchor.node;
  let second: ProvenRemedy | undefined;
  let tried = 0;
  for (const candidate of candidates ?? []) {
    if (candidate.changes.some(({ place }) => place.file !== record.file) || tried++ >= mostCandidates)
      continue;
    const remedy = { title: candidate.title, edits: editsOf(candidate, record) };
    const text = applyEdits(record.text, remedy.edits);
    const after = check(loadRecord(record.file, record.kind, text, record), source, options);
    const left = new Set(after.findings.map(keyOf));
    const faults = after.findings.filter(({ severity }) => severity !== "information");
    if (left.has(keyOf(finding)) || faults.some((one) => !before.has(keyOf(one)))) continue;
    const others = judgement.findings.filter((one) => standsOn(one, node) && left.has(keyOf(one)));
    if (others.length === 0) return remedy;
    second ??= remedy;
  }
  return second;
}

function editsOf({ changes }: Remedy, { reading }: LoadedRecord): TextEdit[] {
  return changes
    .map(({ place, text }) => ({ ...reading.spanOf(place.node), newText: text }))
    .toSorted((a, b) => a.start - b.start);
}

/** The text after edits that stand in its order. */
export function applyEdits(text: string, edits: readonly TextEdit[]): string {
  let done = 0;
  const parts: string[] = [];
  for (const { start, end, newText } of edits) {
    parts.push(text.slice(done, start), newText);
    done = end;
  }
  return parts.join("") + text.slice(done);
}

/** A finding is the same one after an edit when its rule and its subject are. */
function keyOf({ rule, subject, what }: Finding): string {
  return `${rule} ${subject || what}`;
}

function standsOn({ anchor }: Finding, node: Node): boolean {
  return isPlace(anchor) && anchor.node === node;
}
