/** The core, bundled from its sources for one run, and checks with nothing kept from before. */
import { createHash } from "node:crypto";
import { createRequire } from "node:module";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";

export const root = fileURLToPath(new URL("../..", import.meta.url));

/** @param {string} folder where the bundle is put; the caller removes it */
export async function loadCore(folder) {
  const outfile = join(folder, "core.cjs");
  await build({
    stdin: {
      contents: `
        export { check } from "./check";
        export { RecordShelf } from "./shelf";
        export { lineIndex, read } from "./reading";
        export { parseDocument } from "yaml";
      `,
      resolveDir: join(root, "server/src/core"),
    },
    outfile,
    bundle: true,
    platform: "node",
    format: "cjs",
    target: "node20",
    logLevel: "warning",
  });
  return createRequire(import.meta.url)(outfile);
}

/** Judgement of the install record, with all three records read anew. */
export function checkAnew(core, files, installText = files.install.text) {
  const texts = new Map(Object.values(files).map(({ name, text }) => [name, text]));
  texts.set(files.install.name, installText);
  const shelf = new core.RecordShelf({
    resolve: (_, path) => (texts.has(path) ? path : undefined),
    text: (file) => texts.get(file),
  });
  return core.check(shelf.load(files.install.name), shelf);
}

/** Stands for what was found and where it starts, whoever found it. */
export function fingerprintOfFindings(core, { record, findings }) {
  const lines = core.lineIndex(record.text);
  return fingerprint(
    findings.map(({ rule, anchor }) => {
      const { start } = "node" in anchor ? record.reading.spanOf(anchor.node) : anchor.span;
      const { line, character } = lines.positionAt(start);
      return `${rule} ${line} ${character}`;
    }),
  );
}

export function fingerprintOfDiagnostics(diagnostics) {
  return fingerprint(
    diagnostics.map(({ code, range: { start } }) => `${code} ${start.line} ${start.character}`),
  );
}

function fingerprint(findings) {
  const hash = createHash("sha256").update(findings.toSorted().join("\n")).digest("hex").slice(0, 8);
  return `${findings.length} findings, ${hash}`;
}

/** Throws when a fault that was planted in a record is not among its findings. */
export function assertPlanted({ findings }, planted) {
  if (planted.length === 0) throw new Error("No fault was planted: a check that does nothing would pass.");
  const found = new Set(findings.map(({ rule, subject }) => `${rule}: ${subject}`));
  for (const { rule, subject } of planted) {
    if (!found.has(`${rule}: ${subject}`)) throw new Error(`Planted, and not found: ${rule}, ${subject}.`);
  }
}
