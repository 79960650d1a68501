import { partAt } from "../reading/place";
import type { Node, Reading, ReadingRule } from "../reading/tree";

/** What leaves the structure of the text around it a guess. */
const breaking: ReadonlySet<ReadingRule> = new Set(["text-not-yaml", "text-tab-indent", "text-too-deep"]);

/**
 * Tells the nodes that stand where the text could not be read as it was meant: a key that is missing there may
 * only be lost. A record breaks in parts, which are the top-level keys with their values and the entries of
 * top-level lists. As a whole it counts as broken where nothing of it was read.
 */
export function brokenParts(reading: Reading): (node: Node) => boolean {
  const { root, problems } = reading;
  if (root.entries.length === 0) return () => problems.length > 0;
  const faults = problems.filter(({ rule }) => breaking.has(rule));
  if (faults.length === 0) return () => false;

  const startOf = (node: Node) => reading.spanOf(node).start;
  /** The node that a part begins with. */
  const partOf = (offset: number) => {
    const part = partAt(reading, offset);
    return part && (part.entry ?? part.section.key);
  };
  const broken = new Set(faults.map(({ node, span }) => partOf(node ? startOf(node) : span.start)));
  return (node) => node !== root && broken.has(partOf(startOf(node)));
}
