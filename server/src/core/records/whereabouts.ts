import type { Subject } from "../graph/value";
import { onceEach } from "../once-each";
import { type Part, partAt } from "../reading/place";
import type { MapNode, Node, Reading } from "../reading/tree";
import type { IdKind } from "./schema";
import type { Declaration, Found, Typing } from "./typing";

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

/** Nothing is made ahead: of most records nothing has to be told. */
export function locatorOf(reading: Reading, typing: Typing): Locator {
  return (node) => {
    const part = partAt(reading, reading.spanOf(node).start);
    const path: string[] = [];
    for (let at: Node | undefined = node; at; ) {
      const owner = ownerAt(at, typing);
      if (owner) return { ownerKind: owner.kind, ownerId: owner.id.value, path: path.reverse() };
      const step: Step | undefined = part && stepTo(at, part, reading.root);
      if (step?.name !== undefined) path.push(step.name);
      at = step?.parent;
    }
    return { path: path.reverse() };
  };
}

/** What a map describes that has an id. */
function ownerAt(node: Node, { sections }: Typing): Declaration | undefined {
  for (const section of sections) {
    const owner = ownersIn(section).get(node);
    if (owner) return owner;
  }
  return undefined;
}

const ownersIn = onceEach(
  ({ declarations }: Found) => new Map<Node, Declaration>(declarations.map((one) => [one.node, one])),
);

/** How a node of a part is reached; undefined for the root. */
function stepTo(node: Node, { section, entry, index }: Part, root: MapNode): Step | undefined {
  if (node === root) return undefined;
  if (node === section.key) return { parent: root };
  if (node === section.value) return { parent: root, name: section.key.text };
  if (node === entry) return { parent: section.value, name: `#${index! + 1}` };
  return stepsInside(entry ?? section.value).get(node);
}

export function subjectOf({
  ownerKind,
  ownerId,
}: Pick<Whereabouts, "ownerKind" | "ownerId">): Subject | undefined {
  return ownerKind && ownerId !== undefined ? { kind: ownerKind, id: ownerId } : undefined;
}

/** How the nodes inside another one are reached: the same for as long as its text is. */
const stepsInside = onceEach((whole: Node): ReadonlyMap<Node, Step> => {
  const steps = new Map<Node, Step>();
  const open = [whole];
  for (let parent = open.pop(); parent; parent = open.pop()) {
    for (const [child, step] of childrenOf(parent)) {
      steps.set(child, step);
      open.push(child);
    }
  }
  return steps;
});

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
