// Keeps the checker's code compiled, so that a command line does not have to compile it at each start.
import { readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { Script } from "node:vm";

/** What is used by these is in the cache; the rest is compiled when it is used. */
const commands = [["check"], ["check", "--report", "json"], ["worksheet", "survey-rack-0417.install.yaml"]];

/** Runs the checker on the records and keeps what was compiled on the way. */
export function writeCodeCache({ program, cache, records }) {
  const script = new Script(readFileSync(program, "utf8"), { filename: program });
  const { run } = script.runInThisContext()(createRequire(program));
  for (const argv of commands) {
    let complaints = "";
    run(argv, {
      workingFolder: records,
      width: 80,
      color: false,
      write: () => true,
      complain: (text) => {
        complaints += text;
      },
    });
    if (complaints) throw new Error(`tailcone ${argv.join(" ")} complained: ${complaints}`);
  }
  writeFileSync(cache, script.createCachedData());
}
