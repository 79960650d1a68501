import { realpathSync } from "node:fs";
import { run } from "./run";

const outcome = run(process.argv.slice(2), {
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
