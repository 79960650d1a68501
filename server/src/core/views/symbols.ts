/** The outline of a record: its sections, and in them the things that have an id. */
import type { Entry, ListNode, MapNode, Node, Reading, Span } from "../reading/tree";

export interface OutlineSymbol {
  readonly name: string;
  readonly detail: string;
  readonly kind: "section" | "thing" | "value";
  readonly span: Span;
  /** The part that names it; lies within `span`. */
  readonly nameSpan: Span;
  readonly children: readonly OutlineSymbol[];
}

/** Symbols shown for one list; an outline is for finding one's way, not for reading everything. */
const mostChildren = 2000;

export function outlineOf(reading: Reading): OutlineSymbol[] {
  return reading.root.entries.map((entry) => sectionOf(entry, reading));
}

function sectionOf(entry: Entry, reading: Reading): OutlineSymbol {
  const key = reading.spanOf(entry.key);
  const value = reading.spanOf(entry.value);
  return {
    name: entry.key.text,
    detail: detailOf(entry.value),
    kind: "section",
    span: { start: key.start, end: Math.max(key.end, value.end) },
    nameSpan: key,
    children: childrenOf(entry.value, reading),
  };
}

function childrenOf(node: Node, reading: Reading): OutlineSymbol[] {
  switch (node.kind) {
    case "list":
      return entriesOf(node, reading);
    case "map":
      return node.entries
        .filter(({ value }) => value.kind !== "scalar")
        .slice(0, mostChildren)
        .map((entry) => sectionOf(entry, reading));
    case "scalar":
      return [];
  }
}

function entriesOf(list: ListNode, reading: Reading): OutlineSymbol[] {
  return list.entries.slice(0, mostChildren).flatMap((entry) => {
    if (entry.kind !== "map") return [];
    const name = nameEntryOf(entry);
    if (!name) return [];
    return [
      {
        name: name.text,
        detail: summaryOf(entry, name),
        kind: "thing",
        span: reading.spanOf(entry),
        nameSpan: reading.spanOf(name),
        children: [],
      },
    ];
  });
}

/** What an entry is called: its id, or the first scalar that it has. */
function nameEntryOf(map: MapNode) {
  const scalars = map.entries.flatMap(({ key, value }) =>
    value.kind === "scalar" && value.style !== "empty" ? [{ key: key.text, value }] : [],
  );
  return (scalars.find(({ key }) => key === "id") ?? scalars[0])?.value;
}

/** The next few values of an entry, which tell it from its neighbours. */
export function summaryOf(map: MapNode, name: Node): string {
  return map.entries
    .flatMap(({ value }) =>
      value.kind === "scalar" && value !== name && value.style !== "empty" ? [value.text] : [],
    )
    .slice(0, 3)
    .join(" · ");
}

function detailOf(node: Node): string {
  if (node.kind === "list") return node.entries.length === 0 ? "none" : String(node.entries.length);
  if (node.kind === "scalar") return node.text;
  return "";
}
