// Packs the extension into dist/tailcone.vsix and refuses one that is too large or holds what it should not.
import { execFileSync } from "node:child_process";
import { statSync } from "node:fs";
import { join } from "node:path";
import { root } from "./schemas.mjs";

const packageFile = join(root, "dist", "tailcone.vsix");
const largest = 1_000_000;

execFileSync(
  process.execPath,
  [
    join(root, "node_modules/@vscode/vsce/vsce"),
    "package",
    "--no-dependencies",
    "--skip-license",
    "--allow-missing-repository",
    "--no-rewrite-relative-links",
    "--out",
    packageFile,
  ],
  { cwd: root, stdio: "inherit" },
);
const { size } = statSync(packageFile);
console.log(`dist/tailcone.vsix: ${(size / 1000).toFixed(0)} kB of at most ${largest / 1000} kB`);
if (size > largest) {
  console.error("The package is larger than it may be.");
  process.exitCode = 1;
}
