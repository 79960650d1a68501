import {
  isAlias,
  isMap,
  isSeq,
  type Pair,
  type Scalar,
  type YAMLMap,
  type YAMLSeq,
  type Node as YamlNode,
} from "yaml";
import { limits } from "../limits";
import type { ItemProblem } from "./problems";
import { isClosedQuote } from "./scan";
import type { Entry, Item, ListNode, MapNode, Node, ReadingFeature, ScalarNode, Span } from "./tree";

/** Where the nodes of one document belong. */
export interface BuildContext {
  readonly item: Item;
  /** The source that was parsed. */
  readonly source: string;
  /** Added to an offset in `source` to get one in the item. */
  readonly shift: number;
  report(problem: ItemProblem): void;
}

/** What an alias can stand for: a node, how many nodes it has, and how many maps and lists deep it is. */
interface Target {
  readonly node: Node;
  readonly size: number;
  readonly height: number;
}

type YamlPair = Pair<YamlNode, YamlNode | null>;

/** Turns the contents of one document into our own nodes. */
export class TreeBuilder {
  readonly #context: BuildContext;
  /** What each anchor stands for; `open` while its own node is still being built. */
  readonly #anchors = new Map<string, Target | "open">();
  /** Maps and lists that are open. The root map is the first. */
  #depth = 1;
  #nodes = 0;
  #aliasNodes = 0;

  constructor(context: BuildContext) {
    this.#context = context;
  }

  /** The entries of a document's root map, without the check for duplicates, which spans items. */
  entries(map: YAMLMap): Entry[] {
    const entries: Entry[] = [];
    for (const pair of map.items) this.#addEntries(pair as YamlPair, entries);
    return entries;
  }

  node(node: YamlNode): Node {
    const { anchor } = node as { anchor?: string };
    if (anchor === undefined) return this.#bare(node);
    this.#anchors.set(anchor, "open");
    const before = this.#nodes;
    const built = this.#bare(node);
    this.#anchors.set(anchor, { node: built, size: this.#nodes - before, height: heightOf(built) });
    return built;
  }

