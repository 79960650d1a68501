import { version } from "../../../../package.json";
import type { RecordReport } from "../record-report";
import { acting } from "./layout";
import type { ReportWriter } from "./report";

/** The published report: lines and columns from 1, paths with forward slashes. */
export function jsonReport(): ReportWriter {
  let isFirst = true;
  return {
    open: () => `{\n  "version": ${JSON.stringify(version)},\n  "files": [`,
    add: (record) => {
      const separator = isFirst ? "\n" : ",\n";
      isFirst = false;
      return separator + indented(published(record));
    },
    close: () => (isFirst ? "]\n}\n" : "\n  ]\n}\n"),
  };
}

function published({ findings, ...record }: RecordReport) {
  return { ...record, findings: findings.map(({ text: _, ...finding }) => finding) };
}

function indented(value: unknown): string {
  return safeJson(JSON.stringify(value, null, 2)).replace(/^/gm, "    ");
}

/** JSON in which no sign acts on a terminal: what does is escaped, so that it is still what it was. */
export function safeJson(json: string): string {
  return json.replace(acting, (sign) =>
    sign === "\n" ? sign : `\\u${sign.charCodeAt(0).toString(16).padStart(4, "0")}`,
  );
}
