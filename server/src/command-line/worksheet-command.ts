import { resolve } from "node:path";
import { version } from "../../../package.json";
import { check } from "../core/check";
import { recordKindOf } from "../core/records/schema";
import { worksheetOf } from "../core/views/worksheet";
import type { WorksheetArguments } from "./arguments";
import { isFolder } from "./find-records";
import { displayPath, OpenRecords } from "./records-on-disk";
import { renderWorksheet } from "./render/worksheet";
import { type ExitCode, exitCodes, type Surroundings } from "./surroundings";

/** Prints every value of one install record. @throws {Mistake} where there is no such file */
export function worksheetCommand(
  { record: path, report }: WorksheetArguments,
  around: Surroundings,
): ExitCode {
  const file = resolve(around.workingFolder, path);
  if (isFolder(path, file) || recordKindOf(file) !== "install") {
    around.complain(`tailcone: a worksheet is made of an install record, and '${path}' is none\n`);
    return exitCodes.couldNotWork;
  }
  const { shelf } = OpenRecords.onDisk(around.workingFolder);
  const record = shelf.load(file);
  if (!record) {
    around.complain(`tailcone: can't read '${path}'\n`);
    return exitCodes.couldNotWork;
  }
  const judgement = check(record, shelf, { today: around.today });
  const pathOf = displayPath(around.workingFolder);
  around.write(
    report === "json"
      ? `${JSON.stringify({ version, record: pathOf(file), ...worksheetOf(judgement, pathOf) }, null, 2)}\n`
      : renderWorksheet(judgement, pathOf, around.width),
  );
  return exitCodes.clean;
}
