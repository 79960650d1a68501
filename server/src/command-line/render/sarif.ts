import { version } from "../../../../package.json";
import type { Severity } from "../../core/findings/finding";
import { ruleById } from "../../core/rules";
import { citeSource } from "../../core/source";
import { acceptedWords } from "../../core/views/acceptance-words";
import type { RecordReport, ReportedFinding } from "../record-report";
import { safeJson } from "./json";
import type { ReportWriter } from "./report";

const levels: Readonly<Record<Severity, string>> = {
  error: "error",
  warning: "warning",
  information: "note",
};

/** Forges refuse a run with more results. */
const mostResults = 25_000;

/** SARIF 2.1.0: one run, with the rules that found something and their help. */
export function sarifReport({ knowsBefore }: { readonly knowsBefore: boolean }): ReportWriter {
  const indexOfRule = new Map<string, number>();
  let results = 0;
  let leftOut = 0;

  const result = (finding: ReportedFinding, record: RecordReport) => {
    const { rule, severity, message, remedy, start, end, fingerprint, accepted, known, subject } = finding;
    const ruleIndex = indexOfRule.get(rule) ?? indexOfRule.size;
    indexOfRule.set(rule, ruleIndex);
    return {
      ruleId: rule,
      ruleIndex,
      level: levels[accepted?.severity ?? severity],
      message: { text: messageText(`${message} ${remedy}`) },
      locations: [
        {
          physicalLocation: {
            artifactLocation: { uri: uriOf(record.repositoryPath), uriBaseId: "%SRCROOT%" },
            region: {
              startLine: start.line,
              startColumn: start.column,
              endLine: end.line,
              endColumn: end.column,
            },
          },
          ...(subject !== "" && { logicalLocations: [{ fullyQualifiedName: subject }] }),
        },
      ],
      partialFingerprints: { "tailcone/v1": fingerprint },
      ...(knowsBefore && { baselineState: known ? "unchanged" : "new" }),
      ...((accepted || known) && {
        suppressions: [
          accepted
            ? { kind: "inSource", status: "accepted", justification: acceptedWords(accepted) }
            : { kind: "external", status: "accepted", justification: "It was there before." },
        ],
      }),
    };
  };

  const rule = (id: string) => {
    const { title, why, severity, sources, area } = ruleById.get(id)!;
    const cited = sources.map((source) => `- ${citeSource(source)}`);
    return {
      id,
      shortDescription: { text: messageText(title) },
      fullDescription: { text: messageText(why) },
      help: {
        text: messageText([why, ...cited].join("\n")),
        markdown: messageText(
          [why, ...(cited.length > 0 ? ["", ...cited] : []), "", `\`tailcone explain ${id}\``].join("\n"),
        ),
      },
      defaultConfiguration: { level: levels[severity] },
      properties: { tags: [area] },
    };
  };

  return {
    open: () =>
      `{\n"$schema": "https://json.schemastore.org/sarif-2.1.0.json",\n"version": "2.1.0",\n` +
      `"runs": [{\n"columnKind": "utf16CodeUnits",\n"results": [`,
    add: (record) =>
      record.findings
        .map((finding) => {
          if (results === mostResults) {
            leftOut++;
            return "";
          }
          const separator = results++ === 0 ? "\n" : ",\n";
          return separator + json(result(finding, record));
        })
        .join(""),
    close: () => {
      const driver = { name: "tailcone", version, semanticVersion: version };
      const rules = [...indexOfRule.keys()].map(rule);
      const notification = {
        level: "warning",
        message: { text: `${leftOut} more findings are left out: a run may have ${mostResults} results.` },
      };
      const invocation = {
        executionSuccessful: true,
        ...(leftOut > 0 && { toolExecutionNotifications: [notification] }),
      };
      return (
        `\n],\n"tool": ${json({ driver: { ...driver, rules } })},\n` +
        `"invocations": [${json(invocation)}]\n}]\n}\n`
      );
    },
  };
}

function json(value: unknown): string {
  return safeJson(JSON.stringify(value));
}

/** A relative reference: each step of the path on its own, so that no sign of it is taken for syntax. */
function uriOf(path: string): string {
  const halfSign = /[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;
  return path.replace(halfSign, "\ufffd").split("/").map(encodeURIComponent).join("/");
}

/** Braces mean placeholders in a message and `[words](number)` a link; what a record says is neither. */
function messageText(text: string): string {
  return text.replaceAll("{", "{{").replaceAll("}", "}}").replaceAll("](", "] (");
}
