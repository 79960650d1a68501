import type { Subject } from "../graph/value";
import { onceEach } from "../once-each";
import type { Item, MapNode, Node } from "../reading/tree";
import type { IdKind } from "./schema";
import type { Declaration } from "./typing";

/** Where a node stands, in the words of its record: what a message needs to name the place. */
export type Whereabouts = {
  /** The nearest thing around the node that has an id; left out where nothing has. */
  readonly ownerKind?: IdKind;
  readonly ownerId?: string;
  /** From that thing, or else from the top of the record: keys, and entries of lists as "#1", "#2" ... */
  readonly path: readonly string[];
};

/** Tells where a node of one record stands. A key stands where the map does that it is written in. */
export type Locator = (node: Node) => Whereabouts;

interface Step {
  readonly parent: Node;
  /** Left out for a key. */
  readonly name?: string;
}

/** The record is walked when the first node is asked for: most records have nothing to tell. */
export function locatorOf(root: MapNode, declarations: readonly Declaration[]): Locator {
  let walk: Walk | undefined;
  let owners: Map<Node, Declaration> | undefined;

  return (node) => {
    walk ??= new Walk(root);
    owners ??= new Map(declarations.map((declaration) => [declaration.node, declaration]));
    const path: string[] = [];
    for (let at: Node | undefined = node; at; ) {
      const owner = owners.get(at);
      if (owner) return { ownerKind: owner.kind, ownerId: owner.id.value, path: path.reverse() };
      const step: Step | undefined = walk.stepTo(at);
      if (step?.name !== undefined) path.push(step.name);
      at = step?.parent;
    }
    return { path: path.reverse() };
  };
}

export function subjectOf({
  ownerKind,
  ownerId,
}: Pick<Whereabouts, "ownerKind" | "ownerId">): Subject | undefined {
  return ownerKind && ownerId !== undefined ? { kind: ownerKind, id: ownerId } : undefined;
}

/**
 * How a record's nodes are reached. Sections and the entries of their lists are walked anew, as they move; what
 * is inside them is the same for as long as their text is.
 */
class Walk {
  private readonly outer = new Map<Node, Step>();
  /** Nodes of the outer walk in whose inside an item's other nodes are. */
  private readonly branches = new Map<Item, Node[]>();
  private readonly inner = new Map<Item, ReadonlyMap<Node, Step>>();

  constructor(root: MapNode) {
    this.enter(root);
    for (const { value } of root.entries) {
      if (value.kind === "list") this.enter(value);
      for (const branch of value.kind === "list" ? value.entries : [value]) {
        const ofItem = this.branches.get(branch.item);
        if (ofItem) ofItem.push(branch);
        else this.branches.set(branch.item, [branch]);
      }
    }
  }

  stepTo(node: Node): Step | undefined {
    return this.outer.get(node) ?? this.insideOf(node.item).get(node);
  }

  private enter(parent: Node): void {
    for (const [child, step] of childrenOf(parent)) {
      if (!this.outer.has(child)) this.outer.set(child, step); // an alias stands where it was first used
    }
  }

  private insideOf(item: Item): ReadonlyMap<Node, Step> {
    const known = this.inner.get(item);
    if (known) return known;
    const branches = this.branches.get(item) ?? [];
    const inside = branches.length === 1 ? stepsInside(branches[0]!) : walkInside(branches);
    this.inner.set(item, inside);
    return inside;
  }
}

const stepsInside = onceEach((branch: Node) => walkInside([branch]));

function walkInside(branches: readonly Node[]): ReadonlyMap<Node, Step> {
  const steps = new Map<Node, Step>();
  const open = branches.toReversed();
  for (let parent = open.pop(); parent; parent = open.pop()) {
    for (const [child, step] of childrenOf(parent)) {
      if (steps.has(child)) continue; // as above
      steps.set(child, step);
      open.push(child);
    }
  }
  return steps;
}

function* childrenOf(parent: Node): Iterable<readonly [Node, Step]> {
  if (parent.kind === "map") {
    for (const { key, value } of parent.entries) {
      yield [key, { parent }];
      yield [value, { parent, name: key.text }];
    }
  } else if (parent.kind === "list") {
    for (const [index, entry] of parent.entries.entries()) yield [entry, { parent, name: `#${index + 1}` }];
  }
}
