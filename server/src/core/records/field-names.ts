/**
 * Names of places in a record that stay the same when a block is moved or a line comes in above it:
 * `wires[P102A8].gauge`, `placement[RACK].arm`, `electrical.sources[ALT1].output[#2].current`. An entry of a list
 * is named by its id, else by what it refers to or by its first word; only what has neither is counted.
 */
import type { ListNode, MapNode, Node } from "../reading/tree";
import type { Schema } from "./schema";
import type { Typing } from "./typing";

/** Name of the place of each node, keys too; undefined for a node of another record. */
export type FieldNames = (node: Node) => string | undefined;

/** The record is walked once, when the first name is asked for. */
export function fieldNamesOf(root: MapNode, typing: Typing): FieldNames {
  let names: Map<Node, string> | undefined;
  return (node) => {
    names ??= namesOf(root, typing);
    return names.get(node);
  };
}

function namesOf(root: MapNode, typing: Typing): Map<Node, string> {
  const names = new Map<Node, string>([[root, ""]]);
  const open: Node[] = [root];
  const add = (node: Node, name: string, isOpen = true) => {
    if (names.has(node)) return; // an alias is named where it was first used
    names.set(node, name);
    if (isOpen) open.push(node);
  };
  for (let at = open.pop(); at; at = open.pop()) {
    const name = names.get(at)!;
    if (at.kind === "map") {
      for (const { key, value } of at.entries) {
        const field = fieldIn(name, key.text);
        add(key, field, false);
        add(value, field);
      }
    } else if (at.kind === "list") {
      const labels = entryLabels(at, typing);
      for (const [index, entry] of at.entries.entries()) {
        add(entry, `${name}[${labels[index] ?? `#${index + 1}`}]`);
      }
    }
  }
  return names;
}

/** Name of the place behind a key of what stands at `field`, be it there or missing. */
export function fieldIn(field: string, key: string): string {
  return field === "" ? key : `${field}.${key}`;
}

/**
 * What tells each entry of a list from the others, undefined where nothing does. A second entry of the same
 * name is `name~2`.
 */
export function entryLabels(list: ListNode, typing: Typing): (string | undefined)[] {
  const seen = new Map<string, number>();
  return list.entries.map((entry) => {
    const label = labelOf(entry, typing);
    if (label === undefined) return undefined;
    const count = (seen.get(label) ?? 0) + 1;
    seen.set(label, count);
    return count === 1 ? label : `${label}~${count}`;
  });
}

function labelOf(entry: Node, typing: Typing): string | undefined {
  if (entry.kind === "scalar") {
    return typing.schemaOf(entry)?.["x-reference"] && entry.text !== "" ? entry.text : undefined;
  }
  const properties = typing.schemaOf(entry)?.properties;
  if (entry.kind !== "map" || !properties) return undefined;
  const key = namingKey(typing.schemaOf(entry)!, properties);
  const value = entry.entries.find((one) => one.key.text === key)?.value;
  return value?.kind === "scalar" && value.text !== "" ? value.text : undefined;
}

/** The key that tells entries of this shape apart: the id, or the first word that every entry must have. */
function namingKey(schema: Schema, properties: Readonly<Record<string, Schema>>): string | undefined {
  const id = Object.keys(properties).find((key) => properties[key]!["x-id"]);
  return (
    id ?? schema.required?.find((key) => properties[key]?.type === "string" && !properties[key]["x-quantity"])
  );
}
