/** The lines of a rule's example that count, with what is found in them. */
import type { Judgement } from "../../core/check";
import { isPlace } from "../../core/findings/finding";
import type { Example, Rule } from "../../core/rules/rule";
import { runExample } from "../../core/run-example";
import { hang, indent, wrap } from "./layout";

/** More lines than these are no excerpt; what is left out is marked. */
const mostLines = 12;
const cut = "...";

export function exampleText(example: Example, rule: Rule, width: number): string {
  const judgement = runExample(example);
  const finds = judgement.findings.filter((finding) => finding.rule === rule.id);
  const found = finds.map(({ what }) => indent(wrap(`-> ${what}`, width - 4), 4));
  const lines = excerpt(example, rule, judgement)
    .flatMap((line) => hang(`  ${line}`, width).split("\n"))
    .map((line) => (line.length > width ? `${line.slice(0, width - 1 - cut.length)} ${cut}` : line));
  return [
    wrap(`Example${example.file ? ` of ${example.file}` : ""}: ${example.title}:`, width),
    lines.join("\n"),
    (found.length > 0 ? found : ["    -> no finding"]).join("\n"),
  ].join("\n\n");
}

/** Lines at which something is found, and those in which the example differs from the one it is told beside. */
function excerpt(example: Example, rule: Rule, judgement: Judgement): string[] {
  const lines = example.text.trimEnd().split("\n");
  const [first, second] = rule.examples();
  const beside = example === first ? second : first;
  const found = linesFound(rule, judgement);
  const counting = [...found];
  if (beside) {
    const known = new Set(beside.text.split("\n"));
    lines.forEach((line, at) => {
      if (!known.has(line) && !found.has(at) && counting.length < mostLines) counting.push(at);
    });
  }
  if (counting.length === 0) {
    const own = new Set(lines);
    const missing = (beside?.text.trimEnd().split("\n") ?? []).filter((line) => !own.has(line));
    return ["# without:", ...missing.slice(0, mostLines).map((line) => `#${line}`)];
  }
  return withParents(lines, counting);
}

function linesFound({ id }: Rule, { record, findings }: Judgement): Set<number> {
  const found = new Set<number>();
  for (const finding of findings) {
    if (finding.rule !== id) continue;
    for (const anchor of [finding.anchor, ...finding.related.map(({ place }) => place)]) {
      if (anchor.file !== record.file) continue;
      const { start } = isPlace(anchor) ? record.reading.spanOf(anchor.node) : anchor.span;
      found.add(record.text.slice(0, start).split("\n").length - 1);
    }
  }
  return found;
}

/** The lines with those that they stand under, in the order of the text, each gap marked. */
function withParents(lines: readonly string[], counting: readonly number[]): string[] {
  const depthOf = (at: number) => lines[at]!.search(/\S/);
  const kept = new Set(counting);
  for (const one of counting) {
    let depth = depthOf(one);
    for (let at = one - 1; at >= 0 && depth > 0; at--) {
      const own = depthOf(at);
      if (own < 0 || own >= depth) continue;
      kept.add(at);
      depth = own;
    }
  }
  const shown: string[] = [];
  let next = 0;
  for (const at of [...kept].sort((a, b) => a - b)) {
    if (at > next) shown.push(cut);
    shown.push(lines[at]!);
    next = at + 1;
  }
  if (next < lines.length) shown.push(cut);
  return shown;
}
