import { ruleById, rules } from "../core/rules";
import type { Example, Rule } from "../core/rules/rule";
import { runExample } from "../core/run-example";
import { citeSource, isStandIn } from "../core/source";
import type { ExplainArguments } from "./arguments";
import { indent, wrap } from "./render/layout";
import { type ExitCode, exitCodes, type Surroundings } from "./surroundings";

/** Prints one rule with its reasons, sources and examples, or all rules with a line each. */
export function explainCommand({ rule }: ExplainArguments, around: Surroundings): ExitCode {
  const found = rule === undefined ? undefined : ruleById.get(rule);
  around.write(found ? explained(found, around.width) : listed(around.width));
  return exitCodes.clean;
}

function explained(rule: Rule, width: number): string {
  const { id, severity, title, why, sources, examples } = rule;
  const cited = sources.map((source) => indent(wrap(citeSource(source), width - 2), 2));
  return `${[
    `${id} (${severity})`,
    wrap(`${title}.`, width),
    wrap(why, width),
    ...(severity === "error" && sources.some(isStandIn)
      ? [wrap("It warns where the limit rests on memory or on habit.", width)]
      : []),
    ...(cited.length > 0 ? [`Sources:\n${cited.join("\n")}`] : []),
    ...examples.map((example) => exampleBlock(example, examples[0], rule, width)),
  ].join("\n\n")}\n`;
}

/** An example with what is found in it; of later ones only the lines in which they differ from the first. */
function exampleBlock(example: Example, first: Example | undefined, rule: Rule, width: number): string {
  const finds = runExample(example)
    .findings.filter((finding) => finding.rule === rule.id)
    .map(({ what }) => indent(wrap(`-> ${what}`, width - 4), 4));
  const known = new Set(example === first || !first ? [] : first.text.split("\n"));
  const lines = example.text.trimEnd().split("\n");
  const shown = lines.filter((line) => !known.has(line));
  const intro = shown.length < lines.length ? ", where the first one differs:" : ":";
  return [
    wrap(`Example${example.file ? ` of ${example.file}` : ""}: ${example.title}${intro}`, width),
    indent((shown.length > 0 ? shown : ["(lines left out)"]).join("\n"), 2),
    (finds.length > 0 ? finds : ["    -> no finding"]).join("\n"),
  ].join("\n\n");
}

function listed(width: number): string {
  return rules
    .map(({ id, severity, title }) => `${id} (${severity})\n${indent(wrap(title, width - 4), 4)}\n`)
    .join("");
}
