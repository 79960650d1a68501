import { check, type Judgement } from "../../server/src/core/check";
import { applyEdits } from "../../server/src/core/edits/text-edit";
import type { RecordSource } from "../../server/src/core/project";
import { loadRecord } from "../../server/src/core/records/record";
import { recordKindOf } from "../../server/src/core/records/schema";
import { provenRemedies } from "../../server/src/core/remedies";

const alone: RecordSource = { resolve: () => undefined, load: () => undefined };

export function judge(text: string, file = "test.install.yaml"): Judgement {
  return check(loadRecord(file, recordKindOf(file)!, text), alone);
}

/** Rules of all findings but those that only inform. */
export function faultsIn(text: string, file?: string): string[] {
  return judge(text, file)
    .findings.filter(({ severity }) => severity !== "information")
    .map(({ rule }) => rule);
}

/** The proven remedies of the first finding of a rule, each with the text that it leaves. */
export function remediesFor(rule: string, text: string, file?: string) {
  const judgement = judge(text, file);
  const finding = judgement.findings.find((one) => one.rule === rule);
  if (!finding) throw new Error(`${rule} is not found`);
  return [...provenRemedies(finding, judgement, alone)].map(({ title, edits, revealed }) => ({
    title,
    edits,
    revealed,
    text: applyEdits(text, edits),
  }));
}

export function titlesFor(rule: string, text: string, file?: string): string[] {
  return remediesFor(rule, text, file).map(({ title }) => title);
}
