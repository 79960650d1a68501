import fc from "fast-check";
import type { Node, Reading, ScalarNode, Span } from "../../server/src/core/reading";

/** A reading without its items: all offsets absolute, problems in a fixed order. Equal for equal readings. */
export function absolute(reading: Reading) {
  return {
    root: { ...absoluteNode(reading, reading.root), ...reading.spanOf(reading.root) },
    problems: reading.problems
      .map(({ rule, node, span, facts }) => ({ rule, node: node && reading.spanOf(node), span, facts }))
      .map((problem) => JSON.stringify(problem))
      .sort(),
    comments: reading.comments,
  };
}

function absoluteNode(reading: Reading, node: Node): object {
  const span = reading.spanOf(node);
  const place = { ...span, alias: node.aliasOf !== undefined };
  switch (node.kind) {
    case "scalar":
      return { ...place, text: node.text, style: node.style };
    case "list":
      return { ...place, list: node.entries.map((entry) => absoluteNode(reading, entry)) };
    case "map":
      return {
        ...place,
        map: node.entries.map(({ key, value }) => [
          absoluteNode(reading, key),
          absoluteNode(reading, value),
        ]),
      };
  }
}

/** The tree as plain data: maps as arrays of pairs, scalars as their text, nothing as null. */
export type Plain = string | null | Plain[] | { pairs: [string, Plain][] };

export function plain(node: Node): Plain {
  switch (node.kind) {
    case "scalar":
      return node.style === "empty" ? null : node.text;
    case "list":
      return node.entries.map(plain);
    case "map":
      return { pairs: node.entries.map(({ key, value }) => [key.text, plain(value)]) };
  }
}

/** The tree in one line, as in JSON but with `~` for nothing and without quotes: `{a: 1, b: [x, ~]}`. */
export function brief(node: Node): string {
  switch (node.kind) {
    case "scalar":
      return node.style === "empty" ? "~" : node.text;
    case "list":
      return `[${node.entries.map(brief).join(", ")}]`;
    case "map":
      return `{${node.entries.map(({ key, value }) => `${key.text}: ${brief(value)}`).join(", ")}}`;
  }
}

/** Problems as `rule: the text they point at`. */
export function marked(reading: Reading): string[] {
  return reading.problems.map(({ rule, span }) => `${rule}: ${reading.text.slice(span.start, span.end)}`);
}

/** All nodes below and including this one, keys too. */
export function* nodesIn(node: Node): Generator<Node> {
  yield node;
  if (node.kind === "list") for (const entry of node.entries) yield* nodesIn(entry);
  if (node.kind === "map") {
    for (const { key, value } of node.entries) {
      yield key;
      yield* nodesIn(value);
    }
  }
}

export function scalars(reading: Reading): ScalarNode[] {
  return [...nodesIn(reading.root)].filter((node) => node.kind === "scalar");
}

export function cut(text: string, { start, end }: Span): string {
  return text.slice(start, end);
}

/* Arbitrary texts. The words are few, so that keys repeat and anchors meet their aliases. */

const word = fc.constantFrom("id", "gauge", "from", "to", "W1", "W2", "length", "x", "note", "20 AWG");

const scalar = fc.oneof(
  { weight: 6, arbitrary: word },
  fc.constantFrom("1.10", "007", "1e3", "''", '"a b"', "'it''s'", '"\\"q\\" \\n"', "", "14.5 ft", "~"),
  fc.constantFrom("[a, b]", "{a: 1, b: [c]}", "[]", "[a: 1]", "x # comment", "'#' #c", "a:b"),
);

const tree: fc.Memo<string[]> = fc.memo((depth) =>
  depth <= 1 ? scalar.map((text) => [text]) : fc.oneof(
    scalar.map((text) => [text]),
    lines(depth),
    fc.constantFrom(["|", "  one", "", "    two", "  # three"], [">-", " a", " b", ""], ["|+", "  k", ""]),
    fc.constantFrom(["[a,", "  b,", "]"], ["[a,", "  b]"], ["{a: 1,", "  b: 2", "  }"], ['"one', '  two"']),
    fc.constantFrom(["", "  [a,", "    b]"], ["", "    word", "    word"], ["", "  - - a", "    - b"]),
  ),
);

/** Lines of a value, the first one to stand after the colon or dash. */
function lines(depth: number): fc.Arbitrary<string[]> {
  const entries = fc.array(fc.tuple(word, tree(depth - 1)), { minLength: 1, maxLength: 4 });
  const map = entries.map((pairs) => pairs.flatMap(([key, value]) => hang(`${key}:`, value, "  ")));
  const list = fc
    .array(fc.oneof(tree(depth - 1), map), { minLength: 1, maxLength: 4 })
    .map((values) => values.flatMap((value) => hangEntry(value)));
  return fc
    .tuple(fc.oneof(map, list), fc.constantFrom("", "  ", "    "))
    .map(([below, indent]) => ["", ...below.map((line) => indent + line)]);
}

