import type { Node, Reading } from "../../server/src/core/reading";

/** A reading without its items: all offsets absolute, problems in a fixed order. Equal for equal readings. */
export function absolute(reading: Reading) {
  return {
    root: absoluteNode(reading, reading.root),
    problems: reading.problems
      .map(({ node, ...problem }) => JSON.stringify({ ...problem, node: node && reading.spanOf(node) }))
      .sort(),
    comments: reading.comments,
  };
}

function absoluteNode(reading: Reading, node: Node): object {
  const place = { ...reading.spanOf(node), alias: node.aliasOf !== undefined };
  if (node.kind === "scalar") return { ...place, text: node.text, style: node.style };
  return { ...place, entries: children(node).map((child) => absoluteNode(reading, child)) };
}

/** What stands below a node, in the order of the text: of a map, keys and values in turn. */
export function children(node: Node): readonly Node[] {
  if (node.kind === "scalar") return [];
  return node.kind === "list" ? node.entries : node.entries.flatMap(({ key, value }) => [key, value]);
}

/** The node and all nodes below it, in the order of the text. */
export function* nodesIn(node: Node): Generator<Node> {
  yield node;
  for (const child of children(node)) yield* nodesIn(child);
}

/** The tree in one line, as in JSON but without quotes and with `~` for nothing: `{a: 1, b: [x, ~]}`. */
export function brief(node: Node): string {
  switch (node.kind) {
    case "scalar":
      return node.style === "empty" ? "~" : node.text;
    case "list":
      return `[${node.entries.map(brief).join(", ")}]`;
    case "map":
      return `{${node.entries.map(({ key, value }) => `${key.text}: ${brief(value)}`).join(", ")}}`;
  }
}

/** Problems as `rule at 'the text they point at'`, in the order of the text. */
export function marked({ text, problems }: Reading): string[] {
  return problems.map(({ rule, span }) => `${rule} at '${text.slice(span.start, span.end)}'`);
}
