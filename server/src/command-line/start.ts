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
 * How long a function has to run before it is worth optimizing, in bytes of bytecode run through; some fifteen
 * times what is usual. A check of one record ends before optimized code would pay for itself, and the optimizer
 * took 40 % of its processor time; a check of many records gets there all the same.
 */
const interruptBudget = 1_000_000;

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
  // made with: another one may not know the flag, and would say so on every run.
  if (script.cachedDataRejected === false) setFlagsFromString(`--interrupt-budget=${interruptBudget}`);
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
