import type { Subject } from "../graph/value";
import type { MapNode, Node } from "../reading/tree";
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

/** The record is walked once, when the first node is asked for: most records have nothing to tell. */
export function locatorOf(root: MapNode, declarations: readonly Declaration[]): Locator {
  let steps: Map<Node, Step> | undefined;
  let owners: Map<Node, Declaration> | undefined;

  return (node) => {
    steps ??= stepsOf(root);
    owners ??= new Map(declarations.map((declaration) => [declaration.node, declaration]));
    const path: string[] = [];
    for (let at: Node | undefined = node; at; at = steps.get(at)?.parent) {
      const owner = owners.get(at);
      if (owner) return { ownerKind: owner.kind, ownerId: owner.id.value, path: path.reverse() };
      const name = steps.get(at)?.name;
      if (name !== undefined) path.push(name);
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

function stepsOf(root: Node): Map<Node, Step> {
  const steps = new Map<Node, Step>();
  const open: Node[] = [root];
  const add = (child: Node, step: Step) => {
    if (steps.has(child)) return; // an alias stands where it was first used
    steps.set(child, step);
    open.push(child);
  };
  for (let parent = open.pop(); parent; parent = open.pop()) {
    if (parent.kind === "map") {
      for (const { key, value } of parent.entries) {
        add(key, { parent });
        add(value, { parent, name: key.text });
      }
    } else if (parent.kind === "list") {
      for (const [index, entry] of parent.entries.entries()) add(entry, { parent, name: `#${index + 1}` });
    }
  }
  return steps;
}
