import { Composer, type CST, isMap, isScalar, isSeq, Schema } from "yaml";
import { limits } from "../limits";
import { TreeBuilder } from "./build";
import { entriesFrame, type Frame, listEntryFrame } from "./frame";
import { partHalfTypedKeys } from "./half-typed";
import { type PreparedText, prepare, restoreTabs, tabsInBlocks } from "./prepare";
import { type CappedProblems, type ItemProblem, ProblemCollector } from "./problems";
import { type Scan, type ScanReport, scan } from "./scan";
import { type Piece, readsBare } from "./split";
import { controlCharacters, lineSpan, syntaxProblem } from "./syntax";
import type { Entry, Item, Node, ReadingFeature, Span } from "./tree";

/** One item with all that reading it gave. Offsets are relative to the item. */
export interface Unit {
  readonly kind: Piece["kind"] | "whole";
  readonly indent: number;
  readonly item: Item;
  /** Top-level entries. The value of a `header`'s only entry is still empty; an `entry` has none. */
  readonly entries: readonly Entry[];
  /** The value of an `entry`. */
  readonly value?: Node;
  readonly comments: readonly Span[];
  readonly problems: CappedProblems<ItemProblem>;
}

/** Reads a piece of a text. Undefined when the piece does not stand alone. */
export function readPiece(text: string, kind: Piece["kind"], indent: number): Unit | undefined {
  const parsed = parse(text, kind === "entry" ? listEntryFrame(indent) : entriesFrame);
  if (!parsed || parsed.scan.linked) return undefined;
  const unit = compose(text, kind, indent, parsed);
  const [first, second] = unit.entries;
  if (kind === "header" && (!first || second || !isEmpty(first.value))) return undefined;
  if (kind === "entry" && !unit.value) return undefined;
  return unit;
}

/** Reads a text as one item, whatever is in it. */
export function readWhole(text: string): Unit {
  const parsed = (readsBare(text) ? undefined : parse(text, entriesFrame)) ?? parse(text, undefined)!;
  return compose(text, "whole", 0, parsed);
}

interface Parsed {
  /** The framed document, or all that is in the stream when there is no frame. */
  readonly stream: readonly CST.Token[];
  readonly scan: Scan;
  /** What was parsed. */
  readonly source: string;
  /** Added to an offset in `source` to get one in the item. */
  readonly shift: number;
  readonly problems: ProblemCollector;
}

/** Undefined when the text breaks out of the frame; never so without a frame. */
function parse(text: string, frame: Frame | undefined): Parsed | undefined {
  const prepared = prepare(text);
  const parsed = parseSource(text, prepared, prepared.source, frame);
  if (!parsed || prepared.tabs.length === 0) return parsed;

  // Only parsing shows which tabs are content; with those put back, it is done again.
  const toPrepared = parsed.shift - prepared.skipped;
  const bodies = parsed.scan.blockBodies.map((body) => moved(body, toPrepared));
  const content = new Set(tabsInBlocks(prepared.source, prepared.tabs, bodies));
  const again =
    content.size === 0
      ? parsed
      : parseSource(text, prepared, restoreTabs(prepared.source, [...content]), frame);
  for (const tab of prepared.tabs) {
    if (!tab.beforeContent || content.has(tab)) continue;
    const facts = { tabs: tab.written.split("\t").length - 1 };
    again?.problems.add({ rule: "text-tab-indent", ...moved(tab, prepared.skipped), facts });
  }
  return again;
}

function parseSource(
  text: string,
  prepared: PreparedText,
  inner: string,
  frame: Frame | undefined,
): Parsed | undefined {
  const opening = frame?.opening ?? "";
  const lines = opening + inner + (inner === "" || inner.endsWith("\n") ? "" : "\n");
  // Without a frame, a comment with both kinds of quote ends an unclosed quote at its own line.
  const source = lines + (frame?.closing ?? `#'"`);
  const shift = prepared.skipped - opening.length;

  const problems = new ProblemCollector();
  for (const conflict of prepared.conflicts) {
    const span = moved(conflict, prepared.skipped);
    const facts = { marker: text.slice(span.start, span.start + 7) };
    problems.add({ rule: "text-merge-conflict", ...span, facts });
  }
  const scanned = scan(source, scanReport(text, shift, problems));
  if (scanned.folded) partHalfTypedKeys(scanned.stream, source);
  if (!frame) return { stream: scanned.stream, scan: scanned, source, shift, problems };
  const document = scanned.isOpen ? undefined : frame.strip(scanned.stream, lines.length);
  return document && { stream: [document], scan: scanned, source, shift, problems };
}

