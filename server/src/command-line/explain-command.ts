import { sampleOf } from "../core/records/sample";
import { keysWithin, type RecordKind, recordSchemas, type Schema } from "../core/records/schema";
import { ruleById, rules } from "../core/rules";
import { ruleAreas } from "../core/rules/areas";
import type { Rule } from "../core/rules/rule";
import { citeSource, isStandIn } from "../core/source";
import type { ExplainArguments } from "./arguments";
import { exampleText } from "./render/example";
import { hang, indent, table, wrap } from "./render/layout";
import { type ExitCode, exitCodes, type Surroundings } from "./surroundings";

/** Prints the areas of rules, the rules of one, one rule with its reasons and examples, or the keys of a place. */
export function explainCommand({ of }: ExplainArguments, around: Surroundings): ExitCode {
  const { width } = around;
  switch (of.kind) {
    case "areas":
      around.write(listOfAreas());
      break;
    case "area":
      around.write(listOfRules(of.area, width));
      break;
    case "rule":
      around.write(explained(ruleById.get(of.rule)!, width));
      break;
    case "keys":
      around.write(listOfKeys(of.path, width));
  }
  return exitCodes.clean;
}

function listOfAreas(): string {
  const rows = Object.entries(ruleAreas).map(([area, title]) => [
    area,
    String(rules.filter((rule) => rule.area === area).length),
    title,
  ]);
  return `${table(["area", "rules", ""], rows)}\n\n'explain AREA' lists its rules, 'explain RULE' tells all of one.\n`;
}

function listOfRules(area: Rule["area"], width: number): string {
  return rules
    .filter((rule) => rule.area === area)
    .map(({ id, severity, title }) => `${id} (${severity})\n${indent(wrap(title, width - 4), 4)}\n`)
    .join("");
}

function explained(rule: Rule, width: number): string {
  const { id, severity, title, why, sources } = rule;
  const cited = sources.map((source) => hang(`  ${citeSource(source)}`, width));
  return `${[
    `${id} (${severity})`,
    wrap(`${title}.`, width),
    wrap(why, width),
    ...(severity === "error" && sources.some(isStandIn)
      ? [wrap("It warns where the limit rests on memory or on habit.", width)]
      : []),
    ...(cited.length > 0 ? [`Sources:\n${cited.join("\n")}`] : []),
    ...rule.examples().map((example) => exampleText(example, rule, width)),
  ].join("\n\n")}\n`;
}

/** Every key of a place, those that must be there marked, with an example and what it means. */
function listOfKeys([kind, ...steps]: readonly string[], width: number): string {
  const start: Schema | undefined = recordSchemas[kind as RecordKind];
  const schema = steps.reduce<Schema | undefined>((at, step) => keysWithin(at)[step], start);
  const needed = schema?.required ?? schema?.items?.required ?? [];
  const keys = Object.entries(keysWithin(schema)).map(([key, part]) => {
    const { description, enum: words } = part;
    const sample = words ? words.join(" | ") : sampleOf(part);
    const head = `${key}${needed.includes(key) ? " (needed)" : ""}${sample ? `: ${sample}` : ""}`;
    return [hang(head, width), ...(description ? [indent(wrap(description, width - 4), 4)] : [])].join("\n");
  });
  if (keys.length > 0) return `${keys.join("\n")}\n`;
  const { description, examples } = schema ?? {};
  return `${wrap([examples?.[0] && `Such as ${examples[0]}.`, description].filter(Boolean).join(" "), width)}\n`;
}
