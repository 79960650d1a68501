import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { version } from "../../../package.json";
import { type MergeArguments, Mistake } from "./arguments";
import { outcomeOf } from "./check-command";
import { count, emptyTally, type RecordReport } from "./record-report";
import { ReportOutputs } from "./report-outputs";
import type { ExitCode, Surroundings } from "./surroundings";

/** Makes one report, in any form, of the JSON reports of the parts of a check. */
export function mergeCommand(wanted: MergeArguments, around: Surroundings): ExitCode {
  const records = new Map<string, RecordReport>();
  for (const path of wanted.paths) {
    for (const record of recordsOf(path, around.workingFolder)) {
      if (records.has(record.repositoryPath)) {
        throw new Mistake(`'${record.repositoryPath}' is in two of the reports`);
      }
      records.set(record.repositoryPath, record);
    }
  }
  const inOrder = [...records.values()].sort((a, b) => (a.repositoryPath < b.repositoryPath ? -1 : 1));
  const knowsBefore = inOrder.some(({ findings }) => findings.some(({ known }) => known));
  const reports = ReportOutputs.open(wanted.reports, { isBrief: true, knowsBefore }, around);
  const tally = emptyTally();
  for (const record of inOrder) {
    count(tally, record);
    reports.add(record);
  }
  reports.close(tally);
  return outcomeOf(tally, wanted.failOn);
}

/** @throws {Mistake} where the file is no report of this version */
function recordsOf(path: string, workingFolder: string): readonly RecordReport[] {
  let found: { readonly version?: unknown; readonly files?: unknown } | null;
  try {
    found = JSON.parse(readFileSync(resolve(workingFolder, path), "utf8"));
  } catch (error) {
    const why = error instanceof SyntaxError ? "it is no JSON" : "there is no such file";
    throw new Mistake(`can't read the report '${path}': ${why}`);
  }
  if (found?.version !== version || !Array.isArray(found.files)) {
    throw new Mistake(`'${path}' is no JSON report of 'check' by tailcone ${version}`);
  }
  return found.files;
}
