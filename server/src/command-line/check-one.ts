import { type CheckOptions, check, type Judgement } from "../core/check";
import { identitiesOf, identityKey } from "../core/identity";
import { compareJudgements } from "../core/views/comparison";
import { erodedMargins, type MarginBound, marginsBelow } from "../core/views/gate";
import { Mistake } from "./arguments";
import { Repository } from "./git";
import { type RecordReport, reportOf } from "./record-report";
import { displayPath, OpenRecords, repositoryPath } from "./records-on-disk";
import { findingTexts, type TextStyle } from "./render/text";

/** How records are to be checked: plain data, the same for every record and in every thread. */
export interface CheckJob {
  readonly workingFolder: string;
  readonly options: CheckOptions;
  /** The only rules whose findings are reported; empty: all. */
  readonly only: readonly string[];
  /** Revision whose findings are known already. */
  readonly base: string | undefined;
  readonly floors: readonly MarginBound[];
  readonly erosions: readonly MarginBound[];
  /** Set where findings are wanted at length. */
  readonly style: TextStyle | undefined;
}

/** Checks one record after the other, and holds no more than it needs for the next. */
export class Checker {
  private readonly records: OpenRecords;
  private readonly base: OpenRecords | undefined;
  private readonly pathOf: (file: string) => string;
  private readonly repositoryPathOf: (file: string) => string;

  /** @throws {Mistake} where there is no such revision */
  constructor(private readonly job: CheckJob) {
    this.records = OpenRecords.onDisk(job.workingFolder);
    this.pathOf = displayPath(job.workingFolder);
    this.repositoryPathOf = repositoryPath(job.workingFolder);
    if (job.base !== undefined) {
      const repository = Repository.around(job.workingFolder);
      this.base = OpenRecords.ofRevision(repository, repository.revision(job.base));
    }
  }

  /** @throws {Mistake} where the file can't be read */
  check(file: string): RecordReport {
    const { options, only, floors, erosions, style } = this.job;
    const record = this.records.shelf.load(file);
    if (!record) throw new Mistake(`can't read '${this.pathOf(file)}'`);
    const judgement = check(record, this.records.shelf, options);
    const before = this.before(file);
    const context = { source: this.records.shelf, options, pathOf: this.pathOf };
    const report = reportOf(judgement, {
      only,
      pathOf: this.pathOf,
      repositoryPathOf: this.repositoryPathOf,
      textOf: style && findingTexts(judgement, context, style),
      before: before && keysOf(before),
      breaches: [
        ...marginsBelow(judgement.assessments, floors),
        ...(before && erosions.length > 0
          ? erodedMargins(compareJudgements("", before, judgement), erosions)
          : []),
      ],
    });
    this.records.release(file);
    this.base?.release(file);
    return report;
  }

  /** The judgement of the record as it was in the base revision. */
  private before(file: string): Judgement | undefined {
    const record = this.base?.shelf.load(file);
    return record && check(record, this.base!.shelf, this.job.options);
  }
}

/** What is accepted was no open finding, so that it counts when the deviation is gone. */
function keysOf({ record, findings, assessments }: Judgement): Set<string> {
  const identities = identitiesOf(record, findings, assessments);
  return new Set(
    [...identities].filter(([{ accepted }]) => !accepted).map(([, identity]) => identityKey(identity)),
  );
}
