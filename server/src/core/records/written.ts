import type { Node } from "../reading/tree";

/** Where something was written: a node of one record's tree. Offsets are asked of that record's reading. */
export interface Place {
  /** Identity of the record: a workspace path or URI, opaque to the core. */
  readonly file: string;
  readonly node: Node;
}

/** A value with the place it was written at. */
export interface Written<T> {
  readonly value: T;
  readonly place: Place;
}

/** One entry of a map whose keys are ids. */
export interface Pair {
  readonly key: Written<string>;
  /** Undefined while it is still a blank. */
  readonly value: Written<string> | undefined;
}

/** Another record: named by a path, or written inline. */
export type Link<R> = { readonly path: Written<string> } | { readonly inline: R };
