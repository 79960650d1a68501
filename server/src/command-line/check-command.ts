import { type CheckArguments, type CheckForm, type Part, severities, type WantedReport } from "./arguments";
import { Baseline, BaselineDraft } from "./baseline";
import { checkAll } from "./check-all";
import type { CheckJob } from "./check-one";
import { findRecords } from "./find-records";
import { Progress } from "./progress";
import { count, emptyTally, type Tally } from "./record-report";
import { ReportOutputs } from "./report-outputs";
import { type ExitCode, exitCodes, type Surroundings } from "./surroundings";
import { reachedSince } from "./touched-records";

/** Checks records and reports what was found. */
export async function checkCommand(wanted: CheckArguments, around: Surroundings): Promise<ExitCode> {
  const found = findRecords(wanted.paths, around.workingFolder);
  const touched =
    wanted.changedSince === undefined
      ? found
      : reachedSince(wanted.changedSince, found, around.workingFolder);
  const files = wanted.part ? partOf(touched, wanted.part) : touched;
  const baseline =
    wanted.baseline === undefined ? undefined : Baseline.read(wanted.baseline, around.workingFolder);
  const job: CheckJob = {
    workingFolder: around.workingFolder,
    options: { severities: wanted.severities, today: around.today },
    only: wanted.only,
    base: wanted.base,
    floors: wanted.floors,
    erosions: wanted.erosions,
    style: isAtLength(wanted) ? { width: around.width, color: around.color, isBrief: false } : undefined,
  };
  const knowsBefore = wanted.base !== undefined || baseline !== undefined;
  const progress = new Progress(files.length, around);
  const write = (text: string) => {
    progress.clear();
    around.write(text);
  };
  const details = { isBrief: wanted.isBrief, knowsBefore };
  const reports = ReportOutputs.open(wanted.reports, details, { ...around, write });
  const draft = wanted.writeBaseline === undefined ? undefined : new BaselineDraft();
  const tally = emptyTally();
  for await (const report of checkAll(files, job, wanted.jobs)) {
    const marked = baseline ? baseline.mark(report) : report;
    draft?.add(marked);
    count(tally, marked);
    reports.add(marked);
    progress.step();
  }
  progress.clear();
  reports.close(tally);
  // Only a check of everything can tell that a finding is gone.
  if (baseline && baseline.unused > 0 && files === found) {
    around.complain(
      `tailcone: ${baseline.unused} findings of the baseline are gone; --write-baseline takes them out\n`,
    );
  }
  if (draft && wanted.writeBaseline !== undefined) {
    const written = draft.write(wanted.writeBaseline, around.workingFolder);
    around.complain(`tailcone: wrote ${written} findings to '${wanted.writeBaseline}'\n`);
    return exitCodes.clean;
  }
  return outcomeOf(tally, wanted.failOn);
}

/** What a run comes to: open findings at or above the threshold, or margins that are too small. */
export function outcomeOf(tally: Tally, failOn: CheckArguments["failOn"]): ExitCode {
  const failing = severities.slice(severities.indexOf(failOn));
  const fails = tally.breaches > 0 || failing.some((severity) => tally.open[severity] > 0);
  return fails ? exitCodes.findings : exitCodes.clean;
}

/** Every so-many-th record: neighbours, which are often alike, go to different parts. */
function partOf(files: readonly string[], { number, of }: Part): readonly string[] {
  return files.filter((_, index) => index % of === number - 1);
}

function isAtLength({ isBrief, reports }: CheckArguments): boolean {
  const isText = ({ form }: WantedReport<CheckForm>) => form === "text";
  return !isBrief && reports.some(isText);
}
