/**
 * Everything that may be put right without a look at each: the only proven remedy of a finding, where its rule
 * calls its remedies safe. One after the other, each proved on what the ones before it left, until none is left.
 */
import { type CheckOptions, check } from "./check";
import { Draft } from "./edits/draft";
import type { TextEdit } from "./edits/text-edit";
import type { Finding } from "./findings/finding";
import { limits } from "./limits";
import type { RecordSource } from "./project";
import { type LoadedRecord, loadRecord } from "./records/record";
import { type ProvenRemedy, provenRemedies } from "./remedies";
import { ruleById } from "./rules";

export interface AllFixed {
  /** Edits of the record's text, in its order. */
  readonly edits: readonly TextEdit[];
  /** What was done, in the order in which it was. */
  readonly titles: readonly string[];
}

/** Whether there may be something to put right; the proof is left to `fixAllSafe`. */
export function mayBeFixed(findings: readonly Finding[]): boolean {
  return findings.some(({ rule }) => ruleById.get(rule)?.isSafe);
}

/** Pure apart from what `source` does; never throws. */
export function fixAllSafe(record: LoadedRecord, source: RecordSource, options: CheckOptions = {}): AllFixed {
  const draft = new Draft(record.text);
  const titles: string[] = [];
  const refused = new Set<string>();
  let now = record;
  while (titles.length < limits.fixesTogether) {
    const remedy = nextSafe(now, source, options, refused);
    if (!remedy) break;
    draft.apply(remedy.edits);
    titles.push(remedy.title);
    now = loadRecord(now.file, now.kind, draft.text, now);
  }
  return { edits: draft.edits(), titles };
}

function nextSafe(
  record: LoadedRecord,
  source: RecordSource,
  options: CheckOptions,
  refused: Set<string>,
): ProvenRemedy | undefined {
  const judgement = check(record, source, options);
  for (const finding of judgement.findings) {
    const name = `${finding.rule} ${finding.subject} ${finding.what}`;
    if (!ruleById.get(finding.rule)?.isSafe || refused.has(name)) continue;
    const [remedy, another] = provenRemedies(finding, judgement, source, options);
    if (remedy && !another) return remedy;
    refused.add(name);
  }
  return undefined;
}
