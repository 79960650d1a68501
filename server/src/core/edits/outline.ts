/** Trees as plain data that can be compared: kinds, keys and texts, without places and styles. */
import type { Node } from "../reading/tree";
import { type Content, isList, pairsOf } from "./content";

/** A scalar is its text, nothing written is null; a map keeps its order and its double keys. */
export type Outline = string | null | ListOutline | MapOutline;

export interface ListOutline {
  readonly list: readonly Outline[];
}

export interface MapOutline {
  readonly map: readonly (readonly [string, Outline])[];
}

/** What is to be told of a node: given what stands there now, what shall; undefined when that can't be. */
export type Reshape = (node: Node, now: Outline) => Outline | undefined;

/** The outline of a tree, each node as `reshape` has it, those below it first. */
export function outlineOf(node: Node, reshape: Reshape = (_, now) => now): Outline | undefined {
  if (node.kind === "scalar") return reshape(node, node.style === "empty" ? null : node.text);
  if (node.kind === "list") {
    const list: Outline[] = [];
    for (const entry of node.entries) {
      const outline = outlineOf(entry, reshape);
      if (outline === undefined) return undefined;
      list.push(outline);
    }
    return reshape(node, { list });
  }
  const map: [string, Outline][] = [];
  for (const { key, value } of node.entries) {
    const name = outlineOf(key, reshape);
    const outline = outlineOf(value, reshape);
    if (typeof name !== "string" || outline === undefined) return undefined;
    map.push([name, outline]);
  }
  return reshape(node, { map });
}

export function outlineOfContent(content: Content): Outline {
  if (typeof content === "string") return content;
  if (isList(content)) return { list: content.map(outlineOfContent) };
  return { map: pairsOf(content).map(([key, value]) => [key, outlineOfContent(value)]) };
}

export function isSameOutline(a: Outline, b: Outline): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}
