// Runs the workbench tests: set-up, packaging, types, then the journeys in the real editor.
// Arguments go to vitest. The exit code is that of the first step that failed.
import { spawn, spawnSync } from "node:child_process";
import { rmSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { withoutNetwork } from "./isolation.mjs";
import { setUp } from "./set-up.mjs";

const here = fileURLToPath(new URL(".", import.meta.url));
const root = join(here, "..", "..");

try {
  setUp();
} catch (problem) {
  stop(problem.message, 2);
}
step("packaging the extension", "npm", ["run", "--silent", "package"]);
step("types", process.execPath, [join(root, "node_modules", "typescript", "bin", "tsc"), "-p", here]);

// What is kept there is evidence of this run only.
rmSync(join(here, "shots"), { recursive: true, force: true });

const isolation = withoutNetwork();
console.log(
  isolation.length > 0
    ? "workbench: no network but loopback (unshare)"
    : "workbench: unshare is not allowed here, so the network stays; the browser still blocks all but loopback",
);
const [program, ...args] = [
  ...isolation,
  process.execPath,
  join(root, "node_modules", "vitest", "vitest.mjs"),
  "run",
  "--config",
  join(here, "vitest.config.mts"),
  ...process.argv.slice(2),
];
const tests = spawn(program, args, { cwd: root, stdio: "inherit" });
for (const signal of ["SIGINT", "SIGTERM"]) process.on(signal, () => tests.kill(signal));
tests.on("error", (problem) => stop(`the tests could not be started: ${problem.message}`, 2));
tests.on("exit", (code) => process.exit(code ?? 1));

function step(name, command, args) {
  console.log(`workbench: ${name}`);
  const { status, error } = spawnSync(command, args, { cwd: root, stdio: "inherit" });
  if (error || status !== 0) stop(`failed: ${name}${error ? ` (${error.message})` : ""}`, status || 2);
}

function stop(text, code) {
  console.error(`workbench: ${text}`);
  process.exit(code);
}
