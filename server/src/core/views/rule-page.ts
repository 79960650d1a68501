import { ruleById } from "../rules";
import { runExample } from "../run-example";
import { citeSource, isStandIn } from "../source";

/** What a rule finds, why, by which source, and its examples with what is found in them; Markdown. */
export function rulePage(id: string): string | undefined {
  const rule = ruleById.get(id);
  if (!rule) return undefined;
  const { severity, title, why, sources } = rule;
  const standIn = severity === "error" && sources.some(isStandIn);
  return `${[
    `# ${title}`,
    `\`${id}\`, ${severity}${standIn ? "; it warns where the limit rests on memory or on habit" : ""}`,
    why,
    ...(sources.length > 0
      ? [`## Sources\n\n${sources.map((source) => `- ${citeSource(source)}`).join("\n")}`]
      : []),
    ...rule.examples().map((example) => {
      const finds = runExample(example).findings.filter((finding) => finding.rule === id);
      const found = finds.map(({ what, todo }) => `> ${what}\n>\n> ${todo}`).join("\n\n");
      return `## ${example.title}\n\n\`\`\`yaml\n${example.text.trimEnd()}\n\`\`\`\n\n${found || "> no finding"}`;
    }),
  ].join("\n\n")}\n`;
}
