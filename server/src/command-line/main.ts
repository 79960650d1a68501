import { realpathSync } from "node:fs";
import { serveAsThread } from "./check-all";
import { run } from "./run";
import { exitCodes } from "./surroundings";

export { run };

/** Runs the command line of this process; in a thread that a check has started, serves that check instead. */
export async function main(): Promise<void> {
  if (serveAsThread()) return;
  process.stdout.on("error", (error: NodeJS.ErrnoException) => {
    // A reader that stops early, such as `head`, is no fault of the check.
    if (error.code === "EPIPE") return;
    process.stderr.write(`tailcone: can't write the output: ${error.message}\n`);
    process.exit(exitCodes.couldNotWork);
  });
  // Where not even a complaint can be written, the exit code still tells.
  process.stderr.on("error", () => {});
  process.exitCode = await run(process.argv.slice(2), {
    workingFolder: realpathSync(process.cwd()),
    width: Math.min(process.stdout.columns ?? 80, 100),
    color: process.stdout.isTTY === true && process.env.NO_COLOR === undefined,
    today: today(),
    isWatched: process.stderr.isTTY === true && process.env.CI === undefined,
    write: (text) => process.stdout.write(text),
    complain: (text) => process.stderr.write(text),
    showProgress: (line) => process.stderr.write(`\r\u001b[K${line}`),
  });
}

/** The day where the user is: what is accepted until a day holds to its end there. */
function today(): string {
  const now = new Date();
  const two = (number: number) => String(number).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
