import { none } from "./problems";
import type { Node, Span } from "./tree";
import type { Unit } from "./unit";

/**
 * A piece in which only what stands between the nodes is new, such as a remark or a space, keeps the nodes of
 * the version before, each where it stands now: whatever rests on them need not be made again.
 *
 * @returns undefined where the nodes say something else than before
 */
export function graft(unit: Unit, before: Unit): Unit | undefined {
  if (unit.kind !== before.kind || unit.problems !== none) return undefined;
  const spans = new Map<Node, Span>();
  const areSame =
    unit.entries.length === before.entries.length &&
    unit.entries.every((entry, index) => areAlike(entry, before.entries[index]!, spans)) &&
    (unit.value && before.value ? isAlike(unit.value, before.value, spans) : unit.value === before.value);
  if (!areSame) return undefined;
  return { ...unit, entries: before.entries, value: before.value, home: before.home, spans };
}

interface Pair {
  readonly key: Node;
  readonly value: Node;
}

function areAlike(pair: Pair, before: Pair, spans: Map<Node, Span>): boolean {
  return isAlike(pair.key, before.key, spans) && isAlike(pair.value, before.value, spans);
}

/** Notes in `spans` where the nodes of the version before stand now, as far as it looks. */
function isAlike(node: Node, before: Node, spans: Map<Node, Span>): boolean {
  if (node.aliasOf || before.aliasOf) return false;
  spans.set(before, node);
  switch (node.kind) {
    case "scalar":
      return before.kind === "scalar" && node.style === before.style && node.text === before.text;
    case "list":
      return (
        before.kind === "list" &&
        node.entries.length === before.entries.length &&
        node.entries.every((entry, index) => isAlike(entry, before.entries[index]!, spans))
      );
    case "map":
      return (
        before.kind === "map" &&
        node.entries.length === before.entries.length &&
        node.entries.every((entry, index) => areAlike(entry, before.entries[index]!, spans))
      );
  }
}
