import type { Severity } from "../../core/findings/finding";
import { acceptedWords } from "../../core/views/acceptance-words";
import type { Comparison, Consequences, FileChange } from "../../core/views/comparison";
import { isQuiet } from "../../core/views/comparison";
import {
  comparisonCaution,
  consequenceWords,
  counted,
  type FindingGroup,
  fieldRow,
  fileWords,
  findingGroups,
  headOf,
  marginColumns,
  marginRow,
  overallWords,
  type Row,
  shownAtMost,
  standingWords,
  valueColumns,
  valueRow,
} from "../../core/views/comparison-words";
import { type Breach, breachWords } from "../../core/views/gate";
import { hang, indent, paint, table, withoutCommands, wrap } from "./layout";

interface Style {
  readonly width: number;
  readonly color: boolean;
}

/** The comparison for a terminal: what was changed, then what follows from it. */
export function comparisonText(
  comparison: Comparison & {
    readonly breaches: readonly { readonly path: string; readonly breach: Breach }[];
  },
  style: Style,
): string {
  const { base, head, files, records, breaches } = comparison;
  const standing = standingWords(comparison, "->");
  const blocks = [
    hang(`${base} -> ${head}`, style.width),
    ...(standing ? [hang(standing, style.width)] : []),
    overallWords(comparison),
    ...files.map((file) => fileBlock(file, style)),
    ...records.filter((record) => !isQuiet(record)).map((record) => recordBlock(record, style)),
    ...(breaches.length > 0 ? [breachBlock(breaches, style)] : []),
    wrap(comparisonCaution, style.width),
  ];
  return withoutCommands(`${blocks.join("\n\n")}\n`);
}

function fileBlock(file: FileChange, { width }: Style): string {
  const { shown, more } = headOf(file.changes, shownAtMost.changes);
  const lines = shown.map((change) => {
    const [field, before, after] = fieldRow(change);
    return hang(`  ${field}: ${before} -> ${after}`, width);
  });
  return [hang(`Changed in ${fileWords(file)}`, width), ...lines, ...moreOf(more, "change")].join("\n");
}

function recordBlock(record: Consequences, style: Style): string {
  const { path, findings, margins, values } = record;
  const marginHead = headOf(margins, shownAtMost.margins);
  const valueHead = headOf(values, shownAtMost.values);
  return [
    hang(`What follows in ${path}: ${consequenceWords(record)}`, style.width),
    ...findingGroups(findings).flatMap((group) => findingLines(group, style)),
    ...columns(marginColumns, marginHead.shown.map(marginRow), style),
    ...moreOf(marginHead.more, "margin"),
    ...columns(valueColumns, valueHead.shown.map(valueRow), style),
    ...moreOf(valueHead.more, "value"),
  ].join("\n");
}

function findingLines({ kind, findings }: FindingGroup, { width, color }: Style): string[] {
  const { shown, more } = headOf(findings, shownAtMost.findings);
  const lines = shown.map(({ severity, rule, message, accepted }) => {
    const words = accepted ? `${message} - ${acceptedWords(accepted)}` : message;
    const head = `  ${kind} ${paint(severity, severity as Severity, color)} ${rule}`;
    return `${head}\n${indent(wrap(words, width - 4), 4)}`;
  });
  return [...lines, ...moreOf(more, "finding")];
}

/** A table that fits; one that is too wide becomes a list. */
function columns(head: Row, rows: readonly Row[], { width }: Style): string[] {
  if (rows.length === 0) return [];
  const whole = indent(table(head, rows), 2);
  if (whole.split("\n").every((line) => line.length <= width)) return ["", whole];
  const broken = rows.map(([name, kind, before, after]) =>
    hang(`  ${name}  ${kind}: ${before} -> ${after}`, width),
  );
  return ["", `  ${head[0]}`, ...broken];
}

function breachBlock(
  breaches: readonly { readonly path: string; readonly breach: Breach }[],
  { width }: Style,
): string {
  const lines = breaches.map(({ path, breach }) => hang(`  ${path}: ${breachWords(breach)}`, width));
  return ["Margins below what is wanted", ...lines].join("\n");
}

function moreOf(count: number, noun: string): string[] {
  return count === 0 ? [] : [`  ${counted(count, noun)} more; the JSON form has all`];
}
