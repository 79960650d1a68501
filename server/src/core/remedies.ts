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
import type { Node } from "./reading/tree";
import { loadRecord } from "./records/record";
import { ruleById } from "./rules";

export interface ProvenRemedy {
  readonly title: string;
  /** In the order of the text; none touches another. */
  readonly edits: readonly TextEdit[];
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
    const edits = editsFor(candidate.changes, record.reading);
    if (!edits) continue;
    const remedy = { title: candidate.title, edits };
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

/** A finding is the same one after an edit when its rule and its subject are. */
function keyOf({ rule, subject, what }: Finding): string {
  return `${rule} ${subject || what}`;
}

function standsOn({ anchor }: Finding, node: Node): boolean {
  return isPlace(anchor) && anchor.node === node;
}