function hang(head: string, [first = "", ...rest]: string[], indent: string): string[] {
  return [first ? `${head} ${first}` : head, ...rest.map((line) => (line && rest.length > 0 && first ? indent + line : line))];
}

function hangEntry(value: string[]): string[] {
  const [first = "", ...rest] = value[0] === "" && value.length > 1 ? value.slice(1) : value;
  return [`- ${first}`, ...rest.map((line) => (line ? `  ${line}` : line))];
}

const trivia = fc.constantFrom("", "# comment", "  # indented", "    ", "#tight");

const section = fc
  .tuple(
    fc.constantFrom("document", "wires", "airframe", "kit", "wires", "a", "b-c", "mounts_2"),
    tree(3),
    fc.array(trivia, { maxLength: 2 }),
  )
  .map(([key, value, after]) => [...hang(`${key}:`, value, "  "), ...after]);

/** Texts that look like records, mostly well-formed. */
export const recordText: fc.Arbitrary<string> = fc
  .tuple(
    fc.array(trivia, { maxLength: 2 }),
    fc.array(section, { maxLength: 6 }),
    fc.constantFrom("\n", "\n", "\n", "\r\n"),
    fc.constantFrom("", "\n"),
    fc.constantFrom("", "", "", "\uFEFF"),
  )
  .map(([before, sections, lineBreak, last, mark]) => {
    return mark + [...before, ...sections.flat()].join(lineBreak) + (last && lineBreak);
  });

const snippet = fc.constantFrom(
  ..."\"'[]{}:#-?&*!|>%@`,<=\t \n\r\0\\az0~.".split(""),
  ": ", " #", "- ", "? ", "- - ", "&a ", "*a", "!!str ", "---", "...", "\n---\n", "<<: *a", "<<", "\r\n", "\n\n",
  "\n  ", "\n- ", "\n  - ", "\nkey: ", "\nword\n", "\ng\n", "\ng\n  h: 1\n", "\n'k': v", '\n"k', "\n]", "\n}", "\n[", "\n{a: 1",
  "\n<<<<<<< HEAD\n", "\n=======\n", "\n>>>>>>> x\n", "\n||||||| base\n", "|\n", ">2\n", "|-\n  x", "\uFEFF", "\ud800", "\u2028",
  "__proto__: 1\n", "\n#tight\n", "\n\n# loose\n", "\n  -x", "\n -", "\n\t- a", "\n  \tb", "%YAML 1.1\n", "\n? a\n: b", "[[", "{{", "\"\n'",
);

type Mutation =
  | { readonly kind: "insert"; readonly at: number; readonly text: string }
  | { readonly kind: "delete"; readonly at: number; readonly length: number }
  | { readonly kind: "copy-line" | "drop-line" | "indent-line"; readonly at: number; readonly to: number };

const mutation: fc.Arbitrary<Mutation> = fc.oneof(
  fc.record({ kind: fc.constant("insert" as const), at: fc.nat(4000), text: snippet }),
  fc.record({ kind: fc.constant("delete" as const), at: fc.nat(4000), length: fc.integer({ min: 1, max: 5 }) }),
  fc.record({
    kind: fc.constantFrom("copy-line" as const, "drop-line" as const, "indent-line" as const),
    at: fc.nat(200),
    to: fc.nat(200),
  }),
);

function mutate(text: string, change: Mutation): string {
  if (change.kind === "insert") {
    const at = change.at % (text.length + 1);
    return text.slice(0, at) + change.text + text.slice(at);
  }
  if (change.kind === "delete") {
    const at = change.at % (text.length + 1);
    return text.slice(0, at) + text.slice(at + change.length);
  }
  const lines = text.split("\n");
  const at = change.at % lines.length;
  const line = lines[at] ?? "";
  if (change.kind === "copy-line") lines.splice(change.to % (lines.length + 1), 0, line);
  else if (change.kind === "drop-line") lines.splice(at, 1);
  else lines[at] = change.to % 2 === 0 ? ` ${line}` : line.replace(/^ /, "");
  return lines.join("\n");
}

/** A text, and the same text after each of some edits. */
export const editedText: fc.Arbitrary<string[]> = fc
  .tuple(recordText, fc.array(mutation, { maxLength: 6 }))
  .map(([text, changes]) => {
    const texts = [text];
    for (const change of changes) texts.push(mutate(texts.at(-1)!, change));
    return texts;
  });
