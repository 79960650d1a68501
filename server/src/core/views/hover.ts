/**
 * What a value in a record takes part in: results with limits and margins first, then the calculations.
 */
import type { Judgement } from "../check";
import { type Assessment, marginOf } from "../findings/finding";
import { valuesOf } from "../graph/derivations";
import { placesBehind, showMeasure, type Value } from "../graph/value";
import type { Node } from "../reading/tree";
import { citeSource } from "../source";
import { calculationLines, isPlainCopy, nameOf, notesOf, sourcesOf, stepsOf } from "./calculation";
import { PlaceNames } from "./place-names";

export interface Hover {
  readonly node: Node;
  readonly markdown: string;
}

/** Rows of the table of results; more would hide the text that is being edited. */
const mostRows = 8;
/** Calculations shown below it. */
const mostCalculations = 6;

/**
 * What the scalar `node` of record `file` takes part in, over every project that the record belongs to.
 * Undefined where it takes part in no calculation.
 */
export function hoverOn(file: string, node: Node, judgements: readonly Judgement[]): Hover | undefined {
  const sections = judgements
    .map((judgement) => section(file, node, judgement))
    .filter((one) => one !== undefined);
  if (sections.length === 0) return undefined;
  return { node, markdown: sections.join("\n\n---\n\n") };
}

function section(file: string, node: Node, { project, assessments, record }: Judgement): string | undefined {
  if (!project) return undefined;
  const restsOnNode = (value: Value) =>
    [...placesBehind(value)].some((place) => place.node === node && place.file === file);
  const judged = assessments
    .filter((one) => one.place.node === node || restsOnNode(one.value) || restsOnNode(one.limit))
    .toSorted((a, b) => (marginOf(a) ?? Infinity) - (marginOf(b) ?? Infinity));
  const direct = valuesOf(project).filter((value) =>
    value.inputs.some((input) => input.places.some((place) => place.node === node && place.file === file)),
  );
  if (judged.length === 0 && direct.length === 0) return undefined;
  const places = new PlaceNames(project.files, (one) => (one === file ? "" : one.split("/").at(-1)!));
  const values = [...new Set([...judged.flatMap(({ value, limit }) => [value, limit]), ...direct])];
  return [
    record.file === file ? "" : `In ${escaped(record.file.split("/").at(-1)!)}:\n`,
    judged.length > 0 ? table(judged) : resultLines(direct),
    calculations(judged.length > 0 ? judged.flatMap(({ value, limit }) => [value, limit]) : direct, places),
    sources(values),
  ]
    .filter((part) => part !== "")
    .join("\n\n");
}

function table(judged: readonly Assessment[]): string {
  const rows = judged.slice(0, mostRows).map((one) => {
    const { value, limit, sense } = one;
    const margin = marginOf(one);
    const left = margin === undefined ? "" : `${Math.round(margin * 100)} %`;
    const cells = [
      `${one.holds ? "" : "**✗** "}${nameOf(value)}, ${escaped(value.subject.id)}${value.condition ? `, ${escaped(value.condition)}` : ""}`,
      showMeasure(value.value, value.unit),
      `${sense === "at-most" ? "≤" : "≥"} ${showMeasure(limit.value, limit.unit)}`,
      left,
    ];
    return `| ${cells.join(" | ")} |`;
  });
  const more = judged.length > mostRows ? [`\n${judged.length - mostRows} more are in the worksheet.`] : [];
  return ["| | value | limit | margin |", "|---|--:|--:|--:|", ...rows, ...more].join("\n");
}

function resultLines(values: readonly Value[]): string {
  return values
    .slice(0, mostRows)
    .map((value) => {
      const where = [value.subject.id, value.condition].filter((part) => part !== undefined).map(escaped);
      return `- ${nameOf(value)}, ${where.join(", ")}: **${showMeasure(value.value, value.unit)}**`;
    })
    .join("\n");
}

/** Each calculation that leads to a result, as lines of code so that no character of a record is markup. */
function calculations(values: readonly Value[], places: PlaceNames): string {
  const steps = new Set<Value>();
  for (const value of values) {
    for (const { value: step } of stepsOf(value)) if (!isPlainCopy(step)) steps.add(step);
  }
  const blocks = [...steps]
    .slice(0, mostCalculations)
    .map((step) => calculationLines(step, places).join("\n"));
  if (blocks.length === 0) return "";
  const more =
    steps.size > blocks.length ? `\n\n${steps.size - blocks.length} more steps are in the worksheet.` : "";
  return `\`\`\`text\n${blocks.join("\n").replaceAll("```", "'''")}${more}\n\`\`\``;
}

function sources(values: readonly Value[]): string {
  const cited = sourcesOf(...values).map((source) => `- ${escaped(citeSource(source))}`);
  const notes = notesOf(...values).map((note) => `- ${escaped(note)}`);
  return [
    cited.length > 0 ? `Sources:\n${cited.join("\n")}` : "",
    notes.length > 0 ? `Notes:\n${notes.join("\n")}` : "",
  ]
    .filter((part) => part !== "")
    .join("\n\n");
}

/** Text of a record is data: nothing in it may act as Markdown. */
function escaped(text: string): string {
  return text.replace(/[\\`*_{}[\]()#+\-!|<>~&]/g, "\\$&").replace(/\s+/g, " ");
}
