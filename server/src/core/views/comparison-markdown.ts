/** The comparison as Markdown, for a comment in a review. */
import { acceptedWords } from "./acceptance-words";
import type { Comparison, Consequences, FileChange } from "./comparison";
import { isQuiet } from "./comparison";
import {
  comparisonCaution,
  consequenceWords,
  counted,
  type FindingGroup,
  fieldColumns,
  fieldRow,
  fileWords,
  findingGroups,
  type Head,
  headOf,
  marginColumns,
  marginRow,
  overallWords,
  shownAtMost,
  standingWords,
  valueColumns,
  valueRow,
} from "./comparison-words";
import { type Breach, breachWords } from "./gate";

/** Forges refuse a comment that is longer than 65,536 signs; what is behind this is left out and said to be. */
const longest = 60_000;

export function comparisonMarkdown(
  comparison: Comparison & {
    readonly breaches?: readonly { readonly path: string; readonly breach: Breach }[];
  },
): string {
  const { base, head, files, records, breaches = [] } = comparison;
  const standing = standingWords(comparison, "→");
  const blocks = [
    `### Tailcone: ${plain(base)} → ${plain(head)}`,
    ...(standing ? [plain(standing)] : []),
    plain(overallWords(comparison)),
    ...(breaches.length > 0
      ? [
          "**Margins below what is wanted**",
          breaches.map(({ path, breach }) => `- ${plain(path)}: ${plain(breachWords(breach))}`).join("\n"),
        ]
      : []),
    ...files.flatMap(fileBlocks),
    ...records.filter((record) => !isQuiet(record)).flatMap(recordBlocks),
  ];
  const kept: string[] = [];
  let length = 0;
  for (const block of blocks) {
    length += block.length + 2;
    if (length > longest) {
      kept.push("The rest is left out here: a comment may not be longer. The JSON form has it.");
      break;
    }
    kept.push(block);
  }
  return `${[...kept, `<sub>${plain(comparisonCaution)}</sub>`].join("\n\n")}\n`;
}

function fileBlocks(file: FileChange): string[] {
  const { shown, more } = headOf(file.changes, shownAtMost.changes);
  const rows = shown.map((change) => fieldRow(change).map(code));
  return [
    `**Changed in ${plain(fileWords(file))}**`,
    ...table(fieldColumns, rows),
    ...moreOf(more, "change"),
  ];
}

function recordBlocks(record: Consequences): string[] {
  const { path, findings, margins, values } = record;
  const marginHead = headOf(margins, shownAtMost.margins);
  const valueHead = headOf(values, shownAtMost.values);
  return [
    `**What follows in ${plain(path)}**: ${plain(consequenceWords(record))}.`,
    ...findingGroups(findings).flatMap(findingList),
    ...table(
      marginColumns,
      marginHead.shown.map((change) => marginRow(change).map(plain)),
    ),
    ...moreOf(marginHead.more, "margin"),
    ...folded(`${counted(values.length, "value")} moved`, valueTable(valueHead)),
  ];
}

function valueTable({ shown, more }: Head<Consequences["values"][number]>): string[] {
  return [
    ...table(
      valueColumns,
      shown.map((change) => valueRow(change).map(plain)),
    ),
    ...moreOf(more, "value"),
  ];
}

function findingList({ title, findings }: FindingGroup): string[] {
  const { shown, more } = headOf(findings, shownAtMost.findings);
  const lines = shown.map(({ severity, rule, message, accepted }) => {
    const words = accepted ? ` _${plain(acceptedWords(accepted))}_` : "";
    return `- ${plain(severity)} ${code(rule)}: ${plain(message)}${words}`;
  });
  return [`${title}:`, lines.join("\n"), ...moreOf(more, "finding")];
}

function table(head: readonly string[], rows: readonly (readonly string[])[]): string[] {
  if (rows.length === 0) return [];
  const line = (cells: readonly string[]) => `| ${cells.join(" | ")} |`;
  return [[line(head), line(head.map(() => "---")), ...rows.map(line)].join("\n")];
}

function folded(title: string, blocks: readonly string[]): string[] {
  return blocks.length === 0 ? [] : [`<details><summary>${plain(title)}</summary>`, ...blocks, "</details>"];
}

function moreOf(count: number, noun: string): string[] {
  return count === 0 ? [] : [`${counted(count, noun)} more.`];
}

const entities: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;" };

/**
 * Text of a record as text: no markup, no link, no picture, and nobody is called by it. A comment of HTML, which
 * nobody sees, keeps a sign and what stands behind it from being taken for a name, a number or an address.
 */
export function plain(text: string): string {
  return text
    .replace(/[\s\p{Cc}\u200e\u200f\u202a-\u202e\u2066-\u2069]+/gu, " ")
    .replace(/[\\`*_[\]|~]/g, "\\$&")
    .replace(/[&<>]/g, (sign) => entities[sign]!)
    .replace(/[@#!$%^:](?=[\w/])|\/(?=\/)|www(?=\.)/gi, "$&<!-- -->");
}

/** Text of a record in the manner of code, where nothing of it can act. */
function code(text: string): string {
  const line = text
    .replace(/[\s\p{Cc}\u200e\u200f\u202a-\u202e\u2066-\u2069]+/gu, " ")
    .replaceAll("|", "\\|");
  const longestRun = Math.max(0, ...(line.match(/`+/g) ?? []).map((run) => run.length));
  const fence = "`".repeat(longestRun + 1);
  const padding = /^`|`$|^ .* $/.test(line) ? " " : "";
  return line.trim() === "" ? plain(line) : `${fence}${padding}${line}${padding}${fence}`;
}