function scanReport(text: string, shift: number, problems: ProblemCollector): ScanReport {
  return {
    syntax(start, end, code, detail) {
      const span = lineSpan(text, start + shift, end + shift);
      problems.add({ rule: "text-not-yaml", ...span, facts: { code, detail } });
    },
    feature: (start, end, feature) => problems.add(featureProblem(start + shift, end + shift, feature)),
    tooDeep(start) {
      const span = lineSpan(text, start + shift, start + shift + 1);
      problems.add({ rule: "text-too-deep", ...span, facts: { limit: limits.nestingDepth } });
    },
  };
}

function compose(text: string, kind: Unit["kind"], indent: number, parsed: Parsed): Unit {
  const { source, shift, problems } = parsed;
  const item: Item = { text };
  const entries: Entry[] = [];
  let value: Node | undefined;
  for (const problem of controlCharacters(text)) problems.add(problem);

  const report = (problem: ItemProblem) =>
    problems.add({ ...problem, ...lineSpan(text, problem.start, problem.end) });
  let isFirst = true;
  for (const { contents, range } of documents(text, parsed)) {
    if (!isFirst) problems.add(featureProblem(range[0] + shift, range[0] + shift + 3, "several-documents"));
    isFirst = false;
    // Anchors are known within their document only.
    const builder = new TreeBuilder({ item, source, shift, report });
    if (isMap(contents)) {
      entries.push(...builder.entries(contents));
    } else if (contents && !(isScalar(contents) && contents.source === "")) {
      const feature = isSeq(contents) ? "top-level-list" : "top-level-value";
      const [start, end] = contents.range ?? range;
      const span = lineSpan(text, start + shift, end + shift);
      problems.add(featureProblem(span.start, span.end, feature));
    }
  }
  if (kind === "entry") {
    const list = entries.pop()?.value;
    value = list?.kind === "list" ? list.entries[0] : undefined;
  }

  const comments: Span[] = [];
  for (const comment of parsed.scan.comments) {
    const { start, end } = moved(comment, shift);
    if (start >= 0 && end <= text.length) comments.push({ start, end });
  }
  return { kind, indent, item, entries, ...(value && { value }), comments, problems: problems.result() };
}

/** Plain scalars stay as written, so no tag is ever resolved. */
const schema = new Schema({ schema: "failsafe", resolveKnownTags: false, merge: false });

type ErrorPlace = number | readonly number[] | { readonly offset: number; readonly source?: unknown };

function* documents(text: string, { stream, shift, problems }: Parsed) {
  const composer = new Composer({
    schema: schema as never,
    uniqueKeys: false,
    prettyErrors: false,
    logLevel: "silent",
  });
  const report = (start: number, end: number, code: string, message: string) => {
    const problem = syntaxProblem(text, start + shift, end + shift, code, message);
    if (problem) problems.add(problem);
  };
  // The composer would make an `Error` with a stack of each fault, and a text can have a million.
  Object.assign(composer, {
    onError(place: ErrorPlace, code: string, message: string, isWarning?: boolean) {
      if (isWarning) return;
      const [start, end] = errorSpan(place);
      report(start, end, code, message);
    },
  });
  for (const document of composer.compose(stream)) {
    for (const { pos, code, message } of document.errors) report(pos[0], pos[1], code, message);
    yield document;
  }
}

function errorSpan(place: ErrorPlace): readonly [number, number] {
  if (typeof place === "number") return [place, place + 1];
  if ("offset" in place) {
    const { offset, source } = place;
    return [offset, offset + (typeof source === "string" ? source.length : 1)];
  }
  const [start = 0, end = start + 1] = place;
  return [start, end];
}

function featureProblem(start: number, end: number, feature: ReadingFeature): ItemProblem {
  return { rule: "text-feature-not-used", start, end, facts: { feature } };
}

function moved({ start, end }: Span, by: number): Span {
  return { start: start + by, end: end + by };
}

function isEmpty(node: Node): boolean {
  return node.kind === "scalar" && node.style === "empty";
}
