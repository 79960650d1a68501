/**
 * What `tailcone` starts: it loads the checker (`main.ts`, bundled beside it) and runs it.
 *
 * The checker runs once and for a moment, so that most of its time is compiling. The build keeps what was
 * compiled in `checker.cache`. Node takes it only when it is of the very same version and built with the same
 * options, and else compiles as if there were none.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { Script } from "node:vm";
import type { main } from "./main";

type Checker = { readonly main: typeof main };

void loadChecker().main();

/** The bundle is a function that gives what it exports. The threads that it starts begin here, too. */
function loadChecker(): Checker {
  const file = join(__dirname, "checker.js");
  const cachedData = compiledBefore();
  const script = new Script(readFileSync(file, "utf8"), {
    filename: file,
    ...(cachedData && { cachedData }),
  });
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
