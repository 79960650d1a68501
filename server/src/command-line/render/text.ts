import type { Judgement } from "../../core/check";
import type { Finding, Severity } from "../../core/findings/finding";
import { isPlace } from "../../core/findings/finding";
import type { Value } from "../../core/graph/value";
import { type LineIndex, lineIndex } from "../../core/reading";
import type { LoadedRecord } from "../../core/records/record";
import { outcomeWords, proveRemedy } from "../../core/remedies";
import { ruleById } from "../../core/rules";
import { citeTogether } from "../../core/source";
import { calculationLines, isPlainCopy, stepsOf } from "../../core/views/calculation";
import { sourcesBehind } from "../../core/views/finding-sources";
import { PlaceNames } from "../../core/views/place-names";
import type { RenderContext } from "./context";
import { hang, indent, labelled, printable, wrap } from "./layout";

export interface TextStyle {
  readonly width: number;
  readonly color: boolean;
  /** One line for each finding. */
  readonly isBrief: boolean;
}

/** Findings for people: where, what, the line itself, why, what to do, the calculation and its sources. */
export function renderText(context: RenderContext, style: TextStyle): string {
  const blocks = context.judgements.flatMap((judgement) =>
    style.isBrief ? briefly(judgement, context, style) : atLength(judgement, context, style),
  );
  return [...blocks, summary(context.judgements, style)].join(style.isBrief ? "" : "\n");
}

function briefly(judgement: Judgement, { pathOf }: RenderContext, style: TextStyle): string[] {
  const places = new Places(judgement.record);
  return judgement.findings.map((finding) => {
    const { severity, rule, what } = finding;
    return `${pathOf(judgement.record.file)}:${places.name(finding)}: ${paint(severity, severity, style)} [${rule}] ${what}\n`;
  });
}

function atLength(judgement: Judgement, context: RenderContext, style: TextStyle): string[] {
  const places = new Places(judgement.record);
  const path = context.pathOf(judgement.record.file);
  const blocks = judgement.findings.map((finding) =>
    findingBlock(finding, judgement, places, path, context, style),
  );
  if (judgement.leftOut > 0) blocks.push(`${path}: ${judgement.leftOut} more findings are not shown.\n`);
  return blocks;
}

function findingBlock(
  finding: Finding,
  judgement: Judgement,
  places: Places,
  path: string,
  context: RenderContext,
  style: TextStyle,
): string {
  const { rule, severity, what, todo, assessment, related } = finding;
  const width = style.width;
  const remedy = proveRemedy(finding, judgement, context.source, context.options);
  const lines = [
    `${path}:${places.name(finding)}  ${paint(severity, severity, style)}  ${rule}`,
    indent(wrap(what, width - 2), 2),
    "",
    places.excerpt(finding, width),
    "",
    labelled("  why", ruleById.get(rule)?.why ?? "", width),
    labelled("  do", todo, width),
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
    lines.push(...calculation([value, limit], names, width));
  }
  for (const line of citeTogether(sourcesBehind(finding))) lines.push(labelled("  source", line, width));
  return `${lines.join("\n")}\n`;
}

/** The calculations of values and of what they are made from, down to the written numbers, each once. */
function calculation(values: readonly Value[], names: PlaceNames, width: number): string[] {
  const steps = new Set(values.flatMap((value) => stepsOf(value).map((step) => step.value)));
  return [...steps]
    .filter((step) => values.includes(step) || !isPlainCopy(step))
    .map((step, index) => {
      const lines = calculationLines(step, names).map((line) => hang(line, width - 9));
      return (index === 0 ? "  calc" : "").padEnd(9) + indent(lines.join("\n"), 9).slice(9);
    });
}

function summary(judgements: readonly Judgement[], style: TextStyle): string {
  const count = (severity: Severity) =>
    judgements.reduce(
      (sum, { findings }) => sum + findings.filter((one) => one.severity === severity).length,
      0,
    );
  const counts = (["error", "warning", "information"] as const).map((severity) => {
    const found = count(severity);
    const words = `${found} ${severity}${found === 1 || severity === "information" ? "" : "s"}`;
    return found === 0 ? words : paint(words, severity, style);
  });
  const checked = `${judgements.length} ${judgements.length === 1 ? "record" : "records"} checked`;
  const margins = judgements.reduce(
    (sum, { assessments }) => sum + assessments.filter(({ holds }) => holds).length,
    0,
  );
  const held = `${margins} ${margins === 1 ? "value holds its limit" : "values hold their limits"}.`;
  return `${checked}: ${counts.join(", ")}.${style.isBrief ? " " : "\n"}${held}\n`;
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

  /** The line with a marker under the place; tabs and control characters shown as spaces. */
  excerpt(finding: Finding, width: number): string {
    const span = this.spanOf(finding);
    const { line, character } = this.lines.positionAt(span.start);
    const start = this.lines.offsetAt({ line, character: 0 });
    const end = this.lines.offsetAt({ line, character: Number.MAX_SAFE_INTEGER });
    const number = String(line + 1).padStart(6);
    const room = width - number.length - 4;
    const from = Math.max(0, character - Math.floor(room / 2));
    const shown = printable(this.record.text.slice(start, end), false).slice(from, from + room);
    const length = Math.max(1, Math.min(span.end, end) - span.start);
    const marker = "^".repeat(Math.max(1, Math.min(length, room - (character - from))));
    return `${number} | ${shown}\n${" ".repeat(number.length)} | ${" ".repeat(character - from)}${marker}`;
  }

  private spanOf({ anchor }: Finding) {
    return isPlace(anchor) ? this.record.reading.spanOf(anchor.node) : anchor.span;
  }

  private nameAt(offset: number): string {
    const { line, character } = this.lines.positionAt(offset);
    return `${line + 1}:${character + 1}`;
  }
}

const colors: Readonly<Record<Severity, number>> = { error: 31, warning: 33, information: 36 };

function paint(text: string, severity: Severity, { color }: TextStyle): string {
  return color ? `\u001b[${colors[severity]}m${text}\u001b[0m` : text;
}
