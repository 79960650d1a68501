import type { Anchor, Problem, Related } from "../findings/finding";
import type { QuantityProblem } from "../quantities";
import type { ScalarNode } from "../reading/tree";
import type { IdKind, RecordKind } from "./schema";
import { subjectOf, type Whereabouts } from "./whereabouts";

/** A key with nothing behind it; `isRequired`: it can't be left out either. */
type Blank = Whereabouts & { meaning?: string; example?: string; isRequired: boolean };

/** What every rule about the shape of a record is told: whoever raises it and whoever words it agree on this. */
export interface RecordFacts {
  "key-missing": Whereabouts & {
    key: string;
    meaning?: string;
    example?: string;
    /** Keys that the missing value must have itself. */
    parts: readonly string[];
    /** The shape that asks for it, where not every one does. */
    shape?: string;
  };
  "key-unknown": Whereabouts & {
    key: string;
    /** Keys that may stand there and don't yet. */
    free: readonly string[];
    /** It is a key of something further out: the indentation slipped. */
    belongsFurtherOut: boolean;
  };
  "key-out-of-place": Whereabouts & { key: string; shape: string };
  /** `found` are those of the `keys` that are there: none, or more than one. */
  "key-choice": Whereabouts & { keys: readonly string[]; found: readonly string[] };
  "value-missing": Blank;
  /** The same in a record that is still in work. */
  "value-still-blank": Blank;
  "value-wrong-kind": Whereabouts & {
    expected: readonly JsonType[];
    found: "map" | "list" | ScalarNode["style"];
    /** What stands there, if it is a scalar. */
    text?: string;
    example?: string;
  };
  "value-not-in-list": Whereabouts & { found: string; allowed: readonly string[] };
  "value-out-of-range": Whereabouts & { found: string; least?: number; greatest?: number };
  "list-too-short": Whereabouts & { found: number; least: number };
  "id-malformed": Whereabouts & { found: string; example?: string };
  "id-duplicate": { ownerKind: IdKind; ownerId: string };
  "reference-unknown": Whereabouts & {
    id: string;
    kinds: readonly IdKind[];
    known: readonly string[];
    /** Other kinds of things that have this name. */
    others: readonly IdKind[];
  };
  "reference-ambiguous": Whereabouts & { id: string; kinds: readonly IdKind[] };
  "quantity-unit-missing": QuantityFacts<"unit-missing">;
  "quantity-unit-unknown": QuantityFacts<"unit-unknown">;
  "quantity-wrong-dimension": QuantityFacts<"wrong-dimension">;
  "quantity-impossible": QuantityFacts<"impossible">;
  "quantity-not-a-number": QuantityFacts<"not-a-number">;
  "quantity-not-understood": QuantityFacts<"not-understood">;
  "quantity-tolerance-unused": QuantityFacts<"tolerance-unused">;
  "record-missing": LinkFacts;
  "record-outside-workspace": LinkFacts;
  "record-circular": LinkFacts;
  /** `found` is left out where the file's name says nothing of a record. */
  "record-wrong-kind": LinkFacts & { found?: RecordKind };
}

/** `text` is the whole value as written, `wrong` the part of it that the problem is about. */
export type QuantityFacts<K extends QuantityProblem["kind"]> = Whereabouts &
  Omit<Extract<QuantityProblem, { kind: K }>, "kind" | "at"> & { text: string; wrong: string };

/** `target` is the path as written. */
export type LinkFacts = Whereabouts & { target: string; kind: "airframe" | "kit" };

export type JsonType = "string" | "integer" | "number" | "boolean" | "array" | "object";

/** A problem with the facts that its rule asks for, about the thing that these name. */
export function raise<R extends keyof RecordFacts>(
  rule: R,
  place: Anchor,
  facts: RecordFacts[R],
  related: readonly Related[] = [],
): Problem {
  const subject = subjectOf(facts);
  return { rule, place, facts: facts as Problem["facts"], ...(subject && { subject }), related };
}
