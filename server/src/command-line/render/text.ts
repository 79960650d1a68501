import type { CheckOptions, Judgement } from "../../core/check";
import type { Finding } from "../../core/findings/finding";
import { isPlace } from "../../core/findings/finding";
import type { Value } from "../../core/graph/value";
import type { RecordSource } from "../../core/project";
import { type LineIndex, lineIndex } from "../../core/reading";
import type { LoadedRecord } from "../../core/records/record";
import { outcomeWords, proveRemedy } from "../../core/remedies";
import { ruleById } from "../../core/rules";
import { citeTogether } from "../../core/source";
import { acceptedWords } from "../../core/views/acceptance-words";
import { calculationLines, isPlainCopy } from "../../core/views/calculation";
import { sourcesBehind } from "../../core/views/finding-sources";
import { type Breach, breachWords } from "../../core/views/gate";
import { PlaceNames } from "../../core/views/place-names";
import type { RecordReport, ReportedFinding, Tally } from "../record-report";
import { type FleetLine, fleetLine, renderFleet } from "./fleet";
import { hang, indent, labelled, paint, printable, withoutCommands, wrap } from "./layout";
import type { ReportWriter } from "./report";

export interface TextStyle {
  readonly width: number;
  readonly color: boolean;
  /** One line for each finding. */
  readonly isBrief: boolean;
}

/** Findings for people; at length where the findings bring their words with them, else in a line each. */
export function textReport(style: TextStyle): ReportWriter {
  const installs: FleetLine[] = [];
  return {
    open: () => "",
    add: (record) => {
      const line = fleetLine(record);
      if (line) installs.push(line);
      const shown = record.findings.filter(({ known }) => !known);
      const blocks = shown.map((finding) => finding.text ?? briefly(finding, record, style));
      if (record.leftOut > 0) blocks.push(`${record.path}: ${record.leftOut} more findings are not shown.\n`);
      for (const breach of record.breaches) blocks.push(breachBlock(breach, record, style));
      return blocks.map((block) => withoutCommands(block) + (style.isBrief ? "" : "\n")).join("");
    },
    close: (tally) => (style.isBrief ? "" : renderFleet(installs, style.width)) + summary(tally, style),
  };
}

function briefly(finding: ReportedFinding, { path }: RecordReport, style: TextStyle): string {
  const { severity, rule, message, start, accepted } = finding;
  const words = accepted ? `${message} - ${acceptedWords(accepted)}` : message;
  return `${path}:${start.line}:${start.column}: ${paint(severity, severity, style.color)} [${rule}] ${words}\n`;
}

function breachBlock(breach: Breach, { path }: RecordReport, style: TextStyle): string {
  const words = breachWords(breach);
  return style.isBrief
    ? `${path}: ${paint("margin", "error", style.color)} ${words}\n`
    : `${path}  ${paint("margin", "error", style.color)}\n${indent(wrap(words, style.width - 2), 2)}\n`;
}

/** Words of findings at length: where, what, the line itself, about which thing and field, why, what to do, the calculation and its sources. */
export function findingTexts(
  judgement: Judgement,
  context: TextContext,
  style: TextStyle,
): (finding: Finding, field: string) => string {
  const places = new Places(judgement.record);
  const path = context.pathOf(judgement.record.file);
  return (finding, field) => findingBlock(finding, field, judgement, places, path, context, style);
}

export interface TextContext {
  readonly source: RecordSource;
  readonly options: CheckOptions;
  readonly pathOf: (file: string) => string;
}

function findingBlock(
  finding: Finding,
  field: string,
  judgement: Judgement,
  places: Places,
  path: string,
  context: TextContext,
  style: TextStyle,
): string {
  const { rule, severity, subject, what, todo, assessment, related, accepted } = finding;
  const width = style.width;
  const remedy = accepted ? undefined : proveRemedy(finding, judgement, context.source, context.options);
  const where = `${path}:${places.name(finding)}`;
  const isNarrow = `${where}  ${severity}  ${rule}`.length > width;
  const lines = [
    `${where}${isNarrow ? "\n" : ""}  ${paint(severity, severity, style.color)}  ${rule}`,
    indent(wrap(what, width - 2), 2),
    "",
    places.excerpt(finding, width),
    "",
    // In the words that a deviation names it by.
    labelled("  about", [subject || "record", field].filter(Boolean).join(" at "), width),
    ...(accepted ? [labelled("  deviates", acceptedWords(accepted), width, 11)] : []),
    labelled("  why", ruleById.get(rule)?.why ?? "", width),
    ...(accepted ? [] : [labelled("  do", todo, width)]),
  ];
  if (remedy) lines.push(labelled("  tried", `${remedy.title}: ${outcomeWords(remedy)}.`, width));
  const full = new PlaceNames(judgement.project?.files ?? [judgement.record], context.pathOf);
  for (const { place, words } of related) {
    lines.push(labelled("  see", `${full.nameOf(place)} (${words})`, width));
  }
  if (assessment) {
    const { value, limit } = assessment;
    const names = new PlaceNames(judgement.project?.files ?? [], (file) =>
      file === judgement.record.file ? "" : context.pathOf(file),
    );
    const worksheet = `tailcone worksheet --report json ${path}`;
    lines.push(...calculation([value, limit], { names, worksheet, width }));
  }
  for (const line of citeTogether(sourcesBehind(finding))) lines.push(labelled("  source", line, width));
  return `${lines.join("\n")}\n`;
}

