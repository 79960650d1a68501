import type { CST } from "yaml";
import { limits } from "../limits";
import type { Frame } from "./frame";
import { prepare } from "./prepare";
import { ProblemCollector } from "./problems";
import { recoverKeys } from "./recover";
import { type ScanReport, scan } from "./scan";
import { lineSpan } from "./syntax";
import type { Span } from "./tree";

/** The concrete syntax of a text, safe to compose. */
export interface Parsed {
  /** The framed document, or all that is in the stream when there is no frame. */
  readonly stream: readonly CST.Token[];
  /** What was parsed. The offsets of comments are in it. */
  readonly source: string;
  readonly comments: readonly Span[];
  /** What it means can depend on the text around it, or the text around it on this. */
  readonly isLinked: boolean;
  /** Added to an offset in `source` to get one in the item. */
  readonly shift: number;
  readonly problems: ProblemCollector;
}

/** Parses a text in a frame, if one is given. Undefined when the text breaks out of its frame. */
export function parse(text: string): Parsed;
export function parse(text: string, frame: Frame): Parsed | undefined;
export function parse(text: string, frame?: Frame): Parsed | undefined {
  const { source: inner, skipped, conflicts } = prepare(text);
  const opening = frame?.opening ?? "";
  const lines = opening + inner + (inner === "" || inner.endsWith("\n") ? "" : "\n");
  // Without a frame, a comment with both kinds of quote ends an unclosed quote at its own line.
  const source = lines + (frame?.closing ?? `#'"`);
  const shift = skipped - opening.length;

  const problems = new ProblemCollector();
  for (const conflict of conflicts) {
    const span = moved(conflict, skipped);
    const facts = { marker: text.slice(span.start, span.start + 7) };
    problems.add({ rule: "text-merge-conflict", ...span, facts });
  }
  const scanned = scan(source, scanReport(text, shift, problems));
  const isRootParted = recoverKeys(scanned.stream, source);
  const isLinked = scanned.linked || isRootParted;
  const { comments } = scanned;
  const parsed = { comments, isLinked, source, shift, problems };
  if (!frame) return { ...parsed, stream: scanned.stream };
  const document = scanned.isOpen ? undefined : frame.strip(scanned.stream, lines.length);
  return document && { ...parsed, stream: [document] };
}

function scanReport(text: string, shift: number, problems: ProblemCollector): ScanReport {
  return {
    syntax(start, end, code, detail, missing) {
      const span = lineSpan(text, start + shift, end + shift);
      const facts = { code, detail, ...(missing !== undefined && { missing }) };
      problems.add({ rule: "text-not-yaml", ...span, facts });
    },
    feature(start, end, feature) {
      const span = lineSpan(text, start + shift, end + shift);
      problems.add({ rule: "text-feature-not-used", ...span, facts: { feature } });
    },
    tooDeep(start) {
      const span = lineSpan(text, start + shift, start + shift + 1);
      problems.add({ rule: "text-too-deep", ...span, facts: { limit: limits.nestingDepth } });
    },
  };
}

function moved({ start, end }: Span, by: number): Span {
  return { start: start + by, end: end + by };
}
