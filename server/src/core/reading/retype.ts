import { commonPrefix, commonSuffix } from "./common-ends";
import { none } from "./problems";
import type { Entry, Item, Node, ScalarNode, Span } from "./tree";
import { spanIn, type Unit } from "./unit";

/**
 * Most keystrokes change a number, or letters of a remark, and leave all else as it is. Such a piece is not parsed
 * again: what was read of the version before tells the rest. Only words of which YAML can make nothing else are
 * taken for this; `tests/reading/equality.test.ts` holds the answers against those of the parser.
 *
 * @param before what was read of the same piece, of the same kind, before the change
 * @returns undefined where the piece has to be parsed
 */
export function retype(text: string, before: Unit): Unit | undefined {
  if (before.problems !== none) return undefined;
  const old = before.item.text;
  const start = commonPrefix(old, text);
  const end = old.length - commonSuffix(old, text, start);
  const by = text.length - old.length;
  const comment = before.comments.find((one) => one.start < start && end <= one.end);
  if (comment)
    return isRemark(text.slice(start, end + by)) ? withComment(text, before, comment, by) : undefined;
  const scalar = valueAround(before, start, end);
  if (!scalar) return undefined;
  const place = spanIn(before, scalar);
  const word = text.slice(place.start, place.end + by);
  const isWord =
    isPlainWord(word) && isPlainWord(scalar.text) && scalar.text === old.slice(place.start, place.end);
  return isWord ? withWord(text, before, scalar, word) : undefined;
}

/** Printable, and on one line. */
function isRemark(text: string): boolean {
  return /^[ -~]*$/.test(text);
}

/**
 * Text that is one plain scalar wherever a value may stand: it begins and ends as a word or a number does, and has
 * no mark that ends a scalar or begins another thing. A single letter is left to the parser (see `split`).
 */
function isPlainWord(text: string): boolean {
  return /^(?:-?\d|[A-Za-z])[A-Za-z0-9 ._/-]*[A-Za-z0-9]$/.test(text);
}

/** The plain value in which a stretch of a unit's text lies. */
function valueAround(unit: Unit, start: number, end: number): ScalarNode | undefined {
  const open: Node[] = unit.value ? [unit.value] : unit.entries.map(({ value }) => value);
  for (let node = open.pop(); node; node = open.pop()) {
    const span = spanIn(unit, node);
    if (span.start > start || end > span.end) continue;
    if (node.kind === "scalar") {
      if (node.style === "plain") return node;
    } else if (node.kind === "list") {
      for (const entry of node.entries) open.push(entry);
    } else {
      for (const { value } of node.entries) open.push(value);
    }
  }
  return undefined;
}

/** The unit with another remark: its nodes are what they were, each where it stands now. */
function withComment(text: string, before: Unit, comment: Span, by: number): Unit {
  const spans = new Map<Node, Span>();
  const move = mover(comment.end, by);
  const note = (node: Node): void => {
    spans.set(node, move(spanIn(before, node)));
    if (node.kind === "list") node.entries.forEach(note);
    if (node.kind !== "map") return;
    for (const { key, value } of node.entries) {
      note(key);
      note(value);
    }
  };
  for (const { key, value } of before.entries) {
    note(key);
    note(value);
  }
  if (before.value) note(before.value);
  return { ...before, item: { text }, spans, comments: before.comments.map(move) };
}

/** The unit with another word for one of its scalars: as all nodes of a text that was changed, these are new. */
function withWord(text: string, before: Unit, scalar: ScalarNode, word: string): Unit {
  const item: Item = { text };
  const move = mover(spanIn(before, scalar).end, word.length - scalar.text.length);
  const copyOf = (node: Node): Node => {
    const { start, end } = move(spanIn(before, node));
    switch (node.kind) {
      case "scalar": {
        const { style } = node;
        return { kind: "scalar", item, start, end, text: node === scalar ? word : node.text, style };
      }
      case "list":
        return { kind: "list", item, start, end, entries: node.entries.map(copyOf) };
      case "map":
        return { kind: "map", item, start, end, entries: node.entries.map(entryOf) };
    }
  };
  const entryOf = ({ key, value }: Entry): Entry => ({
    key: copyOf(key) as ScalarNode,
    value: copyOf(value),
  });
  const { kind, indent, entries, value, comments, problems } = before;
  return {
    kind,
    indent,
    item,
    home: item,
    entries: entries.map(entryOf),
    value: value && copyOf(value),
    comments: comments.map(move),
    problems,
  };
}

/** Moves what stands behind a place, and ends there or behind it. */
function mover(place: number, by: number): (span: Span) => Span {
  const moved = (offset: number) => (offset >= place ? offset + by : offset);
  return ({ start, end }) => ({ start: moved(start), end: moved(end) });
}
