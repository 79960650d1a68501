/**
 * The tree of one record's text.
 *
 * Reading works per item: a stretch of text that can be read alone (a top-level key with its value, the
 * header line of a top-level list, or one entry of such a list). Nodes carry offsets relative to their item,
 * so an item that an edit did not touch keeps its nodes, and only the item's own offset moves. So does one in
 * which only remarks and spaces changed (`graft`). Whoever holds a node therefore holds something stable; only
 * `Reading.spanOf` knows where it stands today.
 *
 * Offsets are UTF-16 code units, half-open.
 */

/** One separately read stretch of text. Identity matters: an untouched item is the same object after an edit. */
export interface Item {
  readonly text: string;
}

export interface Span {
  readonly start: number;
  readonly end: number;
}

export type Node = MapNode | ListNode | ScalarNode;

/** Offsets are those of the version that it was read from: ask `Reading.spanOf`. */
interface NodeBase extends Span {
  readonly item: Item;
  /**
   * Set when an alias (`*name`) stands here: the node as written at the anchor. This node, and every node
   * inside it, has the alias as its span, so an edit of that span replaces the alias and not the original.
   */
  readonly aliasOf?: Node;
}

export interface MapNode extends NodeBase {
  readonly kind: "map";
  readonly entries: readonly Entry[];
}

export interface Entry {
  readonly key: ScalarNode;
  /** An empty scalar when nothing was written after the colon. */
  readonly value: Node;
}

export interface ListNode extends NodeBase {
  readonly kind: "list";
  readonly entries: readonly Node[];
}

export interface ScalarNode extends NodeBase {
  readonly kind: "scalar";
  /** The text that it stands for: quotes and escapes resolved, block scalars folded, plain text as written. */
  readonly text: string;
  /** `empty`: nothing was written (a half-typed line); its span is the place where the value belongs. */
  readonly style: "plain" | "quoted" | "block" | "empty";
}

/** What is wrong with the text itself; becomes a finding when it is judged. */
export interface ReadingProblem {
  readonly rule: ReadingRule;
  readonly node?: Node;
  /** Absolute when there is no node. */
  readonly span: Span;
  /** What a message needs: numbers and names, never sentences. */
  readonly facts: Readonly<Record<string, string | number>>;
}

/**
 * Facts by rule. The last problem kept of a rule that met its cap also has `omitted`, the number left out.
 * - `text-not-yaml`: `code` (a stable word in capitals), `detail` (a phrase), `missing` (the quote or bracket that
 *   should stand somewhere behind, where it is one)
 * - `text-merge-conflict`: `marker`
 * - `text-tab-indent`: `tabs`, their number; `column` at which the line was read, where that was found
 * - `text-encoding-wrong`: none
 * - `text-too-large`: `length`, `limit` in UTF-16 units
 * - `text-too-deep`: `limit` in levels
 * - `text-alias-limit`: `name`, `limit` in nodes
 * - `text-feature-not-used`: `feature`, one of `ReadingFeature`
 * - `key-duplicate`: `key`, `line` (of the first such key, from 1)
 */
export type ReadingRule =
  | "text-not-yaml"
  | "text-merge-conflict"
  | "text-tab-indent"
  | "text-encoding-wrong"
  | "text-too-large"
  | "text-too-deep"
  | "text-alias-limit"
  | "text-feature-not-used"
  | "key-duplicate";

/** Constructs of YAML that records do not use. */
export type ReadingFeature =
  | "tag"
  | "directive"
  | "several-documents"
  | "explicit-key"
  | "collection-key"
  | "empty-key"
  | "merge-key"
  | "top-level-list"
  | "top-level-value"
  | "self-reference";

/** The result of reading one text: always a value plus problems, never an exception. */
export interface Reading {
  readonly text: string;
  /** Always a map, empty when the text has none. */
  readonly root: MapNode;
  readonly items: readonly Item[];
  readonly problems: readonly ReadingProblem[];
  /** Comments with absolute offsets, the `#` included, in order. */
  readonly comments: readonly Span[];
  /** Where a node stands in `text` now. The node must belong to this reading. */
  spanOf(node: Node): Span;
}
