import type { Entry, Node, Reading, Span } from "./tree";

/** One node on the way from the root to a place, and how it hangs in the node before it. */
export interface Step {
  readonly node: Node;
  /** In a map: the entry whose value `node` is. */
  readonly entry?: Entry;
  /** In a list: which entry `node` is, from 0. */
  readonly index?: number;
}

/**
 * The nodes at an offset, from the root to the deepest one. A place on a key, or between a key and its value,
 * counts as a place in that entry, so hovering a key leads to its value. Ends count as inside, because a
 * cursor after a word belongs to that word; where two nodes touch, the later one is taken.
 */
export function nodeAt(reading: Reading, offset: number): readonly Step[] {
  const steps: Step[] = [{ node: reading.root }];
  for (let next = below(reading, steps[0]!.node, offset); next; next = below(reading, next.node, offset)) {
    steps.push(next);
  }
  return steps;
}

function below(reading: Reading, node: Node, offset: number): Step | undefined {
  // What an alias stands for is written elsewhere; nothing below it has a place of its own here.
  if (node.kind === "scalar" || node.aliasOf) return undefined;
  if (node.kind === "list") {
    const index = lastStarting(node.entries, offset, (entry) => reading.spanOf(entry));
    const entry = node.entries[index];
    return entry && offset <= reading.spanOf(entry).end ? { node: entry, index } : undefined;
  }
  const entry = node.entries[lastStarting(node.entries, offset, ({ key }) => reading.spanOf(key))];
  if (!entry) return undefined;
  const end = Math.max(reading.spanOf(entry.key).end, reading.spanOf(entry.value).end);
  return offset <= end ? { node: entry.value, entry } : undefined;
}

/** A part of a record: a key of the top level with its value or, of a list there, one of the entries. */
export interface Part {
  readonly section: Entry;
  /** Set for an entry of the section's list. */
  readonly entry?: Node;
  /** Which entry of the list it is, from 0. */
  readonly index?: number;
}

/** The part that an offset is in, up to the next one; undefined before the first key. */
export function partAt(reading: Reading, offset: number): Part | undefined {
  const { entries } = reading.root;
  const section = entries[lastStarting(entries, offset, ({ key }) => reading.spanOf(key))];
  // What an alias stands for is written elsewhere, and is no part of its own here.
  if (section?.value.kind !== "list" || section.value.aliasOf) return section && { section };
  const list = section.value.entries;
  const index = lastStarting(list, offset, (entry) => reading.spanOf(entry));
  const entry = list[index];
  return entry ? { section, entry, index } : { section };
}

/** Index of the last element that starts at or before the offset, -1 if none. Elements stand in order. */
function lastStarting<T>(elements: readonly T[], offset: number, spanOf: (element: T) => Span): number {
  let low = -1;
  let high = elements.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (spanOf(elements[middle]!).start <= offset) low = middle;
    else high = middle - 1;
  }
  return low;
}
