import type { RecordReport, Tally } from "../record-report";

/**
 * One form of report. It is written while records are checked, so that no report and no record is ever held as
 * a whole; each part is a piece of text.
 */
export interface ReportWriter {
  open(): string;
  add(record: RecordReport): string;
  close(tally: Tally): string;
}
