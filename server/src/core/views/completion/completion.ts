import type { Span } from "../../reading";

/** One thing that could be written at the cursor. */
export interface Completion {
  readonly label: string;
  readonly kind: "key" | "entry" | "word" | "unit" | "size" | "name" | "file";
  /** A few words beside the label. */
  readonly detail?: string;
  /** Markdown. */
  readonly documentation?: string;
  /** What is put in place of `span`. */
  readonly insert: string;
  /** The same with places to fill in, in the form of the protocol's snippets. */
  readonly snippet?: string;
  readonly span: Span;
  /** What the editor holds against what was typed; the label where it is left out. */
  readonly filter?: string;
  /** Completions are shown by rank, the least first, then in their order. */
  readonly rank: number;
  /** There is a list of its own for what comes next. */
  readonly goesOn?: boolean;
  /** The record may be checked with this in place, and the outcome shown. */
  readonly isTriable?: boolean;
}
