/** What keeps the drop of a wire's path from being known, while the path is being written. */
import { electricalOf } from "../../graph/derivations";
import type { Project } from "../../project";
import type { Node } from "../../reading";
import type { Wire } from "../../records/types";

/**
 * In words what is missing of the other wires on the ways that the wire of a gauge is part of; undefined where
 * the drop of such a way is known, or nothing of its wires is missing.
 *
 * @param gauge the node of a wire's gauge
 */
export function unknownDrop(gauge: Node, project: Project): string | undefined {
  const { loads, wires } = electricalOf(project);
  const wire = project.install.wires?.find((one) => one.gauge?.place.node === gauge);
  if (!wire) return undefined;
  const ways = loads.filter(({ path }) => path.feed.includes(wire) || path.returns.includes(wire));
  if (ways.some(({ states }) => states.some(({ drop }) => drop))) return undefined;
  const others = new Set(ways.flatMap(({ path }) => [...path.feed, ...path.returns]));
  const unknown = wires.filter(
    ({ wire: other, states }) => others.has(other) && states.some(({ drop }) => !drop),
  );
  const lacking = unknown.flatMap(({ id, wire: other }) => {
    const keys = missingKeys(other);
    return keys.length > 0 ? [`${id} (${keys.join(", ")})`] : [];
  });
  return lacking.length > 0 ? `path drop not known, as still blank: ${lacking.join(", ")}` : undefined;
}

/** What a wire's resistance can't do without. */
function missingKeys({ gauge, length, rating }: Wire): string[] {
  return Object.entries({ gauge, length, rating }).flatMap(([key, value]) => (value ? [] : [key]));
}
