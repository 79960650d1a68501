/**
 * Two revisions of records, compared by what a change does to the aircraft: which values moved, which findings
 * came and went, and what became of the margins. Plain data; every number is one of the value graph.
 */
import type { Judgement } from "../check";
import { type Acceptance, type Assessment, type Finding, marginOf, type Severity } from "../findings/finding";
import { valuesOf, weightsOf } from "../graph/derivations";
import { subjectWords, type Value } from "../graph/value";
import { assessmentKeys, type Identity, identitiesOf, identityKey } from "../identity";
import { type FieldChange, fieldChanges } from "./field-changes";

export interface Comparison {
  /** What the two revisions are called. */
  readonly base: string;
  readonly head: string;
  /** Records whose own text says something else, or that came or went. */
  readonly files: readonly FileChange[];
  /** What follows, for each record that a change reaches. */
  readonly records: readonly Consequences[];
}

export interface FileChange {
  readonly path: string;
  readonly status: "added" | "removed" | "changed";
  /** Empty for a record that came or went. */
  readonly changes: readonly FieldChange[];
}

export interface Consequences {
  readonly path: string;
  /** What each revision comes to as a whole; null where the record is not there. */
  readonly standing: { readonly before: Standing | null; readonly after: Standing | null };
  readonly findings: FindingChanges;
  /** Margins that moved, the least first. */
  readonly margins: readonly MarginChange[];
  /** The least margins of each revision. */
  readonly worst: {
    readonly before: readonly MarginSummary[];
    readonly after: readonly MarginSummary[];
  };
  /** Values that moved, came or went: those with a margin first, the least first. */
  readonly values: readonly ValueChange[];
}

export interface Standing {
  /** Open ones; what a deviation accepts is not counted. */
  readonly errors: number;
  readonly warnings: number;
  /** Null while it is not known, and for a record that is no install. */
  readonly emptyWeight: StandingValue | null;
  readonly emptyCg: StandingValue | null;
}

export interface StandingValue {
  readonly value: number;
  readonly unit: string;
}

export interface FindingChanges {
  readonly appeared: readonly FindingSummary[];
  readonly gone: readonly FindingSummary[];
  /** Found before, and accepted by a deviation since. */
  readonly accepted: readonly FindingSummary[];
  /** Found in both revisions, accepted in both. */
  readonly stillAccepted: readonly FindingSummary[];
  /** How many are the same in both. */
  readonly stayed: number;
}

export interface FindingSummary extends Identity {
  readonly severity: Severity;
  readonly message: string;
  readonly accepted: Omit<Acceptance, "place"> | null;
}

export interface MarginSummary {
  readonly rule: string;
  readonly subject: string;
  readonly quantity: string;
  readonly condition: string | null;
  readonly unit: string;
  readonly value: number;
  readonly limit: number;
  readonly holds: boolean;
  /** Share of the limit that is left; null where there is nothing to take a share of. */
  readonly margin: number | null;
}

export interface MarginChange {
  readonly rule: string;
  readonly subject: string;
  readonly before: MarginSummary | null;
  readonly after: MarginSummary | null;
}

export interface ValueChange {
  readonly subject: string;
  readonly quantity: string;
  readonly condition: string | null;
  readonly unit: string;
  readonly before: number | null;
  readonly after: number | null;
  /** Margin of this very value against a limit, where it is held against one. */
  readonly marginBefore: number | null;
  readonly marginAfter: number | null;
}

/** How many of the least margins are told. */
const worstCount = 5;

/** A change of a record's own text; undefined where it says the same. One side is undefined where it is not there. */
export function compareTexts(
  path: string,
  base: Judgement["record"] | undefined,
  head: Judgement["record"] | undefined,
): FileChange | undefined {
  if (!base || !head)
    return base || head ? { path, status: head ? "added" : "removed", changes: [] } : undefined;
  const changes = base.text === head.text ? [] : fieldChanges(base, head);
  return changes.length > 0 ? { path, status: "changed", changes } : undefined;
}

/** What follows from the change of a record, or of one that it names; `path` names it for people. */
export function compareJudgements(
  path: string,
  base: Judgement | undefined,
  head: Judgement | undefined,
): Consequences {
  const [before, after] = [summariesOf(base), summariesOf(head)];
  return {
    path,
    standing: { before: standingOf(base), after: standingOf(head) },
    findings: findingChanges(base, head),
    margins: marginChanges(before, after),
    worst: { before: worstOf(before), after: worstOf(after) },
    values: valueChanges(base, head),
  };
}

function standingOf(judgement: Judgement | undefined): Standing | null {
  if (!judgement) return null;
  const { project, findings } = judgement;
  const open = (severity: Severity) =>
    findings.filter((finding) => !finding.accepted && finding.severity === severity).length;
  const { emptyWeight, emptyCg } = project ? weightsOf(project).change : {};
  const shown = (one: Value | undefined) => (one ? { value: one.value, unit: one.unit } : null);
  return {
    errors: open("error"),
    warnings: open("warning"),
    emptyWeight: shown(emptyWeight),
    emptyCg: shown(emptyCg),
  };
}

/** Whether anything follows at all. */
export function isQuiet({ findings, margins, values }: Consequences): boolean {
  const { appeared, gone, accepted } = findings;
  return [appeared, gone, accepted, margins, values].every((list) => list.length === 0);
}

