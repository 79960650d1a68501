// Writes the reference pages of rules and quantities from the code that they describe.
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "esbuild";
import { root } from "./schemas.mjs";

/** Writes the pages, or with `check` tells whether the written ones are current. */
export async function writeReferencePages({ check = false } = {}) {
  const core = await loadCore();
  const pages = { "rules.md": rulesPage(core), "quantities.md": quantitiesPage(core) };
  let isCurrent = true;
  for (const [name, text] of Object.entries(pages)) {
    const file = join(root, "server/docs", name);
    if (existsSync(file) && readFileSync(file, "utf8") === text) continue;
    isCurrent = false;
    if (!check) writeFileSync(file, text);
  }
  return !check || isCurrent;
}

async function loadCore() {
  const folder = mkdtempSync(join(tmpdir(), "tailcone-"));
  const outfile = join(folder, "core.mjs");
  await build({
    stdin: {
      contents: `
        export { rules } from "./rules";
        export { ruleAreas } from "./rules/areas";
        export { quantityNames } from "./graph/quantity-names";
        export { citeSource } from "./source";`,
      resolveDir: join(root, "server/src/core"),
    },
    bundle: true,
    platform: "node",
    format: "esm",
    outfile,
    logLevel: "warning",
  });
  const core = await import(pathToFileURL(outfile).href);
  rmSync(folder, { recursive: true });
  return core;
}

function rulesPage({ rules, ruleAreas, citeSource }) {
  const sections = Object.entries(ruleAreas).map(([area, title]) =>
    [
      `## ${title}`,
      ...rules.filter((rule) => rule.area === area).map((rule) => ruleSection(rule, citeSource)),
    ].join("\n\n"),
  );
  return `${[
    "# Rules",
    "Made from the rules themselves by `npm run generate`. `tailcone explain <rule>` prints one with its examples.",
    ...sections,
  ].join("\n\n")}\n`;
}

function ruleSection({ id, severity, title, why, sources }, citeSource) {
  return [
    `### \`${id}\``,
    `**${title}.** (${severity})`,
    why,
    ...(sources.length > 0 ? [sources.map((source) => `- ${citeSource(source)}`).join("\n")] : []),
  ].join("\n\n");
}

function quantitiesPage({ quantityNames }) {
  const rows = Object.entries(quantityNames).map(([name, meaning]) => `| \`${name}\` | ${meaning} |`);
  return `${[
    "# Derived quantities",
    "Made from the code by `npm run generate`. These names appear in `worksheet --report json`; a name is never reused for another meaning.",
    ["| name | meaning |", "|---|---|", ...rows].join("\n"),
  ].join("\n\n")}\n`;
}
