/**
 * What a value in a record takes part in: results with limits and margins first, then what was tried to mend
 * what fails, then the calculations.
 */
import type { Judgement } from "../check";
import { type Assessment, byMargin, holds, marginOf } from "../findings/finding";
import { valuesOf } from "../graph/derivations";
import type { QuantityName } from "../graph/quantity-names";
import { showMeasure, type Value } from "../graph/value";
import type { Project } from "../project";
import type { Node } from "../reading/tree";
import { outcomeWords, type ProvenRemedy } from "../remedies";
import { citeTogether } from "../source";
import { calculationLines, isPlainCopy, nameOf, notesIn, showShare, sourcesIn, stepsOf } from "./calculation";
import { nameAt, type Overview, overviewAt } from "./overview";
import { PlaceNames } from "./place-names";
import { restingOn, takes } from "./resting";

export interface Hover {
  readonly node: Node;
  readonly markdown: string;
}

/** A hover is read at a glance; the worksheet has everything. */
const most = { results: 4, rows: 6, calculations: 6, notes: 3 } as const;

/**
 * What the scalar `node` of record `file` takes part in, over every project that the record belongs to, and
 * what was found to mend it. Undefined where it takes part in no calculation.
 */
export function hoverOn(
  file: string,
  node: Node,
  judgements: readonly Judgement[],
  remedies: readonly ProvenRemedy[] = [],
): Hover | undefined {
  const sections = judgements.map((one) => section(file, node, one)).filter((one) => one !== undefined);
  const markdown = sections.map(({ results, calculations }, at) =>
    [...results, ...(at === 0 ? remedyLines(remedies) : []), ...calculations]
      .filter((part) => part !== "")
      .join("\n\n"),
  );
  return markdown.length === 0 ? undefined : { node, markdown: markdown.join("\n\n---\n\n") };
}

/** What one project has to say, in the order in which it is read; what was tried stands between the two. */
interface Section {
  readonly results: readonly string[];
  readonly calculations: readonly string[];
}

function remedyLines(remedies: readonly ProvenRemedy[]): string[] {
  const lines = remedies.map((one) => `**Tried:** ${escaped(one.title)}: ${outcomeWords(one)}.`);
  return [...new Set(lines)];
}

function section(file: string, node: Node, { project, assessments, record }: Judgement): Section | undefined {
  if (!project) return undefined;
  const rests = restingOn(file, node);
  const judged = assessments
    .filter(({ place, value, limit }) => place.node === node || rests(value) || rests(limit))
    .toSorted((a, b) => nearness(a, node) - nearness(b, node) || byMargin(a, b));
  const direct = directValues(file, node, project);
  const overview = overviewAt(node, project);
  if (judged.length === 0 && direct.length === 0 && !overview) return undefined;

  const shown = judged.slice(0, most.rows);
  const results = direct.filter(({ quantity }) => shown.length === 0 || tellsByItself.includes(quantity));
  const limits = new Set(shown.map(({ limit }) => limit));
  const steps = stepsBehind([...shown.flatMap(({ value, limit }) => [value, limit]), ...direct]).filter(
    (step) => (isPlainCopy(step) ? limits.has(step) : rests(step)),
  );
  const places = new PlaceNames(project.files, (one) => (one === file ? "" : lastPart(one)));
  return {
    results: [
      record.file === file ? "" : `In ${escaped(lastPart(record.file))}:`,
      table(shown, judged.length),
      overview ? overviewTable(overview, assessments) : "",
      resultLines(results.slice(0, most.results)),
    ],
    calculations: [calculations(steps, places), sources([...steps, ...shown.map(({ limit }) => limit)])],
  };
}

/**
 * What takes the number at the node, and, of an item of the change named or written there, its moment and what it
 * does to the CG.
 */
function directValues(file: string, node: Node, project: Project): Value[] {
  const values = valuesOf(project);
  const direct = new Set(values.filter((value) => takes(value, file, node)));
  const items = new Set(
    [...direct].filter(({ quantity }) => quantity === "item-moment").map((one) => one.subject),
  );
  const named = nameAt(node, project);
  const isOfItem = ({ subject, quantity }: Value) =>
    ofItems.includes(quantity) &&
    ((subject.kind === named?.kind && subject.id === named.id) || items.has(subject));
  for (const value of values.filter(isOfItem)) direct.add(value);
  return [...direct];
}

const ofItems: readonly QuantityName[] = ["item-moment", "item-cg-effect"];

/** Shown with the limits too: what an item does by itself. */
const tellsByItself: readonly QuantityName[] = [
  "item-moment",
  "item-cg-effect",
  "harness-weight",
  "cutout-area",
];

