import { type ChildProcess, execFile, spawn } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, join, resolve } from "node:path";
import { promisify } from "node:util";
import { findTools } from "./tools";

export interface ServerOptions {
  /** The packaged extension. */
  readonly vsix: string;
  /** A folder. The editor opens a copy of it. */
  readonly workspace: string;
  /** User settings, above the ones that make the editor quiet. */
  readonly settings?: Readonly<Record<string, unknown>>;
}

export interface Server {
  /** Where the browser finds the workbench, with the copied workspace open. */
  readonly url: string;
  /** The copy of the workspace. */
  readonly workspace: string;
  /** Everything that the server wrote, with the output of the installation first. */
  log(): string;
  /** Ends every process that was started and removes the temporary folders. */
  stop(): Promise<void>;
}

const startLimit = 60_000;
const endLimit = 5_000;

/** How a test run is broken off; the last is the end of the process that vitest started this one from. */
const endings = ["SIGINT", "SIGTERM", "disconnect"] as const;
const exit = () => process.exit(1);

const serverArguments = [
  ...["--auth", "none", "--bind-addr", "127.0.0.1:0", "--ignore-last-opened"],
  ...["--disable-telemetry", "--disable-update-check", "--disable-workspace-trust", "--disable-proxy"],
];

const quietSettings = {
  "chat.disableAIFeatures": true,
  // A typed line would gain the indentation of the one above, and the edit would come out wrong.
  "editor.autoIndent": "none",
  "editor.hover.delay": 100,
  // Offers words of the file while a test types; what the extension offers is not touched by it.
  "editor.wordBasedSuggestions": "off",
  "extensions.autoUpdate": false,
  "extensions.ignoreRecommendations": true,
  // The browser's default is to save after a second, and a test could not tell an undone edit from a saved one.
  "files.autoSave": "off",
  "git.enabled": false,
  "telemetry.telemetryLevel": "off",
  "update.mode": "none",
  // Lets a screenshot choose light or dark by what the browser claims to prefer.
  "window.autoDetectColorScheme": true,
  "workbench.secondarySideBar.defaultVisibility": "hidden",
  "workbench.startupEditor": "none",
};

/** Installs the extension into a fresh editor and starts that editor's server on a free port of loopback. */
export async function startServer(options: ServerOptions): Promise<Server> {
  const tools = findTools();
  const home = mkdtempSync(join(tmpdir(), "workbench-"));
  const removeHome = () => rmSync(home, { recursive: true, force: true, maxRetries: 5 });
  let serving: ChildProcess | undefined;
  const abandon = () => {
    if (serving) signalGroup(serving, "SIGKILL");
    removeHome();
  };
  process.once("exit", abandon);
  for (const ending of endings) process.once(ending, exit);
  const stop = async () => {
    if (serving) await endGroup(serving);
    process.off("exit", abandon);
    for (const ending of endings) process.off(ending, exit);
    removeHome();
  };

  try {
    const { workspace, args, env } = furnish(home, options);
    const install = [tools.editor, ...args, "--install-extension", options.vsix];
    const installed = await promisify(execFile)(tools.node, install, { env });
    let log = installed.stdout + installed.stderr;
    // A group of its own, so that its children end with it.
    const started = spawn(tools.node, [tools.editor, ...args, ...serverArguments, workspace], {
      env,
      detached: true,
      stdio: ["ignore", "pipe", "pipe"],
    });
    serving = started;
    const keep = (chunk: Buffer) => {
      log += chunk.toString();
    };
    started.stdout.on("data", keep);
    started.stderr.on("data", keep);
    const address = await findAddress(started, () => log);
    return { url: `${address}/?folder=${encodeURIComponent(workspace)}`, workspace, log: () => log, stop };
  } catch (problem) {
    await stop();
    throw problem;
  }
}

/** Fills an empty folder with what one editor has for itself: settings, extensions, a copy of the workspace. */
function furnish(home: string, { workspace: original, settings }: ServerOptions) {
  const [user, extensions, temporary, opened] = ["user", "extensions", "tmp", "opened"].map((name) =>
    join(home, name),
  ) as [string, string, string, string];
  for (const folder of [join(user, "User"), extensions, temporary]) mkdirSync(folder, { recursive: true });
  writeFileSync(
    join(user, "User", "settings.json"),
    JSON.stringify({ ...quietSettings, ...settings }, null, 2),
  );
  // Keeps its name, which the editor shows.
  const workspace = join(opened, basename(resolve(original)));
  cpSync(original, workspace, { recursive: true });
  return {
    workspace,
    args: ["--config", join(home, "config.yaml"), "--user-data-dir", user, "--extensions-dir", extensions],
    env: {
      PATH: process.env.PATH,
      HOME: home,
      TMPDIR: temporary,
      LANG: "C.UTF-8",
      // Without it the workbench looks for a gallery outside.
      EXTENSIONS_GALLERY: JSON.stringify({ serviceUrl: "", itemUrl: "" }),
    },
  };
}

/** The address that a starting server says it listens on. Rejects when it ends or does not say so in time. */
function findAddress(serving: ChildProcess, log: () => string): Promise<string> {
  return new Promise((resolve, reject) => {
    const giveUp = (why: string) => {
      clearTimeout(timer);
      reject(new Error(`The editor's server ${why}.\n${log()}`));
    };
    const timer = setTimeout(() => giveUp("did not start in time"), startLimit);
    serving.stdout?.on("data", () => {
      const address = /HTTP server listening on (http:\/\/127\.0\.0\.1:\d+)/.exec(log())?.[1];
      if (address === undefined) return;
      clearTimeout(timer);
      resolve(address);
    });
    serving.once("error", (problem) => giveUp(`could not be started: ${problem.message}`));
    serving.once("exit", (code) => giveUp(`ended with ${code}`));
  });
}

async function endGroup(leader: ChildProcess): Promise<void> {
  signalGroup(leader, "SIGTERM");
  for (const deadline = Date.now() + endLimit; Date.now() < deadline; ) {
    if (!signalGroup(leader, 0)) return;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  signalGroup(leader, "SIGKILL");
}

/** False when the group has no process left. */
function signalGroup(leader: ChildProcess, signal: NodeJS.Signals | 0): boolean {
  try {
    return leader.pid !== undefined && process.kill(-leader.pid, signal);
  } catch {
    return false;
  }
}
