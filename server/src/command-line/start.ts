/**
 * What `tailcone` starts: it loads the checker (`main.ts`, bundled beside it) and runs it.
 *
 * The checker runs once and for a moment, so that most of its time is compiling. The build keeps what was
 * compiled in `checker.cache`. Node takes it only when it is of the very same version and built with the same
 * options, and else compiles as if there were none.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { setFlagsFromString } from "node:v8";
import { Script } from "node:vm";
import type { main } from "./main";

type Checker = { readonly main: typeof main };

/**
 * Options of the engine for a program that runs once and for a moment.
 * - A function is optimized after some fifteen times as much work as is usual, in bytes of bytecode run through. A
 *   check of one record ends before optimized code would pay for itself, and the optimizer took 40 % of its
 *   processor time; a check of many records gets there all the same.
 * - The space for what is new grows at once to its full 16 MB instead of step by step, and nothing is
 *   marked ahead for a collection of all that is old: a check of one record ends before it would be needed.
 */
const engineFlags = [
  "--interrupt-budget=1000000",
  "--semi-space-growth-factor=16",
  "--no-incremental-marking",
];

void loadChecker().main();

/** The bundle is a function that gives what it exports. The threads that it starts begin here, too. */
function loadChecker(): Checker {
  const file = join(__dirname, "checker.js");
  const cachedData = compiledBefore();
  const script = new Script(readFileSync(file, "utf8"), {
    filename: file,
    ...(cachedData && { cachedData }),
  });
  // Not before: a cache is taken only under the flags that it was made under. And only with the Node that it was
  // made with: another one may not know a flag, and would say so on every run.
  if (script.cachedDataRejected === false) for (const flag of engineFlags) setFlagsFromString(flag);
  return (script.runInThisContext() as (require: NodeJS.Require, startFile: string) => Checker)(
    require,
    __filename,
  );
}

function compiledBefore(): Buffer | undefined {
  try {
    return readFileSync(join(__dirname, "checker.cache"));
  } catch {
    return undefined; // it is quicker with it, and right without
  }
}
