/** The border: offsets become positions here, and nowhere else in the server. */
import {
  type Diagnostic,
  DiagnosticSeverity,
  type DocumentSymbol,
  type Hover as ProtocolHover,
  type Range,
  SymbolKind,
} from "vscode-languageserver";
import type { Judgement } from "../core/check";
import { type Finding, isPlace, type Severity } from "../core/findings/finding";
import { onceEach } from "../core/once-each";
import { type LineIndex, lineIndex } from "../core/reading";
import type { Span } from "../core/reading/tree";
import type { LoadedRecord } from "../core/records/record";
import type { Place } from "../core/records/written";
import { sentence } from "../core/rules/wording";
import { citeTogether } from "../core/source";
import { acceptedWords } from "../core/views/acceptance-words";
import { sourcesBehind } from "../core/views/finding-sources";
import type { Hover } from "../core/views/hover";
import type { OutlineSymbol } from "../core/views/symbols";

/** The converter of a record as it stands; its lines are indexed once. */
export const converterOf: (record: LoadedRecord) => Converter = onceEach((record) => new Converter(record));

/** Converts offsets of one record's text. */
export class Converter {
  readonly lines: LineIndex;

  constructor(readonly record: LoadedRecord) {
    this.lines = lineIndex(record.text);
  }

  range({ start, end }: Span): Range {
    return { start: this.lines.positionAt(start), end: this.lines.positionAt(end) };
  }

  spanOf({ anchor }: Finding): Span {
    return isPlace(anchor) ? this.record.reading.spanOf(anchor.node) : anchor.span;
  }

  /** A squiggle stays on the line where it starts: over many lines it would hide the text. */
  squiggle(finding: Finding): Range {
    const { start, end } = this.range(this.spanOf(finding));
    if (start.line === end.line) return { start, end };
    const lineEnd = this.lines.offsetAt({ line: start.line, character: Number.MAX_SAFE_INTEGER });
    return { start, end: this.lines.positionAt(lineEnd) };
  }
}

const severities: Readonly<Record<Severity, DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  information: DiagnosticSeverity.Information,
};

/**
 * `locate` tells where a related place stands, in this record or in another; undefined leaves it out. `withRule`
 * makes the rule's id a link to its page.
 */
export function toDiagnostic(
  finding: Finding,
  converter: Converter,
  locate: ((place: Place) => { uri: string; range: Range } | undefined) | undefined,
  withRule = false,
): Diagnostic {
  const related = finding.related.flatMap(({ place, words }) => {
    const location = locate?.(place);
    return location ? [{ location, message: words }] : [];
  });
  return {
    range: converter.squiggle(finding),
    severity: severities[finding.severity],
    code: finding.rule,
    ...(withRule && { codeDescription: { href: `tailcone-rule:/${finding.rule}.md` } }),
    source: "tailcone",
    message: messageOf(finding),
    ...(related.length > 0 && { relatedInformation: related }),
  };
}

/** What is wrong, what to do or how it is accepted, and by which table. */
const messageOf: (finding: Finding) => string = onceEach((finding) => {
  const { what, accepted } = finding;
  const todo = accepted ? `${sentence(acceptedWords(accepted))}.` : finding.todo;
  const source = sourcesBehind(finding)[0];
  return [what, todo, ...(source ? [`Source: ${citeTogether([source])[0]}`] : [])].join("\n");
});

export function toHover({ node, markdown }: Hover, converter: Converter): ProtocolHover {
  return {
    contents: { kind: "markdown", value: markdown },
    range: converter.range(converter.record.reading.spanOf(node)),
  };
}

const symbolKinds: Readonly<Record<OutlineSymbol["kind"], SymbolKind>> = {
  section: SymbolKind.Namespace,
  thing: SymbolKind.Object,
  value: SymbolKind.Property,
};

export function toDocumentSymbol(symbol: OutlineSymbol, converter: Converter): DocumentSymbol {
  return {
    name: symbol.name === "" ? "(empty)" : symbol.name,
    detail: symbol.detail,
    kind: symbolKinds[symbol.kind],
    range: converter.range(symbol.span),
    selectionRange: converter.range(symbol.nameSpan),
    children: symbol.children.map((child) => toDocumentSymbol(child, converter)),
  };
}

/** Counts for the status of one record. */
export function countFindings({ findings }: Judgement): Record<Severity, number> {
  const counts = { error: 0, warning: 0, information: 0 };
  for (const { severity } of findings) counts[severity]++;
  return counts;
}
