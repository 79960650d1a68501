// Keeps the checker's code compiled, so that a command line does not have to compile it at each start.
import { readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { setFlagsFromString } from "node:v8";
import { Script } from "node:vm";

/** What is used by these is in the cache; the rest is compiled when it is used. */
const commands = [["check"], ["check", "--report", "json"], ["worksheet", "survey-rack-0417.install.yaml"]];

/**
 * Runs the checker on the records and keeps what was compiled on the way.
 *
 * The engine keeps a note, too, of each function that was worth translating to machine code here, and a program
 * that starts from the cache would translate all of those at their first call. So nothing is, while it runs. The
 * flag is set back in the end, as a cache is only taken under the flags that it was made under.
 */
export async function writeCodeCache({ program, cache, records }) {
  setFlagsFromString("--no-sparkplug");
  const script = new Script(readFileSync(program, "utf8"), { filename: program });
  const { run } = script.runInThisContext()(createRequire(program), program);
  for (const argv of commands) {
    let complaints = "";
    await run(argv, {
      workingFolder: records,
      width: 80,
      color: false,
      today: "2026-01-01",
      isWatched: false,
      showProgress: () => true,
      write: () => true,
      complain: (text) => {
        complaints += text;
      },
    });
    if (complaints) throw new Error(`tailcone ${argv.join(" ")} complained: ${complaints}`);
  }
  setFlagsFromString("--sparkplug");
  writeFileSync(cache, script.createCachedData());
}
