import { run } from "../../server/src/command-line/run";
import type { Outcome } from "./command-line";

/**
 * Runs the command line without a process of its own: quicker where a test looks at many records or pages. What the
 * process adds (its streams, its compiled code, its threads) is left to those that start one.
 */
export async function tailconeHere(args: readonly string[], workingFolder: string): Promise<Outcome> {
  let [stdout, stderr] = ["", ""];
  const code = await run(args, {
    workingFolder,
    width: 80,
    color: false,
    today: "2026-01-01",
    isWatched: false,
    showProgress: () => {},
    write: (text) => {
      stdout += text;
    },
    complain: (text) => {
      stderr += text;
    },
  });
  return { code, stdout, stderr };
}
