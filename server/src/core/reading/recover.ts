import { CST } from "yaml";

/**
 * Gives back keys that a fault before them has swallowed. Works in place.
 *
 * While a new key is being typed it has no colon yet, and the parser reads it and the next line together as
 * one key of two lines. A list at a wrong indentation becomes a key itself, and the keys after it its value.
 * In both cases the keys that start in the column of their map are what the writer sees, and what the parser
 * would have read without the fault.
 *
 * @param source the text that the tokens came from
 * @returns whether a list had swallowed keys of the top level
 */
export function recoverKeys(stream: readonly CST.Token[], source: string): boolean {
  const pending: CST.Token[] = [];
  for (const token of stream) if (token.type === "document" && token.value) pending.push(token.value);
  const roots = new Set(pending);
  let isRootParted = false;
  for (let token = pending.pop(); token; token = pending.pop()) {
    if (!CST.isCollection(token)) continue;
    if (token.type === "block-map" && token.items.some(hasSwallowed)) {
      const parted = withoutLists(token);
      isRootParted ||= roots.has(token) && parted.length > token.items.length;
      token.items = parted.flatMap((pair) => lineByLine(pair, source));
    }
    for (const { key, value } of token.items) {
      if (key && CST.isCollection(key)) pending.push(key);
      if (value && CST.isCollection(value)) pending.push(value);
    }
  }
  return isRootParted;
}

type Pair = CST.BlockMap["items"][number];

function hasSwallowed({ key }: Pair): boolean {
  return key?.type === "block-seq" || (key?.type === "scalar" && key.source.includes("\n"));
}

/** Parts each list that is a key from what was taken for its value, where there can be more such lists. */
function withoutLists({ items, indent }: CST.BlockMap): Pair[] {
  const parted: Pair[] = [];
  const pending = items.toReversed();
  for (let pair = pending.pop(); pair; pair = pending.pop()) {
    const swallowed = swallowedBy(pair, indent);
    if (!swallowed) {
      parted.push(pair);
      continue;
    }
    parted.push({ start: pair.start, key: pair.key ?? null, sep: pair.sep ?? [] });
    for (const after of swallowed.toReversed()) pending.push(after);
  }
  return parted;
}

function swallowedBy({ key, sep, value, explicitKey }: Pair, indent: number): readonly Pair[] | undefined {
  if (key?.type !== "block-seq" || explicitKey || sep?.some(({ type }) => type === "map-value-ind"))
    return undefined;
  if (!value || !("indent" in value) || value.indent !== indent) return undefined;
  if (value.type === "block-map") return value.items;
  if (!CST.isScalar(value) || value.type === "block-scalar") return undefined;
  const { end = [], ...line } = value;
  return [{ start: [], key: line, sep: end }];
}

/** Parts a key of several lines at those that start in the column of the first. */
function lineByLine(pair: Pair, source: string): Pair[] {
  const { key } = pair;
  if (key?.type !== "scalar" || pair.explicitKey || !key.source.includes("\n")) return [pair];
  const column = key.offset - (source.lastIndexOf("\n", key.offset - 1) + 1);
  const starts = [0];
  for (let at = key.source.indexOf("\n"); at !== -1; at = key.source.indexOf("\n", at + 1)) {
    let first = at + 1;
    while (key.source[first] === " ") first++;
    const isBlank = key.source[first] === "\n" || key.source[first] === "\r";
    if (!isBlank && first - at - 1 === column) starts.push(first);
  }
  if (starts.length === 1) return [pair];
  return starts.map((from, index) => {
    const to = starts[index + 1];
    const line: CST.FlowScalar = {
      ...key,
      offset: key.offset + from,
      source: withoutEnd(key.source.slice(from, to)),
    };
    const start = index === 0 ? pair.start : [];
    if (to !== undefined) return { start, key: line, sep: [] };
    return { start, key: line, sep: pair.sep ?? [], ...(pair.value && { value: pair.value }) };
  });
}

/** Takes off the white space of YAML; `trimEnd` would take off more. */
function withoutEnd(text: string): string {
  let end = text.length;
  while (end > 0 && " \t\r\n".includes(text[end - 1]!)) end--;
  return text.slice(0, end);
}
