/** What is to be written into a record, and how it is put into YAML. */

/** A scalar as it should read, a list, or a map with its keys in order. Undefined keys are left out. */
export type Content = string | readonly Content[] | { readonly [key: string]: Content | undefined };

type MapContent = Exclude<Content, string | readonly Content[]>;

/** Entries that would be wider than this on one line are written in lines below each other. */
const widestLine = 110;

/** On one line, as it may stand in a list or map in brackets. */
export function onOneLine(content: Content): string {
  if (typeof content === "string") return scalar(content, /[,[\]{}]/);
  if (isList(content)) return `[${content.map(onOneLine).join(", ")}]`;
  const pairs = pairsOf(content).map(([key, value]) => pair(key, value));
  return pairs.length === 0 ? "{}" : `{ ${pairs.join(", ")} }`;
}

/** `key: value` on one line, as it may stand in a map in brackets. */
export function pair(key: string, value: Content): string {
  return `${onOneLine(key)}: ${onOneLine(value)}`;
}

/**
 * `key: value` in lines, without the indentation of the first key.
 *
 * @param dashAt how far the dashes of a list stand to the right of its key
 */
export function keyLines(key: string, value: Content, margin: number, dashAt: number): string[] {
  const name = scalar(key);
  if (typeof value === "string") return [`${name}: ${scalar(value)}`];
  const short = `${name}: ${onOneLine(value)}`;
  if (isList(value)) {
    if (value.every((entry) => typeof entry === "string") && margin + short.length <= widestLine)
      return [short];
    return [`${name}:`, ...value.flatMap((entry) => entryLines(entry, margin, dashAt, "short"))];
  }
  if (margin + short.length <= widestLine || pairsOf(value).length === 0) return [short];
  const lines = pairsOf(value).flatMap(([below, one]) => keyLines(below, one, margin + 2, dashAt));
  return [`${name}:`, ...indented(lines, 2)];
}

/**
 * `- entry` in lines, the dash indented by `dashAt`. `long` writes a map with each key on a line of its own,
 * `short` does so only where it doesn't fit on one.
 */
export function entryLines(entry: Content, margin: number, dashAt: number, form: "short" | "long"): string[] {
  if (typeof entry === "string") return indented([`- ${scalar(entry)}`], dashAt);
  const short = `- ${onOneLine(entry)}`;
  const isShort = form === "short" && margin + dashAt + short.length <= widestLine;
  if (isShort || isList(entry) || pairsOf(entry).length === 0) return indented([short], dashAt);
  const inner = margin + dashAt + 2;
  const [first, ...rest] = pairsOf(entry).flatMap(([key, value]) => keyLines(key, value, inner, 2));
  return indented([`- ${first}`, ...indented(rest, 2)], dashAt);
}

export function indented(lines: readonly string[], by: number): string[] {
  return lines.map((line) => " ".repeat(by) + line);
}

export function isList(content: Content): content is readonly Content[] {
  return Array.isArray(content);
}

/** What a map holds, in order. */
export function pairsOf(content: MapContent): [string, Content][] {
  return Object.entries(content).filter((one): one is [string, Content] => one[1] !== undefined);
}

/** Plain where YAML reads it back as it is, else in quotes. */
function scalar(text: string, unfit?: RegExp): string {
  const isPlain =
    /^(?:[^\s\p{C}\-?:,[\]{}#&*!|>'"%@`]|-(?=[^\s-]))(?:[^\p{C}\p{Zl}\p{Zp}]*[^\s\p{C}])?$/u.test(text) &&
    !/:(?:\s|$)|\s#/.test(text) &&
    !unfit?.test(text);
  return isPlain ? text : JSON.stringify(text);
}
