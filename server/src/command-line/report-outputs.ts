import { closeSync, openSync, writeSync } from "node:fs";
import { resolve } from "node:path";
import { recordKindOf } from "../core/records/schema";
import { type CheckForm, Mistake, type WantedReport } from "./arguments";
import type { RecordReport, Tally } from "./record-report";
import { githubReport } from "./render/github";
import { gitlabReport } from "./render/gitlab";
import { jsonReport } from "./render/json";
import { junitReport } from "./render/junit";
import { printable } from "./render/layout";
import type { ReportWriter } from "./render/report";
import { sarifReport } from "./render/sarif";
import { textReport } from "./render/text";
import type { Surroundings } from "./surroundings";

/** All reports of a run, written while it goes on. */
export class ReportOutputs {
  private constructor(private readonly outputs: readonly Output[]) {}

  /** @throws {Mistake} where a file can't be written */
  static open(
    reports: readonly WantedReport<CheckForm>[],
    details: { readonly isBrief: boolean; readonly knowsBefore: boolean },
    around: Surroundings,
  ): ReportOutputs {
    const writers: Readonly<Record<CheckForm, () => ReportWriter>> = {
      text: () => textReport({ ...around, isBrief: details.isBrief }),
      json: jsonReport,
      sarif: () => sarifReport(details),
      junit: junitReport,
      github: githubReport,
      gitlab: gitlabReport,
    };
    const outputs = reports.map(({ form, path }) => new Output(writers[form](), outletFor(path, around)));
    for (const output of outputs) output.open();
    return new ReportOutputs(outputs);
  }

  add(record: RecordReport): void {
    for (const output of this.outputs) output.add(record);
  }

  close(tally: Tally): void {
    for (const output of this.outputs) output.close(tally);
  }
}

interface Outlet {
  write(text: string): void;
  close(): void;
}

class Output {
  constructor(
    private readonly writer: ReportWriter,
    private readonly outlet: Outlet,
  ) {}

  open(): void {
    this.put(this.writer.open());
  }

  add(record: RecordReport): void {
    this.put(this.writer.add(record));
  }

  close(tally: Tally): void {
    this.put(this.writer.close(tally));
    this.outlet.close();
  }

  private put(text: string): void {
    if (text !== "") this.outlet.write(text);
  }
}

/**
 * Files are read on terminals too: what goes to one is as harmless as what goes to the output.
 *
 * @throws {Mistake} where the file can't be written, then or later
 */
export function outletFor(path: string | undefined, around: Surroundings): Outlet {
  if (path === undefined) return { write: around.write, close: () => {} };
  if (recordKindOf(path)) throw new Mistake(`a report may not take the place of a record: '${path}'`);
  const tried = <T>(work: () => T): T => {
    try {
      return work();
    } catch (error) {
      throw new Mistake(
        `can't write the report '${path}': ${error instanceof Error ? error.message : error}`,
      );
    }
  };
  const file = tried(() => openSync(resolve(around.workingFolder, path), "w"));
  return {
    write: (text) => tried(() => void writeSync(file, printable(text, false))),
    close: () => tried(() => closeSync(file)),
  };
}
