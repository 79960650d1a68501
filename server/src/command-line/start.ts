/**
 * What `tailcone` starts: it loads the checker (`run.ts`, bundled beside it) and runs one command line.
 *
 * The checker runs once and for a moment, so that most of its time is compiling. The build keeps what was
 * compiled in `checker.cache`. Node takes it only when it is of the very same version and built with the same
 * options, and else compiles as if there were none.
 */
import { readFileSync, realpathSync } from "node:fs";
import { join } from "node:path";
import { Script } from "node:vm";
import type { run } from "./run";

type Checker = { readonly run: typeof run };

const outcome = loadChecker().run(process.argv.slice(2), {
  workingFolder: realpathSync(process.cwd()),
  width: Math.min(process.stdout.columns ?? 80, 100),
  color: process.stdout.isTTY === true && process.env.NO_COLOR === undefined,
  write: (text) => process.stdout.write(text),
  complain: (text) => process.stderr.write(text),
});
process.exitCode = outcome;

// A reader that stops early, such as `head`, is no fault of the check.
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code !== "EPIPE") throw error;
});

/** The bundle is a function of `require` that gives what it exports. */
function loadChecker(): Checker {
  const file = join(__dirname, "checker.js");
  const cachedData = compiledBefore();
  const script = new Script(readFileSync(file, "utf8"), {
    filename: file,
    ...(cachedData && { cachedData }),
  });
  return (script.runInThisContext() as (require: NodeJS.Require) => Checker)(require);
}

function compiledBefore(): Buffer | undefined {
  try {
    return readFileSync(join(__dirname, "checker.cache"));
  } catch {
    return undefined; // it is quicker with it, and right without
  }
}