function findingChanges(base: Judgement | undefined, head: Judgement | undefined): FindingChanges {
  const [before, after] = [findingsByKey(base), findingsByKey(head)];
  const appeared: FindingSummary[] = [];
  const accepted: FindingSummary[] = [];
  const stillAccepted: FindingSummary[] = [];
  let stayed = 0;
  for (const [key, finding] of after) {
    const known = before.get(key);
    if (!known || (known.accepted && !finding.accepted)) appeared.push(finding);
    else if (finding.accepted && !known.accepted) accepted.push(finding);
    else if (finding.accepted) stillAccepted.push(finding);
    else stayed++;
  }
  const gone = [...before].filter(([key]) => !after.has(key)).map(([, finding]) => finding);
  return {
    appeared: appeared.toSorted(bySeverity),
    gone: gone.toSorted(bySeverity),
    accepted,
    stillAccepted,
    stayed,
  };
}

const rank: Readonly<Record<Severity, number>> = { error: 0, warning: 1, information: 2 };

function bySeverity(a: FindingSummary, b: FindingSummary): number {
  return rank[a.severity] - rank[b.severity];
}

function findingsByKey(judgement: Judgement | undefined): Map<string, FindingSummary> {
  if (!judgement) return new Map();
  const { record, findings, assessments } = judgement;
  return new Map(
    [...identitiesOf(record, findings, assessments)].map(([finding, identity]) => [
      identityKey(identity),
      summaryOf(finding, identity),
    ]),
  );
}

function summaryOf({ severity, what, accepted }: Finding, identity: Identity): FindingSummary {
  const { place: _, ...acceptance } = accepted ?? {};
  return {
    ...identity,
    severity,
    message: what,
    accepted: accepted ? (acceptance as Omit<Acceptance, "place">) : null,
  };
}

function summariesOf(judgement: Judgement | undefined): Map<string, MarginSummary> {
  const keyed = assessmentKeys(judgement?.assessments ?? []);
  return new Map([...keyed].map(([key, assessment]) => [key, marginSummary(assessment)]));
}

export function marginSummary(assessment: Assessment): MarginSummary {
  const { rule, subject, value, limit, holds } = assessment;
  return {
    rule,
    subject: subjectWords(subject),
    quantity: value.quantity,
    condition: value.condition ?? null,
    unit: value.unit,
    value: value.value,
    limit: limit.value,
    holds,
    margin: marginOf(assessment) ?? null,
  };
}

function worstOf(margins: ReadonlyMap<string, MarginSummary>): MarginSummary[] {
  return [...margins.values()]
    .filter(({ margin }) => margin !== null)
    .sort((a, b) => a.margin! - b.margin!)
    .slice(0, worstCount);
}

function marginChanges(
  before: ReadonlyMap<string, MarginSummary>,
  after: ReadonlyMap<string, MarginSummary>,
): MarginChange[] {
  const changes: MarginChange[] = [];
  for (const key of new Set([...after.keys(), ...before.keys()])) {
    const [old, now] = [before.get(key), after.get(key)];
    if (old && now && !isMoved(old.margin ?? undefined, now.margin ?? undefined) && old.holds === now.holds)
      continue;
    const { rule, subject } = (now ?? old)!;
    changes.push({ rule, subject, before: old ?? null, after: now ?? null });
  }
  const least = ({ before: old, after: now }: MarginChange) =>
    now?.margin ?? old?.margin ?? Number.POSITIVE_INFINITY;
  return changes.sort((a, b) => least(a) - least(b) || 0);
}

function valueChanges(base: Judgement | undefined, head: Judgement | undefined): ValueChange[] {
  const [before, after] = [valuesByKey(base), valuesByKey(head)];
  const changes: ValueChange[] = [];
  for (const key of new Set([...after.keys(), ...before.keys()])) {
    const [old, now] = [before.get(key), after.get(key)];
    if (!isMoved(old?.value.value, now?.value.value)) continue;
    const { subject, quantity, condition, unit } = (now ?? old)!.value;
    changes.push({
      subject: subjectWords(subject),
      quantity,
      condition: condition ?? null,
      unit,
      before: old?.value.value ?? null,
      after: now?.value.value ?? null,
      marginBefore: old?.margin ?? null,
      marginAfter: now?.margin ?? null,
    });
  }
  const least = ({ marginBefore, marginAfter }: ValueChange) =>
    marginAfter ?? marginBefore ?? Number.POSITIVE_INFINITY;
  return changes.sort((a, b) => least(a) - least(b) || shareMoved(b) - shareMoved(a) || 0);
}

/** How far a value moved, as a share of the larger of the two. */
function shareMoved({ before, after }: ValueChange): number {
  if (before === null || after === null) return 1;
  return Math.abs(after - before) / Math.max(Math.abs(before), Math.abs(after));
}

interface Measured {
  readonly value: Value;
  /** The least margin of the value against any limit. */
  readonly margin: number | undefined;
}

function valuesByKey(judgement: Judgement | undefined): Map<string, Measured> {
  if (!judgement?.project) return new Map();
  const margins = new Map<Value, number>();
  for (const assessment of judgement.assessments) {
    const margin = marginOf(assessment);
    if (margin === undefined) continue;
    margins.set(assessment.value, Math.min(margin, margins.get(assessment.value) ?? margin));
  }
  const keyed = new Map<string, Measured>();
  for (const value of valuesOf(judgement.project)) {
    const name = [value.subject.kind, value.subject.id, value.quantity, value.condition ?? "", value.unit];
    let key = JSON.stringify(name);
    for (let count = 2; keyed.has(key); count++) key = JSON.stringify([...name, count]);
    keyed.set(key, { value, margin: margins.get(value) });
  }
  return keyed;
}

/**
 * A difference that an engineer would see. The network is solved to a tolerance, so that another order of the
 * same wires may move a value by less than this.
 */
const visible = 1e-6;

export function isMoved(before: number | undefined, after: number | undefined): boolean {
  if (before === undefined || after === undefined) return before !== after;
  return Math.abs(before - after) > visible * Math.max(Math.abs(before), Math.abs(after), visible);
}
