/** What can be asked of a record's text. All nodes belong to one reading; where a node stands, nothing is an offset yet. */
import type { Stretch } from "../findings/finding";
import type { Place } from "../records/written";
import type { Content } from "./content";

export type Change = Rewriting | KeyAddition | EntryAddition | Removal | Respacing;

/** Puts another text where a value or a key stands. */
export interface Rewriting {
  readonly place: Place;
  readonly text: string;
}

/** Adds a key at the end of a map; a key that stands there without a value is given it. */
export interface KeyAddition {
  /** The map; that of the whole record for a section. */
  readonly place: Place;
  readonly key: string;
  readonly value: Content;
}

/** Adds entries at the end of the list under a key of a map; list and key are made where they are missing. */
export interface EntryAddition {
  /** The map that has the key, or should have it; that of the whole record for a section. */
  readonly place: Place;
  readonly list: string;
  readonly entries: readonly Content[];
}

/** Takes out an entry of a list, or a key with its value. */
export interface Removal {
  /** The list or the map. */
  readonly place: Place;
  /** The entry, or the value behind the key. */
  readonly removed: Place;
}

/**
 * Puts spaces in place of all white space before a line, of which `place` is the last; what the text says stays the
 * same.
 */
export interface Respacing {
  readonly place: Stretch;
  readonly spaces: number;
}
