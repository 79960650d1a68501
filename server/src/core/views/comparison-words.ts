/** Words that the comparison has in every form. */

import { showMeasure, type ValueUnit } from "../graph/value";
import { formatApart } from "../quantities";
import type {
  Comparison,
  Consequences,
  FileChange,
  FindingChanges,
  FindingSummary,
  MarginChange,
  Standing,
  StandingValue,
  ValueChange,
} from "./comparison";
import { isMoved, isQuiet } from "./comparison";
import type { FieldChange } from "./field-changes";
import { percent } from "./gate";

export const comparisonCaution =
  "A calculation aid: it supports, and does not replace, approved data, the maker's instructions and a licensed " +
  "person's judgement; local rules prevail. It never approves anything.";

/** How much of a list people are shown; the JSON form has all of it. */
export const shownAtMost = { changes: 40, findings: 40, margins: 12, values: 20 } as const;

export interface Head<T> {
  readonly shown: readonly T[];
  readonly more: number;
}

export function headOf<T>(list: readonly T[], count: number): Head<T> {
  return { shown: list.slice(0, count), more: Math.max(0, list.length - count) };
}

/** Both sides of a change: "8 AWG", "12 AWG"; what is not there is said. */
function fieldSides({ before, after }: FieldChange): readonly [string, string] {
  return [before === null ? "not there" : shown(before), after === null ? "not there" : shown(after)];
}

function shown(text: string): string {
  return text === "" ? "nothing" : text;
}

/** Both sides of a value, with as many digits as it takes to tell them apart. */
function valueSides({ before, after, unit }: ValueChange): readonly [string, string] {
  if (before === null || after === null || unit === "AWG") {
    const side = (value: number | null) => (value === null ? "not there" : showMeasure(value, unitOf(unit)));
    return [side(before), side(after)];
  }
  const [old, now] = formatApart(before, after);
  return unit === "1" ? [old, now] : [`${old} ${unit}`, `${now} ${unit}`];
}

/** Both sides of a margin, told apart as values are: "12.3 %", "not there", "no longer judged". */
function marginSides({ before, after }: MarginChange): readonly [string, string] {
  const [old, now] = [before?.margin ?? null, after?.margin ?? null];
  if (old !== null && now !== null) {
    const [one, other] = formatApart(100 * old, 100 * now, 3);
    return [`${one} %`, `${other} %`];
  }
  return [
    before === null ? "not there" : marginWords(old),
    after === null ? "no longer judged" : marginWords(now),
  ];
}

function marginWords(margin: number | null): string {
  return margin === null ? "no share" : percent(margin);
}

/** A row of a table that every form has: what it is about, of which kind, and both sides. */
export type Row = readonly [what: string, kind: string, before: string, after: string];

export const marginColumns: Row = ["margin, least first", "rule", "before", "after"];

export function marginRow(change: MarginChange): Row {
  const { condition } = (change.after ?? change.before)!;
  return [whereWords(change.subject, condition), change.rule, ...marginSides(change)];
}

export const valueColumns: Row = ["value", "quantity", "before", "after"];

export function valueRow(change: ValueChange): Row {
  return [whereWords(change.subject, change.condition), change.quantity, ...valueSides(change)];
}

export const fieldColumns = ["field", "before", "after"] as const;

export function fieldRow(change: FieldChange): readonly [field: string, before: string, after: string] {
  return [change.field, ...fieldSides(change)];
}

/** Findings that are told, in this order; those that are there as before are only counted. */
export function findingGroups(findings: FindingChanges): readonly FindingGroup[] {
  const { appeared, gone, accepted, stillAccepted } = findings;
  const groups: readonly FindingGroup[] = [
    { kind: "new", title: "New", findings: appeared },
    { kind: "gone", title: "Gone", findings: gone },
    { kind: "accepted", title: "Accepted now", findings: accepted },
    { kind: "still accepted", title: "Accepted before and now", findings: stillAccepted },
  ];
  return groups.filter((group) => group.findings.length > 0);
}