/**
 * The calculations of values and of what they are made from, each once: what is nearest to the values first, for as
 * many lines as a finding is read with. The values' own are always there.
 */
function calculation(values: readonly Value[], { names, worksheet, width }: CalculationContext): string[] {
  const steps = nearestFirst(values).filter((step) => values.includes(step) || !isPlainCopy(step));
  const shown: string[] = [];
  let lines = 0;
  for (const [index, step] of steps.entries()) {
    const text = calculationLines(step, names).map((line) => hang(line, width - 9));
    const block = text.join("\n");
    lines += block.split("\n").length;
    if (index >= values.length && lines > mostCalculationLines) break;
    shown.push((index === 0 ? "  calc" : "").padEnd(9) + indent(block, 9).slice(9));
  }
  const left = steps.length - shown.length;
  if (left === 0) return shown;
  return [...shown, labelled("", `... and ${counted(left, "step")} before them: ${worksheet}`, width)];
}

interface CalculationContext {
  readonly names: PlaceNames;
  /** The command that prints every step. */
  readonly worksheet: string;
  readonly width: number;
}

/** Lines that one finding's calculation may take on the terminal; a heat balance has hundreds. */
const mostCalculationLines = 25;

/** Values, and what they rest on, by how many steps there are between. */
function nearestFirst(values: readonly Value[]): Value[] {
  const found = new Set(values);
  for (const value of found) {
    for (const { derivedFrom } of value.inputs) if (derivedFrom) found.add(derivedFrom);
  }
  return [...found];
}

function summary(tally: Tally, style: TextStyle): string {
  const counts = (["error", "warning", "information"] as const).map((severity) => {
    const found = tally.open[severity];
    const words = severity === "information" ? `${found} ${severity}` : counted(found, severity);
    return found === 0 ? words : paint(words, severity, style.color);
  });
  const margins = tally.held;
  const held = `${margins} ${margins === 1 ? "value holds its limit" : "values hold their limits"}.`;
  const others = [
    ...(tally.accepted > 0 ? [`${counted(tally.accepted, "accepted deviation")}.`] : []),
    ...(tally.known > 0 ? [`${counted(tally.known, "finding")} known before, not shown.`] : []),
    ...(tally.breaches > 0 ? [`${counted(tally.breaches, "margin")} below what is wanted.`] : []),
  ];
  const gap = style.isBrief ? " " : "\n";
  return `${[`${counted(tally.records, "record")} checked: ${counts.join(", ")}.`, held, ...others].join(gap)}\n`;
}

function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? "" : "s"}`;
}

/** Lines and columns of one record, from 1. */
class Places {
  private readonly lines: LineIndex;

  constructor(private readonly record: LoadedRecord) {
    this.lines = lineIndex(record.text);
  }

  name(finding: Finding): string {
    return this.nameAt(this.spanOf(finding).start);
  }

  /** The line with a marker under the place, '…' where it goes on; tabs and control characters shown as spaces. */
  excerpt(finding: Finding, width: number): string {
    const span = this.spanOf(finding);
    const { line, character } = this.lines.positionAt(span.start);
    const start = this.lines.offsetAt({ line, character: 0 });
    const end = this.lines.offsetAt({ line, character: Number.MAX_SAFE_INTEGER });
    const number = String(line + 1).padStart(6);
    const room = width - number.length - 4;
    const text = printable(this.record.text.slice(start, end), false);
    const from = Math.max(0, character - Math.floor(room / 2));
    const column = character - from;
    const shown = [
      from > 0 ? "…" : text.slice(0, 1),
      text.slice(from + 1, from + room - 1),
      text.length > from + room ? "…" : text.slice(from + room - 1, from + room),
    ].join("");
    const length = Math.max(1, Math.min(span.end, end) - span.start);
    const marker = "^".repeat(Math.max(1, Math.min(length, room - column)));
    return `${number} | ${shown}\n${" ".repeat(number.length)} | ${" ".repeat(column)}${marker}`;
  }

  private spanOf({ anchor }: Finding) {
    return isPlace(anchor) ? this.record.reading.spanOf(anchor.node) : anchor.span;
  }

  private nameAt(offset: number): string {
    const { line, character } = this.lines.positionAt(offset);
    return `${line + 1}:${character + 1}`;
  }
}
