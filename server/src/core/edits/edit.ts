/**
 * Changes of a record's text: the least that has to be written, everything else left as it is. What comes out
 * is read again, and counts only when it says what was there before with exactly the changes in it.
 */
import { read } from "../reading";
import type { Node, Reading } from "../reading/tree";
import type { Change, EntryAddition, KeyAddition, Respacing } from "./change";
import type { Content } from "./content";
import { keyEdits, listEdits } from "./insert";
import {
  isSameOutline,
  type ListOutline,
  type MapOutline,
  type Outline,
  outlineOf,
  outlineOfContent,
} from "./outline";
import { removalEdits } from "./remove";
import { applyEdits, type TextEdit } from "./text-edit";

/**
 * The edits that make all of the changes, in the order of the text, none touching another, and none for what
 * is written so already. Undefined where
 * the text can't be changed so: two changes meet, the key is there already, an alias or a broken part is in
 * the way.
 *
 * @param reading the text as it is; the changes' nodes are its own
 */
export function editsFor(changes: readonly Change[], reading: Reading): readonly TextEdit[] | undefined {
  const edits: TextEdit[] = [];
  for (const change of changes) {
    const found = editsOf(change, reading);
    if (!found) return undefined;
    edits.push(...found);
  }
  edits.sort((a, b) => a.start - b.start || depthOf(b) - depthOf(a));
  if (edits.some(({ start }, index) => index > 0 && start < edits[index - 1]!.end)) return undefined;
  const wanted = outlineAfter(changes, reading);
  const after = read(applyEdits(reading.text, edits), reading);
  const found = outlineOf(after.root);
  const isAsWanted = wanted !== undefined && found !== undefined && isSameOutline(found, wanted);
  return isAsWanted && after.problems.length <= reading.problems.length ? edits : undefined;
}

function editsOf(change: Change, reading: Reading): readonly TextEdit[] | undefined {
  if ("spaces" in change) return [respaced(change, reading.text)];
  const { node } = change.place;
  if ("text" in change) {
    const { start, end } = reading.spanOf(node);
    return reading.text.slice(start, end) === change.text ? [] : [{ start, end, newText: change.text }];
  }
  if (node.kind === "scalar" || node.aliasOf) return undefined;
  if ("removed" in change) return removalEdits(reading, node, change.removed.node);
  if (node.kind !== "map") return undefined;
  if ("key" in change) return keyEdits(reading, node, change.key, change.value);
  return listEdits(reading, node, change.list, change.entries);
}

function respaced({ place, spaces }: Respacing, text: string): TextEdit {
  let { start } = place.span;
  while (text[start - 1] === " ") start--;
  return { start, end: place.span.end, newText: " ".repeat(spaces) };
}

/** Where edits meet, what belongs deeper inside comes first: behind a value, then a list's, then the record's. */
function depthOf({ newText }: TextEdit): number {
  const lines = /^(?:\r?\n)+( *)/.exec(newText);
  return lines ? lines[1]!.length : Number.POSITIVE_INFINITY;
}

/** What a text should say after the changes; undefined where they contradict what is there. */
function outlineAfter(changes: readonly Change[], { root }: Reading): Outline | undefined {
  const byNode = new Map<Node, Exclude<Change, Respacing>[]>();
  const removed = new Set<Node>();
  for (const change of changes) {
    if ("spaces" in change) continue;
    byNode.set(change.place.node, [...(byNode.get(change.place.node) ?? []), change]);
    if ("removed" in change) removed.add(change.removed.node);
  }
  return outlineOf(root, (node, now) => {
    let outline: Outline | undefined = now;
    if (removed.size > 0) outline = withoutNodes(node, now, removed);
    for (const change of byNode.get(node.aliasOf ?? node) ?? byNode.get(node) ?? []) {
      if ("text" in change) outline = outlineOfText(change.text);
      else if (!("removed" in change)) outline = withAddition(outline, change);
      if (outline === undefined) return undefined;
    }
    return outline;
  });
}

function withoutNodes(node: Node, now: Outline, removed: ReadonlySet<Node>): Outline {
  if (node.kind === "scalar") return now;
  const stays = (_: unknown, index: number) => {
    const element = node.entries[index]!;
    const value = "key" in element ? element.value : element;
    return !removed.has(value.aliasOf ?? value) && !removed.has(value);
  };
  if (isList(now)) return { list: now.list.filter(stays) };
  return isMap(now) ? { map: now.map.filter(stays) } : now;
}

function withAddition(now: Outline, change: KeyAddition | EntryAddition): Outline | undefined {
  if (!isMap(now)) return undefined;
  const key = "key" in change ? change.key : change.list;
  const index = now.map.findIndex(([name]) => name === key);
  const before = now.map[index]?.[1] ?? null;
  const value = "key" in change ? outlineOfContent(change.value) : withEntries(before, change.entries);
  if (value === undefined || ("key" in change && before !== null)) return undefined;
  return { map: index === -1 ? [...now.map, [key, value]] : now.map.with(index, [key, value]) };
}

function withEntries(before: Outline, entries: readonly Content[]): Outline | undefined {
  const added = entries.map(outlineOfContent);
  if (before === null) return { list: added };
  return isList(before) ? { list: [...before.list, ...added] } : undefined;
}

/** What a text says where it stands as a value. */
function outlineOfText(text: string): Outline | undefined {
  const value = read(`value: ${text}\n`).root.entries[0]?.value;
  return value && outlineOf(value);
}

function isMap(outline: Outline): outline is MapOutline {
  return typeof outline === "object" && outline !== null && "map" in outline;
}

function isList(outline: Outline): outline is ListOutline {
  return typeof outline === "object" && outline !== null && "list" in outline;
}
