/**
 * The comparison as one page that needs nothing else: no script, no font, no picture, and a policy that forbids
 * any. It follows the reader's choice of light or dark.
 */
import { acceptedWords } from "./acceptance-words";
import { type Comparison, type Consequences, type FileChange, isQuiet } from "./comparison";
import {
  comparisonCaution,
  consequenceWords,
  counted,
  type FindingGroup,
  fieldColumns,
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
} from "./comparison-words";
import { type Breach, breachWords } from "./gate";

export function comparisonHtml(
  comparison: Comparison & {
    readonly breaches?: readonly { readonly path: string; readonly breach: Breach }[];
  },
): string {
  const { base, head, files, records, breaches = [] } = comparison;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${text(`${base} to ${head}`)}</title>
<style>${style}</style>
</head>
<body>
<header>
<h1>What the change does</h1>
<p class="sides"><span>${text(base)}</span> <b aria-label="to">→</b> <span>${text(head)}</span></p>
<p>${text([standingWords(comparison, "→"), overallWords(comparison)].filter(Boolean).join(" "))}</p>
</header>
<main>
${[
  ...breachSection(breaches),
  ...files.map(fileSection),
  ...records.filter((record) => !isQuiet(record)).map(recordSection),
].join("\n")}
</main>
<footer>${text(comparisonCaution)}</footer>
</body>
</html>
`;
}

function breachSection(breaches: readonly { readonly path: string; readonly breach: Breach }[]): string[] {
  if (breaches.length === 0) return [];
  const items = breaches.map(({ path, breach }) => `<li>${text(`${path}: ${breachWords(breach)}`)}</li>`);
  return [`<section><h2>Margins below what is wanted</h2><ul>${items.join("")}</ul></section>`];
}

function fileSection(file: FileChange): string {
  const { shown, more } = headOf(file.changes, shownAtMost.changes);
  const rows = shown.map((change) => {
    const [field, before, after] = fieldRow(change);
    return [cell(field, "name"), cell(before), cell(after)];
  });
  return section(`Changed in ${fileWords(file)}`, [table(fieldColumns, rows), moreOf(more, "change")]);
}

function recordSection(record: Consequences): string {
  const { path, findings, margins, values } = record;
  const marginHead = headOf(margins, shownAtMost.margins);
  const marginRows = marginHead.shown.map((change) => {
    const { holds } = (change.after ?? change.before)!;
    return cells(marginRow(change), holds ? "number" : "number fails");
  });
  const valueHead = headOf(values, shownAtMost.values);
  const valueRows = valueHead.shown.map((change) => cells(valueRow(change), "number"));
  return section(`What follows in ${path}`, [
    `<p>${text(consequenceWords(record))}.</p>`,
    ...findingGroups(findings).map(findingList),
    table(marginColumns, marginRows),
    moreOf(marginHead.more, "margin"),
    valueRows.length === 0
      ? ""
      : `<details open><summary>${text(`${counted(values.length, "value")} moved`)}</summary>` +
        `${table(valueColumns, valueRows)}${moreOf(valueHead.more, "value")}</details>`,
  ]);
}

function findingList({ kind, title, findings }: FindingGroup): string {
  const { shown, more } = headOf(findings, shownAtMost.findings);
  const items = shown.map(({ severity, rule, message, accepted }) => {
    const words = accepted ? `<br><i>${text(acceptedWords(accepted))}</i>` : "";
    return (
      `<li><span class="severity ${severity}">${severity}</span> <code>${text(rule)}</code><br>` +
      `${text(message)}${words}</li>`
    );
  });
  return `<h3>${text(title)}</h3><ul class="findings ${kind}">${items.join("")}</ul>${moreOf(more, "finding")}`;
}

function section(title: string, parts: readonly string[]): string {
  return `<section><h2>${text(title)}</h2>${parts.join("")}</section>`;
}

function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  if (rows.length === 0) return "";
  const titles = head.map((title) => `<th scope="col">${text(title)}</th>`).join("");
  const body = rows.map((row) => `<tr>${row.join("")}</tr>`).join("");
  return `<div class="wide"><table><thead><tr>${titles}</tr></thead><tbody>${body}</tbody></table></div>`;
}

function cells([what, kind, before, after]: Row, last: string): string[] {
  return [cell(what), cell(kind, "name"), cell(before, "number"), cell(after, last)];
}

function cell(words: string, kind = ""): string {
  return `<td${kind === "" ? "" : ` class="${kind}"`}>${text(words)}</td>`;
}

function moreOf(count: number, noun: string): string {
  return count === 0 ? "" : `<p class="more">${text(`${counted(count, noun)} more`)}</p>`;
}

const entities: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

/** Text of a record as text; signs that turn the direction of writing are left out. */
function text(words: string): string {
  return words
    .replace(/[\p{Cc}\u200e\u200f\u202a-\u202e\u2066-\u2069]+/gu, " ")
    .replace(/[&<>"']/g, (sign) => entities[sign]!);
}

const style = `
:root { color-scheme: light dark; --line: light-dark(#c9ced6, #3d434c); --soft: light-dark(#5b6470, #9aa4b1);
  --raised: light-dark(#f4f6f8, #23272e); --error: light-dark(#b3261e, #ff8a80);
  --warning: light-dark(#8a5a00, #f0b84c); --information: light-dark(#2f5d8a, #8ab8e6); }
@media (prefers-contrast: more) { :root { --line: light-dark(#000, #fff); --soft: light-dark(#000, #fff); --raised: transparent; } }
body.vscode-light, body.vscode-high-contrast-light { color-scheme: light; }
body.vscode-dark, body.vscode-high-contrast:not(.vscode-high-contrast-light) { color-scheme: dark; }
body { font: 15px/1.5 system-ui, sans-serif; margin: 0 auto; padding: 1.5rem; max-width: 62rem;
  background: light-dark(#fff, #1b1e23); color: light-dark(#1b1e23, #e3e6ea); }
h1 { font-size: 1.4rem; margin: 0; } h2 { font-size: 1.1rem; overflow-wrap: anywhere; } h3 { font-size: 1rem; margin-bottom: 0.3rem; }
.sides { font-size: 1.05rem; overflow-wrap: anywhere; }
section { border: 1px solid var(--line); border-radius: 6px; padding: 0 1rem 1rem; margin: 1rem 0; }
.wide { overflow-x: auto; } table { border-collapse: collapse; width: 100%; margin: 0.8rem 0; }
th, td { text-align: left; vertical-align: top; padding: 0.25rem 0.8rem 0.25rem 0; border-bottom: 1px solid var(--line); }
th { color: var(--soft); font-weight: 600; } td { overflow-wrap: anywhere; }
.number { font-variant-numeric: tabular-nums; white-space: nowrap; } .fails { color: var(--error); font-weight: 600; }
.name, code { font-family: ui-monospace, monospace; font-size: 0.9em; }
.findings { list-style: none; padding: 0; margin: 0; } .findings li { background: var(--raised); border-radius: 4px; padding: 0.4rem 0.8rem; margin: 0.4rem 0; overflow-wrap: anywhere; }
.gone li { text-decoration: line-through; text-decoration-color: var(--soft); }
.severity { font-weight: 600; } .error { color: var(--error); } .warning { color: var(--warning); } .information { color: var(--information); }
.more, footer { color: var(--soft); } summary { cursor: pointer; } footer { font-size: 0.85rem; }
code { background: none; color: inherit; }
body.vscode-high-contrast { --line: var(--vscode-contrastBorder); --soft: var(--vscode-foreground); --raised: transparent;
  background: var(--vscode-editor-background); color: var(--vscode-foreground); }
.vscode-high-contrast .findings li { border: 1px solid var(--line); }
`;
