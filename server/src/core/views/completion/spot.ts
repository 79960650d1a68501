/**
 * The place in a record where something is being typed, and what the schema wants there.
 *
 * What stands at the cursor is seldom whole, so it is not asked what it is: a word that names nothing is put in
 * its place, the text is read with it, and where the word turns up in the tree tells what belongs there.
 */
import {
  type Entry,
  type MapNode,
  nodeAt,
  type Reading,
  read,
  type ScalarNode,
  type Span,
} from "../../reading";
import type { LoadedRecord } from "../../records/record";
import type { Schema } from "../../records/schema";
import { type Typing, typeRecord } from "../../records/typing";
import { type Token, tokenAt } from "./token";

/** What a cursor stands at. Spans are in the record's own text. */
export type Spot = KeySpot | ValueSpot;

interface SpotBase extends Token {
  /** Inside braces or brackets, where no line may be broken. */
  readonly isFlow: boolean;
  /** Columns before the first word of the line. */
  readonly indent: number;
  readonly typing: Typing;
}

/** A key belongs here. */
export interface KeySpot extends SpotBase {
  readonly kind: "key";
  /** Schema of the map that the key would be of, or of the list when `isEntry`. */
  readonly schema: Schema;
  readonly present: readonly Entry[];
  /** A new entry of a list belongs here, its dash not written yet. */
  readonly isEntry: boolean;
  /** The dash is written, and nothing after it. */
  readonly isFresh: boolean;
}

/** A value belongs here. */
export interface ValueSpot extends SpotBase {
  readonly kind: "value";
  readonly schema: Schema;
  /** The map that the value is in, and the key that it is of; undefined in a list. */
  readonly map: MapNode | undefined;
  readonly key: string | undefined;
}

/** Starts like no word that anybody would write. */
const probe = "q0probe";

/** Undefined where nothing can be said: in a comment, inside a text, where the schema knows nothing. */
export function spotAt(record: LoadedRecord, offset: number): Spot | undefined {
  const token = tokenAt(record.reading, offset);
  if (!token) return undefined;
  return token.isValue ? valueSpot(record, token) : keySpot(record, token);
}

function keySpot(record: LoadedRecord, token: Token): Spot | undefined {
  const asKey = token.hasColon ? probe : `${probe}: 0`;
  const inMap = lookUp(record, token, asKey, 0);
  const map = inMap && mapOf(inMap.steps);
  if (inMap && map) {
    const schema = inMap.typing.schemaOf(map);
    const present = map.entries.filter(({ key }) => key.text !== probe);
    // A map further out takes what is indented like nothing in it, but it was not meant.
    const isAside = !token.isFlow && !isBelow(present, inMap.reading, token);
    if (!isAside && (schema?.properties || schema?.["x-key-reference"])) {
      const isFresh = present.length === 0 && token.isAfterDash;
      return { ...token, kind: "key", schema, present, typing: inMap.typing, isEntry: false, isFresh };
    }
    // A list's first entry, whose dash is still to come, reads like a map in place of the list.
    if (!isAside && schema?.items && !token.isFlow && present.length === 0)
      return {
        ...token,
        kind: "key",
        schema,
        present: [],
        typing: inMap.typing,
        isEntry: true,
        isFresh: false,
      };
  }
  if (!token.isFlow && !token.isAfterDash) {
    const inList = lookUp(record, token, `- ${asKey}`, 2);
    const list = inList?.steps.findLast(({ node }) => node.kind === "list")?.node;
    const schema = list && inList?.typing.schemaOf(list);
    if (inList && schema?.items)
      return {
        ...token,
        kind: "key",
        schema,
        present: [],
        typing: inList.typing,
        isEntry: true,
        isFresh: false,
      };
  }
  return valueSpot(record, token);
}

function valueSpot(record: LoadedRecord, token: Token): ValueSpot | undefined {
  const found = lookUp(record, token, `${token.needsSpace ? " " : ""}${probe}`, token.needsSpace ? 1 : 0);
  const last = found?.steps.at(-1);
  if (!found || !last || !isProbe(last.node)) return undefined;
  const parent = found.steps.at(-2)?.node;
  const schema = found.typing.schemaOf(last.node);
  if (!schema) return undefined;
  return {
    ...token,
    kind: "value",
    schema,
    map: parent?.kind === "map" ? parent : undefined,
    key: last.entry?.key.text,
    typing: found.typing,
  };
}

/** Whether a key stands in the same column as the map's other keys. */
function isBelow([first]: readonly Entry[], reading: Reading, { start, isAfterDash }: Token): boolean {
  if (!first || isAfterDash) return true;
  return columnOf(reading, reading.spanOf(first.key).start) === columnOf(reading, start);
}

function columnOf({ text }: Reading, offset: number): number {
  return offset - Math.max(text.lastIndexOf("\n", offset - 1), text.lastIndexOf("\r", offset - 1)) - 1;
}

interface Found {
  readonly reading: Reading;
  readonly typing: Typing;
  readonly steps: ReturnType<typeof nodeAt>;
}

/** The tree with a text in place of the token, and the way to a place in that text. */
function lookUp(record: LoadedRecord, { start, end }: Span, text: string, into: number): Found | undefined {
  const reading: Reading = read(record.text.slice(0, start) + text + record.text.slice(end), record.reading);
  return {
    reading,
    typing: typeRecord(record.file, reading, record.kind),
    steps: nodeAt(reading, start + into + 1),
  };
}

function mapOf(steps: ReturnType<typeof nodeAt>): MapNode | undefined {
  if (steps.at(-1)?.entry?.key.text !== probe) return undefined;
  const map = steps.at(-2)?.node;
  return map?.kind === "map" ? map : undefined;
}

function isProbe(node: { readonly kind: string }): node is ScalarNode {
  return node.kind === "scalar" && (node as ScalarNode).text === probe;
}