/** What fails comes first, then what is judged at this very place, then what only rests on it. */
function nearness(one: Assessment, node: Node): number {
  if (!one.holds) return 0;
  return one.place.node === node ? 1 : 2;
}

function resultLines(values: readonly Value[]): string {
  return values
    .map((value) => `${nameOf(value)}, ${whereOf(value)}: **${showMeasure(value.value, value.unit)}**`)
    .join("  \n");
}

function overviewTable({ subject, quantities, rows }: Overview, assessments: readonly Assessment[]): string {
  const heads = quantities.map((quantity) => quantity.replaceAll("-", " "));
  const lines = rows.map(({ condition, values }) => {
    const cells = values.map((value) =>
      value ? [showMeasure(value.value, value.unit), ...failuresOf(value, assessments)].join(", ") : "",
    );
    return `| ${[escaped(condition), ...cells].join(" | ")} |`;
  });
  return [
    `| ${[`**${escaped(subject.id)}**`, ...heads].join(" | ")} |`,
    `|---|${quantities.map(() => "--:|").join("")}`,
    ...lines,
  ].join("\n");
}

/**
 * The limits that a value fails, in words. A rule may judge the worst condition only: a limit that belongs to no
 * condition counts for the others too.
 */
function failuresOf(value: Value, assessments: readonly Assessment[]): string[] {
  return assessments
    .filter(
      ({ value: judged, limit, sense }) =>
        judged.quantity === value.quantity &&
        judged.subject.kind === value.subject.kind &&
        judged.subject.id === value.subject.id &&
        (judged === value || limit.condition === undefined) &&
        !holds(value.value, sense, limit.value),
    )
    .map(
      ({ limit, sense }) =>
        `**${sense === "at-most" ? "above" : "below"} ${showMeasure(limit.value, limit.unit)}**`,
    );
}

function table(judged: readonly Assessment[], all: number): string {
  if (judged.length === 0) return "";
  const rows = judged.map((one) => {
    const { value, limit } = one;
    const cells = [
      `${one.holds ? "" : "**fails:** "}${nameOf(value)}, ${whereOf(value)}`,
      showMeasure(value.value, value.unit),
      `${signOf(one)}${showMeasure(limit.value, limit.unit)}`,
      nameOf(limit),
      showShare(marginOf(one)),
    ];
    return `| ${cells.join(" | ")} |`;
  });
  const more = all > judged.length ? [`\n${all - judged.length} more in the worksheet.`] : [];
  return ["| | is | limit | | margin |", "|---|--:|--:|---|--:|", ...rows, ...more].join("\n");
}

/** None for a gauge: it is thicker the lower its number is, and the limit's name says which way it goes. */
function signOf({ limit, sense }: Assessment): string {
  if (limit.unit === "AWG") return "";
  return sense === "at-most" ? "≤ " : "≥ ";
}

/** Each step once, results before what they are made from. */
function stepsBehind(values: readonly Value[]): Value[] {
  const steps = new Set(values.flatMap((value) => stepsOf(value).map((step) => step.value)));
  return [...steps].filter((step) => values.includes(step) || !isPlainCopy(step));
}

/** Set as code, so that no character of a record is markup. */
function calculations(steps: readonly Value[], places: PlaceNames): string {
  if (steps.length === 0) return "";
  const blocks = steps.slice(0, most.calculations).map((step) => calculationLines(step, places).join("\n"));
  const more =
    steps.length > blocks.length ? [`${steps.length - blocks.length} more steps in the worksheet`] : [];
  return `\`\`\`text\n${[...blocks, ...more].join("\n\n").replaceAll("```", "'''")}\n\`\`\``;
}

function sources(values: readonly Value[]): string {
  const cited = citeTogether(sourcesIn(values)).map((line) => `- ${escaped(line)}`);
  const notes = notesIn(values)
    .slice(0, most.notes)
    .map((note) => `- ${escaped(note)}`);
  return [
    cited.length > 0 ? `Sources\n${cited.join("\n")}` : "",
    notes.length > 0 ? `Notes\n${notes.join("\n")}` : "",
  ]
    .filter((part) => part !== "")
    .join("\n\n");
}

function whereOf({ subject, condition }: Value): string {
  return escaped(condition === undefined ? subject.id : `${subject.id}, ${condition}`);
}

function lastPart(file: string): string {
  return file.split(/[\\/]/).at(-1)!;
}

/** Text of a record is data: nothing in it may act as Markdown. */
export function escaped(text: string): string {
  return text.replace(/[\\`*_{}[\]#|<>~&]/g, "\\$&").replace(/\s+/g, " ");
}
