import { check } from "../core/check";
import type { CheckArguments } from "./arguments";
import { severities } from "./arguments";
import { findRecords } from "./find-records";
import { displayPath, shelfOnDisk } from "./records-on-disk";
import { renderFleet } from "./render/fleet";
import { renderJson } from "./render/json";
import { renderText } from "./render/text";
import { type ExitCode, exitCodes, type Surroundings } from "./surroundings";

/** Checks records and prints what was found. */
export function checkCommand(wanted: CheckArguments, around: Surroundings): ExitCode {
  const found = findRecords(wanted.paths, around.workingFolder);
  if ("mistake" in found) {
    around.complain(`tailcone: ${found.mistake}\n`);
    return exitCodes.couldNotWork;
  }
  const shelf = shelfOnDisk(around.workingFolder);
  const options = { severities: wanted.severities };
  const judgements = [];
  for (const file of found.files) {
    const record = shelf.load(file);
    if (!record) {
      around.complain(`tailcone: can't read '${displayPath(around.workingFolder)(file)}'\n`);
      return exitCodes.couldNotWork;
    }
    judgements.push(check(record, shelf, options));
  }
  const context = { judgements, source: shelf, options, pathOf: displayPath(around.workingFolder) };
  around.write(
    wanted.report === "json"
      ? renderJson(context)
      : renderText(context, { ...around, isBrief: wanted.isBrief }) +
          (wanted.isBrief ? "" : renderFleet(judgements, context.pathOf, around.width)),
  );
  const threshold = severities.indexOf(wanted.failOn);
  const fails = judgements.some(({ findings }) =>
    findings.some(({ severity }) => severities.indexOf(severity) >= threshold),
  );
  return fails ? exitCodes.findings : exitCodes.clean;
}
