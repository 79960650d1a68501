import { acceptedWords } from "../../core/views/acceptance-words";
import { isOpen, type RecordReport, type ReportedFinding } from "../record-report";
import type { ReportWriter } from "./report";

/**
 * JUnit XML: a suite for each record, a case for each finding, and one for the record itself, so that a record
 * without findings is seen to have been checked. What is accepted or was there before is skipped; what only
 * informs passes.
 */
export function junitReport(): ReportWriter {
  return {
    open: () => '<?xml version="1.0" encoding="UTF-8"?>\n<testsuites name="tailcone">\n',
    add: suite,
    close: () => "</testsuites>\n",
  };
}

function suite({ repositoryPath, findings }: RecordReport): string {
  const failures = findings.filter(isFailure).length;
  const skipped = findings.filter((finding) => !isOpen(finding)).length;
  const attributes = attributesText({
    name: repositoryPath,
    tests: findings.length + 1,
    failures,
    errors: 0,
    skipped,
    time: 0,
  });
  const own = attributesText({ classname: repositoryPath, name: "record is checked", time: 0 });
  const cases = findings.map((finding) => testCase(finding, repositoryPath));
  return `  <testsuite${attributes}>\n    <testcase${own}/>\n${cases.join("")}  </testsuite>\n`;
}

function testCase(finding: ReportedFinding, path: string): string {
  const { rule, subject, field, start, severity, message, remedy, accepted, known } = finding;
  const name = [rule, subject, field].filter((part) => part !== "").join(" ");
  const attributes = attributesText({ classname: path, name, time: 0 });
  const place = `${path}:${start.line}:${start.column}`;
  const body = textOf(`${severity}: ${message}\n${remedy}\n${place}\n`);
  const inner = accepted
    ? `<skipped>${textOf(`${message} ${acceptedWords(accepted)}`)}</skipped>`
    : known
      ? `<skipped>${textOf(`${message} It was there before.`)}</skipped>`
      : isFailure(finding)
        ? `<failure${attributesText({ type: severity, message })}>${body}</failure>`
        : `<system-out>${body}</system-out>`;
  return `    <testcase${attributes}>${inner}</testcase>\n`;
}

function isFailure(finding: ReportedFinding): boolean {
  return isOpen(finding) && finding.severity !== "information";
}

function attributesText(attributes: Readonly<Record<string, string | number>>): string {
  return Object.entries(attributes)
    .map(([name, value]) => ` ${name}="${textOf(String(value)).replace(/[\n\r\t]/g, " ")}"`)
    .join("");
}

const entities: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&apos;",
};

/** Signs that XML 1.0 can't hold, not even escaped, and halves of signs. */
const unwritable =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what XML can't hold
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

function textOf(text: string): string {
  return text.replace(unwritable, "\ufffd").replace(/[&<>"']/g, (sign) => entities[sign]!);
}