  #bare(node: YamlNode): Node {
    if (isAlias(node)) return this.#alias(node.source, this.#span(node));
    this.#nodes++;
    if (isMap(node)) return this.#map(node);
    if (isSeq(node)) return this.#list(node);
    return this.#scalar(node as Scalar);
  }

  #map(map: YAMLMap): MapNode {
    this.#depth++;
    const entries = this.entries(map);
    this.#depth--;
    reportDuplicates(entries, this.#context.report);
    const last = entries.at(-1);
    const span = this.#collectionSpan(map, last && Math.max(last.key.end, last.value.end));
    return { kind: "map", item: this.#context.item, ...span, entries };
  }

  #list(list: YAMLSeq): ListNode {
    this.#depth++;
    const entries = list.items.map((entry) => this.node(entry as YamlNode));
    this.#depth--;
    return {
      kind: "list",
      item: this.#context.item,
      ...this.#collectionSpan(list, entries.at(-1)?.end),
      entries,
    };
  }

  #addEntries(pair: YamlPair, entries: Entry[]): void {
    const key = this.node(pair.key);
    const value = pair.value ? this.node(pair.value) : this.#empty(key.end);
    if (key.kind !== "scalar") {
      // A block list without a key is an error already.
      if (!isSeq(pair.key) || pair.key.flow) this.#feature(key, "collection-key");
    } else if (key.style === "empty") {
      this.#reportEmptyKey(key);
    } else if (key.style === "plain" && key.text === "<<") {
      this.#feature(key, "merge-key");
    } else {
      entries.push({ key, value });
    }
  }

  #reportEmptyKey({ start }: ScalarNode): void {
    const { source, shift } = this.#context;
    let next = start - shift;
    while (isWhite(source[next])) next++;
    // A dash where no list can begin counts as a key for the library, and is an error already.
    if (source[next] === "-") return;
    let at = source[next] === ":" ? next : start - shift;
    while (at !== next && isWhite(source[at - 1])) at--;
    this.#feature({ start: at + shift, end: at + shift }, "empty-key");
  }

  #scalar(scalar: Scalar): ScalarNode {
    const text = scalar.source ?? "";
    const { start, end } = this.#span(scalar);
    const { item } = this.#context;
    switch (scalar.type) {
      case "QUOTE_DOUBLE":
      case "QUOTE_SINGLE":
        return { kind: "scalar", item, start, end, text: this.#quoted(scalar, text), style: "quoted" };
      case "BLOCK_FOLDED":
      case "BLOCK_LITERAL":
        return { kind: "scalar", item, start, end: this.#trim(start, end), text, style: "block" };
      default:
        if (text === "") return this.#empty(this.#placeOfEmpty(start));
        return { kind: "scalar", item, start, end, text, style: "plain" };
    }
  }

  /** The library takes the last character for the closing quote, even if it is none. */
  #quoted({ range }: Scalar, text: string): string {
    const written = this.#context.source.slice(range?.[0], range?.[1]);
    return isClosedQuote(written) ? text : written.slice(1).replace(/\n[ \t\r\n]*/g, " ");
  }

  #empty(at: number): ScalarNode {
    return { kind: "scalar", item: this.#context.item, start: at, end: at, text: "", style: "empty" };
  }

  /** The composer puts an empty value after all spaces; ours stands after the first one. */
  #placeOfEmpty(at: number): number {
    const { source, shift } = this.#context;
    let place = at - shift;
    while (source[place - 1] === " " || source[place - 1] === "\t") place--;
    return (source[place] === " " ? place + 1 : place) + shift;
  }

  #alias(name: string, span: Span): Node {
    const target = this.#anchors.get(name);
    if (target === undefined) {
      const facts = { code: "UNKNOWN_ALIAS", detail: `no anchor &${name} before this alias` };
      this.#context.report({ rule: "text-not-yaml", ...span, facts });
      return this.#unresolved(span);
    }
    if (target === "open") {
      this.#feature(span, "self-reference");
      return this.#unresolved(span);
    }
    if (this.#aliasNodes + target.size > limits.aliasNodes) {
      const facts = { name, limit: limits.aliasNodes };
      this.#context.report({ rule: "text-alias-limit", ...span, facts });
      return this.#unresolved(span);
    }
    if (this.#depth + target.height > limits.nestingDepth) {
      this.#context.report({ rule: "text-too-deep", ...span, facts: { limit: limits.nestingDepth } });
      return this.#unresolved(span);
    }
    this.#aliasNodes += target.size;
    this.#nodes += target.size;
    return copyTo(span, target.node);
  }

  #unresolved(span: Span): ScalarNode {
    this.#nodes++;
    return { kind: "scalar", item: this.#context.item, ...span, text: "", style: "empty" };
  }

  #span(node: YamlNode): Span {
    const [start, end] = node.range ?? [0, 0];
    return { start: start + this.#context.shift, end: end + this.#context.shift };
  }

  /** From the first key, dash or bracket to the end of the last value or the closing bracket. */
  #collectionSpan(node: YAMLMap | YAMLSeq, contentEnd: number | undefined): Span {
    const { start, end } = this.#span(node);
    const token = node.srcToken;
    if (
      token?.type === "flow-collection" &&
      token.end[0]?.source === (token.start.source === "[" ? "]" : "}")
    ) {
      return { start, end };
    }
    return { start, end: Math.max(start, contentEnd ?? start) };
  }

  #trim(start: number, end: number): number {
    const { source, shift } = this.#context;
    let last = end;
    while (last > start && isWhite(source[last - shift - 1])) last--;
    return last;
  }

  #feature({ start, end }: Span, feature: ReadingFeature): void {
    this.#context.report({ rule: "text-feature-not-used", start, end, facts: { feature } });
  }
}

/** Reports each key that an earlier entry has already. */
export function reportDuplicates(entries: readonly Entry[], report: (problem: ItemProblem) => void): void {
  if (entries.length < 2) return;
  const seen = new Map<string, ScalarNode>();
  for (const { key } of entries) {
    const first = seen.get(key.text);
    if (!first) {
      seen.set(key.text, key);
      continue;
    }
    const { start, end } = key;
    report({ rule: "key-duplicate", start, end, node: key, first, facts: { key: key.text } });
  }
}

function isWhite(character: string | undefined): boolean {
  return character === " " || character === "\t" || character === "\n" || character === "\r";
}

function heightOf(node: Node): number {
  if (node.kind === "scalar") return 0;
  let height = 0;
  for (const entry of node.entries) height = Math.max(height, heightOf("key" in entry ? entry.value : entry));
  return height + 1;
}

function copyTo(span: Span, node: Node): Node {
  const place = { start: span.start, end: span.end, aliasOf: node.aliasOf ?? node };
  switch (node.kind) {
    case "scalar":
      return { ...node, ...place };
    case "list":
      return { ...node, ...place, entries: node.entries.map((entry) => copyTo(span, entry)) };
    case "map":
      return {
        ...node,
        ...place,
        entries: node.entries.map(({ key, value }) => ({
          key: copyTo(span, key) as ScalarNode,
          value: copyTo(span, value),
        })),
      };
  }
}
