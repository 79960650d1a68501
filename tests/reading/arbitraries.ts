import { fc } from "../support/random";

/*
 * Texts that look like records, and edits of them. The words are few, so that keys repeat and aliases meet
 * their anchors, and the layouts are those in which one item can be mistaken for a part of another.
 */

const word = fc.constantFrom("id", "gauge", "from", "to", "W1", "W2", "length", "x", "note", "20 AWG");

const scalar = fc.oneof(
  { weight: 6, arbitrary: word },
  fc.constantFrom("1.10", "007", "1e3", "''", '"a b"', "'it''s'", '"\\"q\\" \\n"', "", "14.5 ft", "~"),
  fc.constantFrom("[a, b]", "{a: 1, b: [c]}", "[]", "[a: 1]", "x # comment", "'#' #c", "a:b"),
);

/** Lines of a value, the first one to stand after the colon or dash. */
type Lines = readonly string[];

const runOver: readonly Lines[] = [
  ["|", "  one", "", "    two", "  # three"],
  [">-", " a", " b", ""],
  ["|+", "  k", ""],
  ["[a,", "  b,", "]"],
  ["[a,", "  b]"],
  ["{a: 1,", "  b: 2", "  }"],
  ['"one', '  two"'],
  ["", "  [a,", "    b]"],
  ["", "    word", "    word"],
  ["", "  - - a", "    - b"],
];

function value(depth: number): fc.Arbitrary<Lines> {
  const oneLine = scalar.map((text) => [text]);
  if (depth === 0) return oneLine;
  return fc.oneof(oneLine, collection(depth), fc.constantFrom(...runOver));
}

function collection(depth: number): fc.Arbitrary<Lines> {
  const below = value(depth - 1);
  const size = { minLength: 1, maxLength: 4 };
  const map = fc
    .array(fc.tuple(word, below), size)
    .map((pairs) => pairs.flatMap(([key, lines]) => underKey(key, lines)));
  const list = fc.array(fc.oneof(below, map), size).map((entries) => entries.flatMap(underDash));
  return fc
    .tuple(fc.oneof(map, list), fc.constantFrom("", "  ", "    "))
    .map(([lines, margin]) => ["", ...lines.map((line) => margin + line)]);
}

function underKey(key: string, [first = "", ...rest]: Lines): Lines {
  return first ? [`${key}: ${first}`, ...rest.map((line) => line && `  ${line}`)] : [`${key}:`, ...rest];
}

function underDash(lines: Lines): Lines {
  const [first = "", ...rest] = lines[0] === "" && lines.length > 1 ? lines.slice(1) : lines;
  return [`- ${first}`, ...rest.map((line) => line && `  ${line}`)];
}

const trivia = fc.array(fc.constantFrom("", "# comment", "  # indented", "    ", "#tight"), { maxLength: 2 });

const section = fc
  .tuple(
    fc.constantFrom("document", "wires", "airframe", "kit", "wires", "a", "b-c", "m_2"),
    value(2),
    trivia,
  )
  .map(([key, lines, after]) => [...underKey(key, lines), ...after]);

/** Texts that look like records, mostly well-formed. */
export const recordText: fc.Arbitrary<string> = fc
  .record({
    mark: fc.constantFrom("", "", "", "\uFEFF"),
    before: trivia,
    sections: fc.array(section, { maxLength: 6 }),
    lineBreak: fc.constantFrom("\n", "\n", "\n", "\r\n"),
    isEnded: fc.boolean(),
  })
  .map(({ mark, before, sections, lineBreak, isEnded }) => {
    const lines = [...before, ...sections.flat(), ...(isEnded ? [""] : [])];
    return mark + lines.join(lineBreak);
  });

const snippets: readonly (readonly string[])[] = [
  [..."\"'[]{}:#-?&*!|>%@`,<=\t \n\r\0\\az0~."],
  [": ", " #", "- ", "? ", "- - ", "\r\n", "\n\n", "\n  ", "\n- ", "\n  - ", "\n  -x", "\n -"],
  ["&a ", "*a", "<<: *a", "<<", "!!str ", "---", "...", "\n---\n", "%YAML 1.1\n", "\n? a\n: b"],
  ["\nkey: ", "\nword\n", "\ng\n", "\ng\n  h: 1\n", "\n'k': v", '\n"k', "__proto__: 1\n"],
  ["\n]", "\n}", "\n[", "\n{a: 1", "[[", "{{", "\"\n'", "|\n", ">2\n", "|-\n  x"],
  ["\n<<<<<<< HEAD\n", "\n=======\n", "\n>>>>>>> x\n", "\n||||||| base\n"],
  ["\uFEFF", "\ud800", "\u2028", "\n#tight\n", "\n\n# loose\n", "\n\t- a", "\n  \tb"],
  ["[".repeat(70), "- ".repeat(70), "{a: ".repeat(70), "\nk: @\n".repeat(110)],
];

type Edit = (text: string) => string;

const insertion: fc.Arbitrary<Edit> = fc
  .tuple(fc.nat(4000), fc.constantFrom(...snippets.flat()))
  .map(([place, snippet]) => (text) => {
    const at = place % (text.length + 1);
    return text.slice(0, at) + snippet + text.slice(at);
  });

const deletion: fc.Arbitrary<Edit> = fc
  .tuple(fc.nat(4000), fc.integer({ min: 1, max: 5 }))
  .map(([place, length]) => (text) => {
    const at = place % (text.length + 1);
    return text.slice(0, at) + text.slice(at + length);
  });

const lineEdit: fc.Arbitrary<Edit> = fc
  .tuple(fc.constantFrom("copy", "drop", "indent", "outdent"), fc.nat(200), fc.nat(200))
  .map(([kind, from, to]) => (text) => {
    const lines = text.split("\n");
    const at = from % lines.length;
    const line = lines[at] ?? "";
    if (kind === "copy") lines.splice(to % (lines.length + 1), 0, line);
    else if (kind === "drop") lines.splice(at, 1);
    else lines[at] = kind === "indent" ? ` ${line}` : line.replace(/^ /, "");
    return lines.join("\n");
  });

/** A text that looks like a record, and what it becomes by a few edits, which mostly break it. */
export const editedTexts: fc.Arbitrary<readonly string[]> = fc
  .tuple(recordText, fc.array(fc.oneof(insertion, deletion, lineEdit), { maxLength: 6 }))
  .map(([text, edits]) => {
    const texts = [text];
    for (const edit of edits) texts.push(edit(texts.at(-1)!));
    return texts;
  });
