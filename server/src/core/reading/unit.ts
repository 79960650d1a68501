import { isMap, isScalar, isSeq } from "yaml";
import { TreeBuilder } from "./build";
import { compose } from "./compose";
import { entriesFrame, listEntryFrame } from "./frame";
import { type Parsed, parse } from "./parse";
import type { CappedProblems, ItemProblem } from "./problems";
import { type Piece, readsBare } from "./split";
import { controlCharacters, lineSpan, syntaxProblem } from "./syntax";
import type { Entry, Item, Node, ReadingFeature, Span } from "./tree";

/** One item with all that reading it gave. Offsets are relative to the item. */
export interface Unit {
  readonly kind: Piece["kind"] | "whole";
  readonly indent: number;
  readonly item: Item;
  /** The item that its nodes name: another one where they were taken over from a version before (`graft`). */
  readonly home: Item;
  /** Where nodes stand that were taken over. */
  readonly spans?: ReadonlyMap<Node, Span>;
  /** Top-level entries. The value of a `header`'s only entry is still empty; an `entry` has none. */
  readonly entries: readonly Entry[];
  /** The value of an `entry`. */
  readonly value: Node | undefined;
  readonly comments: readonly Span[];
  readonly problems: CappedProblems<ItemProblem>;
}

/** Where a node stands in its unit. */
export function spanIn({ spans }: Unit, node: Node): Span {
  return spans?.get(node) ?? node;
}

/** Reads a piece of a text. Undefined when the piece does not stand alone. */
export function readPiece(text: string, kind: Piece["kind"], indent: number): Unit | undefined {
  const parsed = parse(text, kind === "entry" ? listEntryFrame(indent) : entriesFrame);
  if (!parsed || parsed.isLinked) return undefined;
  const unit = build(text, kind, indent, parsed);
  const [first, second] = unit.entries;
  if (kind === "header" && (!first || second || !isEmpty(first.value))) return undefined;
  if (kind === "entry" && !unit.value) return undefined;
  return unit;
}

/** Reads a text as one item, whatever is in it. */
export function readWhole(text: string): Unit {
  const framed = readsBare(text) ? undefined : parse(text, entriesFrame);
  return build(text, "whole", 0, framed ?? parse(text));
}

function build(text: string, kind: Unit["kind"], indent: number, parsed: Parsed): Unit {
  const { source, shift, problems } = parsed;
  const item: Item = { text };
  const entries: Entry[] = [];
  const report = (problem: ItemProblem) =>
    problems.add({ ...problem, ...lineSpan(text, problem.start, problem.end) });
  const documents = compose(parsed.stream, (start, end, code, message) => {
    const problem = syntaxProblem(text, start + shift, end + shift, code, message);
    if (problem) problems.add(problem);
  });

  let isFirst = true;
  for (const { contents, range } of documents) {
    const [start, end] = (contents?.range ?? range).map((offset) => offset + shift) as [number, number];
    if (!isFirst) report(featureProblem(range[0] + shift, range[0] + shift + 3, "several-documents"));
    isFirst = false;
    if (isMap(contents)) {
      // Anchors are known within their document only.
      const builder = new TreeBuilder({ item, source, shift, report });
      for (const entry of builder.entries(contents)) entries.push(entry);
    } else if (contents && !(isScalar(contents) && contents.source === "")) {
      report(featureProblem(start, end, isSeq(contents) ? "top-level-list" : "top-level-value"));
    }
  }
  for (const problem of controlCharacters(text)) problems.add(problem);

  const comments: Span[] = [];
  for (const comment of parsed.comments) {
    const start = comment.start + shift;
    const end = comment.end + shift;
    // The frame can end in a comment of its own.
    if (end <= text.length) comments.push({ start, end });
  }
  // An entry came in a list of one, which its frame put around it.
  const list = kind === "entry" ? entries.pop()?.value : undefined;
  const value = list?.kind === "list" ? list.entries[0] : undefined;
  return { kind, indent, item, home: item, entries, value, comments, problems: problems.result() };
}

function featureProblem(start: number, end: number, feature: ReadingFeature): ItemProblem {
  return { rule: "text-feature-not-used", start, end, facts: { feature } };
}

function isEmpty(node: Node): boolean {
  return node.kind === "scalar" && node.style === "empty";
}
