import { version } from "../../../../package.json";
import type { Judgement } from "../../core/check";
import { isPlace } from "../../core/findings/finding";
import { lineIndex } from "../../core/reading";
import { citeSource } from "../../core/source";
import { sourcesBehind } from "../../core/views/finding-sources";
import type { RenderContext } from "./context";

/** The published report: lines and columns from 1, paths with forward slashes. */
export function renderJson({ judgements, pathOf }: RenderContext): string {
  const files = judgements.map((judgement) => ({
    path: pathOf(judgement.record.file),
    findings: findingsOf(judgement, pathOf(judgement.record.file)),
  }));
  return `${JSON.stringify({ version, files }, null, 2)}\n`;
}

function findingsOf({ record, findings }: Judgement, path: string) {
  const lines = lineIndex(record.text);
  const point = (offset: number) => {
    const { line, character } = lines.positionAt(offset);
    return { line: line + 1, column: character + 1 };
  };
  return findings.map((finding) => {
    const { rule, severity, subject, anchor, what, todo, assessment } = finding;
    const span = isPlace(anchor) ? record.reading.spanOf(anchor.node) : anchor.span;
    return {
      rule,
      severity,
      subject,
      path,
      start: point(span.start),
      end: point(span.end),
      message: what,
      remedy: todo,
      value: assessment?.value.value ?? null,
      limit: assessment?.limit.value ?? null,
      unit: assessment?.value.unit ?? null,
      source: sourcesBehind(finding).map(citeSource),
    };
  });
}
