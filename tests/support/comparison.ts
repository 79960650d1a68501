/** One form for what the editor shows and what the command line reports. */
import type { Diagnostic } from "vscode-languageserver";
import type { ReportedFinding, ReportedPoint } from "./command-line";

export interface Comparable {
  readonly rule: string;
  readonly severity: string;
  readonly start: ReportedPoint;
  readonly end: ReportedPoint;
  /** First line. */
  readonly message: string;
}

const severities = ["error", "warning", "information"];

export function ofEditor({ code, severity, range, message }: Diagnostic): Comparable {
  const point = ({ line, character }: { line: number; character: number }) => ({
    line: line + 1,
    column: character + 1,
  });
  return {
    rule: String(code),
    severity: severities[(severity ?? 0) - 1] ?? "none",
    start: point(range.start),
    end: point(range.end),
    message: wordsOf(message).split("\n")[0]!,
  };
}

/** The text of a message, which an editor of today may also take as markup. */
export function wordsOf(message: Diagnostic["message"]): string {
  return typeof message === "string" ? message : message.value;
}

/** An editor marks no more than the line where a finding starts. */
export function ofReport({ rule, severity, start, end, message }: ReportedFinding, text: string): Comparable {
  const line = text.split(/\r\n|\n|\r/)[start.line - 1] ?? "";
  const isOneLine = start.line === end.line;
  return {
    rule,
    severity,
    start,
    end: isOneLine ? end : { line: start.line, column: line.length + 1 },
    message,
  };
}

export function rulesOf(diagnostics: readonly Diagnostic[]): string[] {
  return diagnostics.map(({ code }) => String(code));
}
