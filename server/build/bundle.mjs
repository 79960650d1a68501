// Bundles the programs that ship: command line, language server, extension.
import { rmSync } from "node:fs";
import { join } from "node:path";
import { build } from "esbuild";
import { writeCodeCache } from "./code-cache.mjs";
import { root } from "./schemas.mjs";

const programs = [
  { entry: "server/src/command-line/start.ts", out: "tailcone.js", before: "#!/usr/bin/env node" },
  {
    entry: "server/src/command-line/run.ts",
    out: "checker.js",
    // One expression, so that it can be compiled from a cache: see start.ts.
    before: "((require) => { const module = { exports: {} };",
    after: "return module.exports; })",
  },
  { entry: "server/src/language/main.ts", out: "server.js" },
  { entry: "client/src/extension.ts", out: "extension.js" },
];

rmSync(join(root, "dist"), { recursive: true, force: true });
await Promise.all(
  programs.map(({ entry, out, before, after }) =>
    build({
      entryPoints: [join(root, entry)],
      outfile: join(root, "dist", out),
      bundle: true,
      minify: true,
      platform: "node",
      format: "cjs",
      target: "node20",
      external: ["vscode"],
      // The package's ES modules are bundled without what is not used; they start faster and are smaller.
      alias: { yaml: join(root, "node_modules/yaml/browser/dist/index.js") },
      legalComments: "none",
      logLevel: "warning",
      ...(before && { banner: { js: before } }),
      ...(after && { footer: { js: after } }),
    }),
  ),
);
writeCodeCache({
  program: join(root, "dist", "checker.js"),
  cache: join(root, "dist", "checker.cache"),
  records: join(root, "client", "demo"),
});
