import { CST } from "yaml";

/**
 * Parts keys that a half-typed line has swallowed.
 *
 * While a new key is being typed it has no colon yet, and the parser reads it and the next line together as
 * one key of two lines. Lines that start in the column of the map's keys are what their writer sees: a key
 * without a value each, then the real key. Works in place.
 *
 * @param source the text that the tokens came from
 */
export function partHalfTypedKeys(stream: readonly CST.Token[], source: string): void {
  const pending: CST.Token[] = [];
  for (const token of stream) if (token.type === "document" && token.value) pending.push(token.value);
  for (let token = pending.pop(); token; token = pending.pop()) {
    if (!CST.isCollection(token)) continue;
    if (token.type === "block-map") token.items = token.items.flatMap((pair) => part(pair, source));
    for (const { key, value } of token.items) {
      if (key) pending.push(key);
      if (value) pending.push(value);
    }
  }
}

type Pair = CST.BlockMap["items"][number];

function part(pair: Pair, source: string): Pair[] {
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
