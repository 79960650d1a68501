import type { ItemProblem } from "./problems";
import type { Span } from "./tree";

/**
 * A problem from an error of the YAML composer, in the words of someone who writes records.
 * Undefined for errors that are reported in another way, or say nothing about the text.
 *
 * @param text the item's text, and `start` and `end` offsets in it, possibly outside
 */
export function syntaxProblem(
  text: string,
  start: number,
  end: number,
  code: string,
  message: string,
): ItemProblem | undefined {
  const span = lineSpan(text, contentNear(text, start), end);

  if (code === "TAB_AS_INDENT") return { rule: "text-tab-indent", ...span, facts: { tabs: 1 } };
  // Tags are reported as a feature; an `IMPOSSIBLE` only follows from another error.
  if (code === "TAG_RESOLVE_FAILED" || code === "MULTIPLE_TAGS" || code === "IMPOSSIBLE") return undefined;
  const quoted = /^Unexpected (?:\w|-)+ at node end/.test(message)
    ? quotedBefore(text, span.start)
    : undefined;
  if (quoted !== undefined) {
    const facts = {
      code: "TEXT_AFTER_QUOTE",
      detail: `text after the value ${quoted}`,
      missing: quoted.charAt(0),
    };
    return { rule: "text-not-yaml", ...span, facts };
  }
  for (const [pattern, detail, ownCode] of wordings) {
    if (!pattern.test(message)) continue;
    const facts = { code: ownCode ?? code, detail: detail ?? "" };
    return detail === undefined ? undefined : { rule: "text-not-yaml", ...span, facts };
  }
  return { rule: "text-not-yaml", ...span, facts: { code, detail: decapitalised(message) } };
}

/** What stands in quotes in front of an offset, on the same line. */
function quotedBefore(text: string, at: number): string | undefined {
  const lineStart = Math.max(text.lastIndexOf("\n", at - 1), text.lastIndexOf("\r", at - 1)) + 1;
  const before = text.slice(lineStart, at).trimEnd();
  const quote = before.at(-1);
  if (quote !== "'" && quote !== '"') return undefined;
  const open = before.lastIndexOf(quote, before.length - 2);
  return open === -1 ? undefined : before.slice(open);
}

/** The composer often points at the white space before or after what it means. */
function contentNear(text: string, start: number): number {
  let at = Math.min(Math.max(start, 0), text.length);
  while (text[at] === " ") at++;
  if (at < text.length && !isLineBreak(text[at])) return at;
  while (at > 0 && (text[at - 1] === " " || isLineBreak(text[at - 1]))) at--;
  return at;
}

/**
 * What the composer says, and what a record's writer needs to hear, with a code where the composer's says too
 * little. Undefined: the scan has reported it.
 */
const wordings: readonly (readonly [said: RegExp, detail: string | undefined, code?: string])[] = [
  [/^Missing closing .quote/, undefined],
  [/(?:must|and) end with a [\]}]$/, undefined],
  [/^Implicit map keys need/, "a key without a colon after it"],
  [/^Implicit keys need to be on a single line/, "a key on more than one line"],
  [/^Nested mappings are not allowed/, "a second key on the same line"],
  [/^A block sequence may not be used as an implicit/, "a list without a key above it"],
  [/^All mapping items must start/, "a key not indented like its neighbours"],
  [/^All sequence items must start/, "an entry not indented like its neighbours"],
  [/^Unexpected block-seq-ind on same line/, "a dash where no list can begin", "LONE_DASH"],
  [/^Unexpected (?:\w|-)+ at node end/, "text after the end of a value"],
];

/**
 * A span inside one line of the text: what is left of it up to the line's end, else the last character of
 * the line, so that there is something to underline.
 */
export function lineSpan(text: string, start: number, end: number): Span {
  const from = Math.min(Math.max(start, 0), text.length);
  let lineEnd = from;
  const to = Math.max(end, from + 1);
  while (lineEnd < to && lineEnd < text.length && !isLineBreak(text[lineEnd])) lineEnd++;
  if (lineEnd > from) return { start: from, end: lineEnd };
  if (from === 0 || isLineBreak(text[from - 1])) return { start: from, end: from };
  return { start: from - 1, end: from };
}

/** Characters that a text can't have: control characters, halves of pairs, a byte order mark inside. */
export function* controlCharacters(text: string): Generator<ItemProblem> {
  for (const { 0: found, index } of text.matchAll(notPrintable)) {
    const number = found.charCodeAt(0).toString(16).toUpperCase().padStart(4, "0");
    const facts = { code: "CONTROL_CHARACTER", detail: `the character U+${number}` };
    yield { rule: "text-not-yaml", start: index, end: index + found.length, facts };
  }
}

const notPrintable = /(?![\t\n\r\x85])[\p{Cc}\p{Cs}]|(?<!^)\uFEFF/gu;

function isLineBreak(character: string | undefined): boolean {
  return character === "\n" || character === "\r";
}

function decapitalised(message: string): string {
  return message.charAt(0).toLowerCase() + message.slice(1);
}
