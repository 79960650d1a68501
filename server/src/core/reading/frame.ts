import type { CST } from "yaml";

/**
 * Lines put before and after a stretch of text, so that it is read as what it is: the middle of a record.
 *
 * Without them the first and last line would be special (a single word would make the document a scalar, an
 * unclosed quote would run to the end of the text). With them each stretch starts in the same state of the
 * parser, and whether the closing line comes out as an entry of its own proves that nothing in the stretch
 * reaches past its end. That is what makes reading stretch by stretch equal to reading the whole.
 */
export interface Frame {
  readonly opening: string;
  readonly closing: string;
  /** Takes the frame's own entries out again. Undefined when the text broke out of the frame. */
  strip(stream: readonly CST.Token[], closingAt: number): CST.Document | undefined;
}

type Pair = CST.BlockMap["items"][number];

const key = "z";
const single = "''";
/** Holds both kinds of quote, so that an unclosed quote before it ends at its own line. */
const quotes = `'"'`;

/** For any number of top-level entries. */
export const entriesFrame: Frame = {
  opening: `${key}: ${single}\n`,
  closing: `${key}: ${quotes}`,
  strip(stream, closingAt) {
    const root = rootMap(stream);
    if (!root) return undefined;
    const { document, map } = root;
    if (!takeOpeningPair(map, single) || !takeClosingPair(map, closingAt, quotes)) return undefined;
    return document;
  },
};

/** For one entry of a top-level list whose dashes stand at `indent`. The list stays in a map with one key. */
export function listEntryFrame(indent: number): Frame {
  const margin = " ".repeat(indent);
  const opening = `${key}:\n${margin}- ${single}\n`;
  const closingEntry = `${margin}- ${quotes}\n`;
  return {
    opening,
    closing: `${closingEntry}${key}: ${single}`,
    strip(stream, closingAt) {
      const root = rootMap(stream);
      if (!root) return undefined;
      const { document, map } = root;
      if (!takeClosingPair(map, closingAt + closingEntry.length, single)) return undefined;
      const [pair, ...rest] = map.items;
      const list = pair?.value;
      if (rest.some((item) => !isBlank(item)) || list?.type !== "block-seq" || list.indent !== indent) {
        return undefined;
      }
      const entries = list.items.filter((item) => !isBlank(item));
      const [first, own, last] = entries;
      const sound =
        entries.length === 3 &&
        first?.value?.type === "single-quoted-scalar" &&
        dashOf(own)?.offset === opening.length + indent &&
        dashOf(last)?.offset === closingAt + indent &&
        last?.start.every((token) => isWhite(token) || token.type === "seq-item-ind") &&
        last?.value?.type === "single-quoted-scalar" &&
        last.value.source === quotes;
      if (!own || !sound) return undefined;
      list.items = [own];
      list.offset = opening.length + indent;
      map.items = [pair as Pair];
      return document;
    },
  };
}

function rootMap(stream: readonly CST.Token[]): { document: CST.Document; map: CST.BlockMap } | undefined {
  const [document] = stream;
  if (stream.length !== 1 || document?.type !== "document" || document.start.length > 0) return undefined;
  const map = document.value;
  if (map?.type !== "block-map" || map.offset !== 0 || map.indent !== 0) return undefined;
  if (document.end?.some((token) => !isWhite(token))) return undefined;
  return { document, map };
}

function takeOpeningPair(map: CST.BlockMap, value: string): boolean {
  const pair = map.items[0];
  if (!pair || pair.explicitKey || !isScalarAt(pair.key, 0, key)) return false;
  if (pair.value?.type !== "single-quoted-scalar" || pair.value.source !== value) return false;
  map.items.shift();
  return true;
}

function takeClosingPair(map: CST.BlockMap, at: number, value: string): boolean {
  const pair = map.items.at(-1);
  if (!pair || pair.explicitKey || !isScalarAt(pair.key, at, key) || !pair.start.every(isWhite)) return false;
  if (pair.value?.type !== "single-quoted-scalar" || pair.value.source !== value) return false;
  map.items.pop();
  return true;
}

function isScalarAt(token: CST.Token | null | undefined, offset: number, source: string): boolean {
  return token?.type === "scalar" && token.offset === offset && token.source === source;
}

function dashOf(item: CST.BlockSequence["items"][number] | undefined): CST.SourceToken | undefined {
  return item?.start.find((token) => token.type === "seq-item-ind");
}

function isWhite(token: CST.SourceToken): boolean {
  return token.type === "space" || token.type === "newline" || token.type === "comment";
}

function isBlank(item: { start: CST.SourceToken[]; key?: unknown; sep?: unknown; value?: unknown }): boolean {
  return !item.key && !item.sep && !item.value && item.start.every(isWhite);
}
