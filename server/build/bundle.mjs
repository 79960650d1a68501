// Bundles the programs that ship: command line, language server, extension.
import { rmSync } from "node:fs";
import { join } from "node:path";
import { build } from "esbuild";
import { root } from "./schemas.mjs";

const programs = [
  { entry: "server/src/command-line/main.ts", out: "tailcone.js", banner: "#!/usr/bin/env node" },
  { entry: "server/src/language/main.ts", out: "server.js" },
  { entry: "client/src/extension.ts", out: "extension.js" },
];

rmSync(join(root, "dist"), { recursive: true, force: true });
await Promise.all(
  programs.map(({ entry, out, banner }) =>
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
      ...(banner && { banner: { js: banner } }),
    }),
  ),
);