export interface FindingGroup {
  readonly kind: "new" | "gone" | "accepted" | "still accepted";
  readonly title: string;
  readonly findings: readonly FindingSummary[];
}

/** "wire P102A8 in survey". */
function whereWords(subject: string, condition: string | null): string {
  return condition === null ? subject : `${subject} in ${condition}`;
}

/** One line: how many findings came and went, and how many values moved. */
export function consequenceWords({ findings, values, margins }: Consequences): string {
  const { appeared, gone, accepted, stayed } = findings;
  const isSame = appeared.length + gone.length + accepted.length === 0;
  const open = appeared.filter((one) => !one.accepted);
  const errors = open.filter(({ severity }) => severity === "error").length;
  const warnings = open.filter(({ severity }) => severity === "warning").length;
  const informing = open.length - errors - warnings;
  const parts = [
    ...(errors > 0 ? [counted(errors, "new error")] : []),
    ...(warnings > 0 ? [counted(warnings, "new warning")] : []),
    ...(informing > 0 ? [`${informing} new information`] : []),
    ...(gone.length > 0 ? [`${counted(gone.length, "finding")} gone`] : []),
    ...(accepted.length > 0 ? [`${counted(accepted.length, "finding")} now accepted`] : []),
    ...(isSame && stayed > 0 ? [`${counted(stayed, "finding")} as before`] : []),
    ...(margins.length > 0 ? [`${counted(margins.length, "margin")} moved`] : []),
    ...(values.length > 0 ? [`${counted(values.length, "value")} moved`] : []),
  ];
  return parts.length === 0 ? "nothing follows from it" : parts.join(", ");
}

/** How the records stand before and after, all together: "Errors 0 -> 2, ..."; undefined where none was checked. */
export function standingWords({ records }: Comparison, arrow: string): string | undefined {
  if (records.length === 0) return undefined;
  const sides = (["before", "after"] as const).map((side) =>
    records.flatMap(({ standing }) => standing[side] ?? []),
  );
  const sums = (key: "errors" | "warnings") =>
    sides.map((side) => side.reduce((sum, one) => sum + one[key], 0)).join(` ${arrow} `);
  const moved = records.length === 1 ? records : records.filter((record) => !isQuiet(record));
  const empty =
    moved.length !== 1
      ? []
      : [
          movedWords("empty weight", moved[0]!, (standing) => standing.emptyWeight, arrow),
          movedWords("empty CG", moved[0]!, (standing) => standing.emptyCg, arrow),
        ];
  const words = [`Errors ${sums("errors")}`, `warnings ${sums("warnings")}`, ...empty];
  return `${words.filter((one) => one !== undefined).join(", ")}.`;
}

function movedWords(
  name: string,
  { standing }: Consequences,
  of: (standing: Standing) => StandingValue | null,
  arrow: string,
): string | undefined {
  const [before, after] = [standing.before, standing.after].map((one) => one && of(one));
  if (!before && !after) return undefined;
  const side = (one: typeof before) => (one ? showMeasure(one.value, unitOf(one.unit)) : "not known");
  if (!before || !after || before.unit !== after.unit)
    return `${name} ${side(before)} ${arrow} ${side(after)}`;
  if (!isMoved(before.value, after.value)) return `${name} stays ${side(after)}`;
  const [old, now] = formatApart(before.value, after.value);
  return `${name} ${old} ${arrow} ${now} ${after.unit}`;
}

/** What is said when nothing is different, or only what has no effect. */
export function overallWords({ files, records }: Comparison): string {
  if (files.length === 0 && records.length === 0) return "The records say the same.";
  if (files.length === 0) return "Only units, order or comments differ: the records say the same.";
  const changes = files.reduce((sum, file) => sum + Math.max(1, file.changes.length), 0);
  return `${counted(changes, "change")} in ${counted(files.length, "record")}.`;
}

export function fileWords({ path, status }: FileChange): string {
  return status === "changed" ? path : `${path} (${status})`;
}

export function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? "" : "s"}`;
}

function unitOf(unit: string): ValueUnit {
  return unit as ValueUnit;
}
