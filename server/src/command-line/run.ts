import { version } from "../../../package.json";
import { commands, Mistake, parseCommand } from "./arguments";
import { checkCommand } from "./check-command";
import { compareCommand } from "./compare-command";
import { explainCommand } from "./explain-command";
import { helpText } from "./help";
import { mergeCommand } from "./merge-command";
import { printable } from "./render/layout";
import { type ExitCode, exitCodes, type Surroundings } from "./surroundings";
import { worksheetCommand } from "./worksheet-command";

/** Runs one command line. Never rejects: what the tool could not do becomes a message and exit code 2. */
export async function run(argv: readonly string[], outside: Surroundings): Promise<ExitCode> {
  const around: Surroundings = {
    ...outside,
    write: (text) => outside.write(printable(text, outside.color)),
    complain: (text) => outside.complain(printable(text, false)),
  };
  try {
    const parsed = parseCommand(argv);
    switch (parsed.command) {
      case "help":
        around.write(helpText(parsed.of));
        return exitCodes.clean;
      case "version":
        around.write(`${version}\n`);
        return exitCodes.clean;
      case "check":
        return await checkCommand(parsed, around);
      case "compare":
        return compareCommand(parsed, around);
      case "merge":
        return mergeCommand(parsed, around);
      case "worksheet":
        return worksheetCommand(parsed, around);
      case "explain":
        return explainCommand(parsed, around);
    }
  } catch (error) {
    if (error instanceof Mistake) {
      const command = commands.find((one) => one === argv[0]);
      around.complain(
        `tailcone: ${error.message}\nTry 'tailcone ${command ? `help ${command}` : "help"}'.\n`,
      );
      return exitCodes.couldNotWork;
    }
    const detail = error instanceof Error ? (error.stack ?? error.message) : String(error);
    around.complain(
      `tailcone ${version} failed; this is a fault of the tool, not of your records.\n${detail}\n`,
    );
    return exitCodes.couldNotWork;
  }
}
