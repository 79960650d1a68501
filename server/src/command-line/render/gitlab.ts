import type { Severity } from "../../core/findings/finding";
import { acceptedWords } from "../../core/views/acceptance-words";
import type { RecordReport, ReportedFinding } from "../record-report";
import { safeJson } from "./json";
import type { ReportWriter } from "./report";

const severities: Readonly<Record<Severity, string>> = {
  error: "major",
  warning: "minor",
  information: "info",
};

/** The code quality report of GitLab: issues as Code Climate specifies them. It compares with the target branch by itself, so it gets everything. */
export function gitlabReport(): ReportWriter {
  let isFirst = true;
  return {
    open: () => "[",
    add: (record) =>
      record.findings
        .map((finding) => {
          const separator = isFirst ? "\n" : ",\n";
          isFirst = false;
          return separator + safeJson(JSON.stringify(entry(finding, record)));
        })
        .join(""),
    close: () => (isFirst ? "]\n" : "\n]\n"),
  };
}

function entry(finding: ReportedFinding, { repositoryPath }: RecordReport) {
  const { rule, severity, message, remedy, fingerprint, start, end, accepted } = finding;
  return {
    type: "issue",
    categories: ["Bug Risk"],
    // GitLab does not show the name of the check.
    description: `[${rule}] ${message} ${accepted ? `${acceptedWords(accepted)}.` : remedy}`,
    check_name: rule,
    fingerprint,
    severity: severities[severity],
    location: { path: repositoryPath, lines: { begin: start.line, end: end.line } },
  };
}
