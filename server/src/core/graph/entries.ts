import type { Entry } from "../reading/tree";
import type { Place } from "../records/written";
import { askOf } from "./recall";

/** A typed map of a record. */
interface Owner {
  readonly place: Place;
}

/** The entry of a map as it stands in the text, whether or not its value could be typed. */
export function entryOf(owner: Owner, key: string): Entry | undefined {
  return askOf(owner, findEntry, key);
}

function findEntry({ place: { node } }: Owner, key: string): Entry | undefined {
  return node.kind === "map" ? node.entries.find((entry) => entry.key.text === key) : undefined;
}

/**
 * Whether every entry of a list could be typed. A list that is not there, or that has no value yet, is whole:
 * it is empty. An entry that was left out is a finding of its own, but a sum over the rest would look like the
 * sum over all.
 */
export function isWholeList(owner: Owner, key: string, typed: readonly unknown[] | undefined): boolean {
  const value = entryOf(owner, key)?.value;
  if (value === undefined) return true;
  if (value.kind === "list") return value.entries.length === (typed?.length ?? 0);
  return value.kind === "scalar" && value.style === "empty";
}

/** Whether what stands behind a key could be typed. A key that is not there, or has no value yet, is whole. */
export function isWholeEntry(owner: Owner, key: string, typed: unknown): boolean {
  const value = entryOf(owner, key)?.value;
  return typed !== undefined || value === undefined || (value.kind === "scalar" && value.style === "empty");
}
