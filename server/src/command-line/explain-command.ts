import { ruleById, rules } from "../core/rules";
import type { Rule } from "../core/rules/rule";
import { citeSource } from "../core/source";
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
  const examples = rule.examples.map(({ title, text, finds, file }) => {
    const verdict = finds.length > 0 ? "found" : "not found";
    return [`Example, ${verdict}: ${title}${file ? ` (${file})` : ""}`, "", indent(text.trimEnd(), 2)].join(
      "\n",
    );
  });
  return `${[
    `${rule.id} (${rule.severity})`,
    wrap(`${rule.title}.`, width),
    wrap(rule.why, width),
    ...(rule.sources.length > 0
      ? [
          `Sources:\n${rule.sources.map((source) => indent(wrap(citeSource(source), width - 2), 2)).join("\n")}`,
        ]
      : []),
    ...examples,
  ].join("\n\n")}\n`;
}

function listed(width: number): string {
  return rules
    .map(({ id, severity, title }) => `${id} (${severity})\n${indent(wrap(title, width - 4), 4)}\n`)
    .join("");
}
