/**
 * What makes a finding the same finding in another revision of its record: the rule, the thing, the field and,
 * where a rule judges a thing in several conditions, the condition. No line, no number, no count is part of it.
 */
import type { Assessment, Finding } from "./findings/finding";
import { isPlace } from "./findings/finding";
import { fieldIn, fieldNamesOf } from "./records/field-names";
import type { LoadedRecord } from "./records/record";

export interface Identity {
  readonly rule: string;
  readonly subject: string;
  /** Named as in records/field-names; empty for the record as a whole. */
  readonly field: string;
  /** Condition, or which of several that nothing else tells apart; mostly empty. */
  readonly which: string;
}

/** The identity of every finding of one judged record. */
export function identitiesOf(
  record: LoadedRecord,
  findings: readonly Finding[],
  assessments: readonly Assessment[],
): ReadonlyMap<Finding, Identity> {
  const fieldOf = fieldNamesOf(record.reading.root, record.typing);
  const isPerCondition = conditionCounts(assessments);
  const seen = new Map<string, number>();
  return new Map(
    findings.map((finding) => {
      const { rule, subject, anchor, facts, assessment } = finding;
      const place = (isPlace(anchor) && fieldOf(anchor.node)) || "";
      const field = namesMissingKey.has(rule) ? fieldIn(place, String(facts.key)) : place;
      const condition = assessment
        ? isPerCondition(assessment)
          ? (assessment.value.condition ?? "")
          : ""
        : String(facts.condition ?? "");
      const identity = { rule, subject, field, which: condition };
      const key = identityKey(identity);
      const count = (seen.get(key) ?? 0) + 1;
      seen.set(key, count);
      return [finding, count === 1 ? identity : { ...identity, which: `${condition}~${count}` }];
    }),
  );
}

/** Rules whose findings stand at a map and are about a key that it lacks. */
const namesMissingKey: ReadonlySet<string> = new Set(["key-missing"]);

/** One text for an identity, equal only for equal ones. */
export function identityKey({ rule, subject, field, which }: Identity): string {
  return JSON.stringify([rule, subject, field, which]);
}

/** What makes an assessment the same one in another revision. */
export function assessmentKeys(assessments: readonly Assessment[]): ReadonlyMap<string, Assessment> {
  const isPerCondition = conditionCounts(assessments);
  const keyed = new Map<string, Assessment>();
  for (const assessment of assessments) {
    const key = assessmentKey(assessment, isPerCondition(assessment));
    // A thing that is judged twice by a rule is as good as its worse judgement.
    const known = keyed.get(key);
    if (!known || (known.holds && !assessment.holds)) keyed.set(key, assessment);
  }
  return keyed;
}

function assessmentKey({ rule, subject, value }: Assessment, withCondition: boolean): string {
  const condition = withCondition ? (value.condition ?? "") : "";
  return JSON.stringify([rule, subject.kind, subject.id, value.quantity, condition]);
}

/** Whether a rule judges this thing in more than one condition, or only in the one that governs. */
function conditionCounts(assessments: readonly Assessment[]): (assessment: Assessment) => boolean {
  const conditions = new Map<string, Set<string | undefined>>();
  for (const assessment of assessments) {
    const key = assessmentKey(assessment, false);
    const known = conditions.get(key) ?? new Set();
    conditions.set(key, known.add(assessment.value.condition));
  }
  return (assessment) => conditions.get(assessmentKey(assessment, false))!.size > 1;
}
