/** The shape of a record's text: what can be folded, and what a growing selection takes in. */
import { type Node, nodeAt, type Reading, type Span } from "../reading";

/** Maps and lists, each with its key where it has one, from the outside in. */
export function foldsOf(reading: Reading): Span[] {
  const folds: Span[] = [];
  const visit = (node: Node, from: number) => {
    if (node.kind === "scalar" || node.aliasOf) return;
    folds.push({ start: from, end: reading.spanOf(node).end });
    if (node.kind === "list") for (const entry of node.entries) visit(entry, reading.spanOf(entry).start);
    else for (const { key, value } of node.entries) visit(value, reading.spanOf(key).start);
  };
  for (const { key, value } of reading.root.entries) visit(value, reading.spanOf(key).start);
  return folds;
}

/** What is around an offset, from the inside out: value, key with value, entry, list, section. */
export function rangesAround(reading: Reading, offset: number): Span[] {
  const spans = nodeAt(reading, offset).flatMap(({ node, entry }) => {
    const own = reading.spanOf(node);
    if (!entry) return [own];
    const key = reading.spanOf(entry.key);
    const inner = offset <= key.end ? key : own;
    return [{ start: key.start, end: Math.max(key.end, own.end) }, inner];
  });
  const around: Span[] = [];
  for (const span of spans.toReversed()) {
    const last = around.at(-1);
    if (!last) around.push(span);
    else if (
      span.start <= last.start &&
      span.end >= last.end &&
      span.end - span.start > last.end - last.start
    )
      around.push(span);
  }
  return around;
}
