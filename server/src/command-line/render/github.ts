import type { Severity } from "../../core/findings/finding";
import { acceptedWords } from "../../core/views/acceptance-words";
import type { RecordReport, ReportedFinding } from "../record-report";
import type { ReportWriter } from "./report";

const commands: Readonly<Record<Severity, string>> = {
  error: "error",
  warning: "warning",
  information: "notice",
};

/**
 * Annotations as workflow commands of GitHub Actions, a line each. The runner shows ten of each kind for a step,
 * so what was there before is left out, and only counted.
 */
export function githubReport(): ReportWriter {
  return {
    open: () => "",
    add: (record) =>
      record.findings
        .filter(({ known }) => !known)
        .map((finding) => annotation(finding, record))
        .join(""),
    close: ({ known }) => (known === 0 ? "" : `::notice::${known} findings were there before\n`),
  };
}

function annotation(finding: ReportedFinding, { repositoryPath }: RecordReport): string {
  const { severity, rule, message, remedy, start, end, accepted } = finding;
  const properties = {
    title: rule,
    file: repositoryPath,
    line: start.line,
    endLine: end.line,
    // The runner takes columns only where they are on one line.
    ...(start.line === end.line && { col: start.column, endColumn: end.column }),
  };
  const listed = Object.entries(properties).map(([key, value]) => `${key}=${propertyText(String(value))}`);
  const words = accepted ? `${message}\n${acceptedWords(accepted)}` : `${message}\n${remedy}`;
  return `::${commands[severity]} ${listed.join(",")}::${dataText(words)}\n`;
}

function dataText(text: string): string {
  return text.replaceAll("%", "%25").replaceAll("\r", "%0D").replaceAll("\n", "%0A");
}

function propertyText(text: string): string {
  return dataText(text).replaceAll(":", "%3A").replaceAll(",", "%2C");
}
