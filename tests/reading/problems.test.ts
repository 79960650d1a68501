import { describe, expect, test } from "vitest";
import { limits } from "../../server/src/core/limits";
import { read } from "../../server/src/core/reading";
import { brief, marked } from "./outline";

/** What is read of a text, and what is said about it. */
function outcome(text: string) {
  const reading = read(text);
  return [brief(reading.root), ...marked(reading)];
}

describe("while a line is being typed, the lines around it are read", () => {
  test.each([
    ["a: 1\ngauge:\nb: 2\n", "{a: 1, gauge: ~, b: 2}", []],
    ["gaug", "{gaug: ~}", ["gaug"]],
    ["a: 1\ngaug", "{a: 1, gaug: ~}", ["gaug"]],
    ["a: 1\ngaug\nb: 2\n", "{a: 1, gaug: ~, b: 2}", ["gaug"]],
    ["a: 1\ng\nb: 2\n", "{a: 1, g: ~, b: 2}", ["g"]],
    ["a: 1\ngaug # why\n\nb: 2\n", "{a: 1, gaug: ~, b: 2}", ["gaug"]],
    ["w:\n  - id: W1\n    gau\n", "{w: [{id: W1, gau: ~}]}", ["gau"]],
    ["w:\n  - id: W1\n    gau\n    to: X\n  - id: W2\n", "{w: [{id: W1, gau: ~, to: X}, {id: W2}]}", ["gau"]],
    ["w:\n  - gau\n    to: X\n", "{w: [{gau: ~, to: X}]}", ["gau"]],
    ["w:\n  - id: W1\n  - \n", "{w: [{id: W1}, ~]}", []],
    ["w:\n  - id: W1\n  -\n  - id: W3\n", "{w: [{id: W1}, ~, {id: W3}]}", []],
    ["a: [1, 2\nb: 3\n", "{a: [1, 2], b: 3}", ["["]],
    ["w:\n- a: {b: 1\n- c: 2\nd: 3\n", "{w: [{a: {b: 1}}, {c: 2}], d: 3}", ["{"]],
    ["a: \"one\nb: 'two\nc: 3\n", "{a: one, b: two, c: 3}", ['"one', "'two"]],
    ['w:\n  - a: "it\\"\n    b: 1\n', '{w: [{a: it\\", b: 1}]}', ['"it\\"']],
    ["a: [1]]\nb: ]\nc: 3\n", "{a: [1], b: ~, c: 3}", ["]", "]"]],
    ["a:\n  - x\n - y\nb: 1\nc: 2\n", "{a: [x], b: 1, c: 2}", ["-"]],
    ["a: 1\n- x\nb: 1\n- y: 2\n  z: 3\nc: 2\n", "{a: 1, b: 1, c: 2}", ["-", "-"]],
    [
      "a:\n  - w\n - x\nb: 1\nc:\n  - w\n - x\ngaug # why\nd: 2\n",
      "{a: [w], b: 1, c: [w], gaug: ~, d: 2}",
      ["-", "-", "gaug"],
    ],
    ["a: [1}\nb: 2\n", "{a: [1], b: 2}", ["}"]],
  ])("%j", (text, tree, at) => {
    expect(outcome(text)).toEqual([tree, ...at.map((written) => `text-not-yaml at '${written}'`)]);
  });
});

describe("broken YAML", () => {
  test.each([
    ["d: { a: 1, b: -, c: 2 }\n", "{d: {a: 1, b: ~, c: 2}}"],
    ["d: [a, - , c]\n", "{d: [a, ~, c]}"],
    ["a: 1\nb: -\nc: 2\n", "{a: 1, b: ~, c: 2}"],
  ])("%j: a dash in place of a value is one fault", (text, tree) => {
    expect(outcome(text)).toEqual([tree, "text-not-yaml at '-'"]);
    expect(read(text).problems[0]!.facts).toMatchObject({ code: "LONE_DASH" });
  });

  test.each([
    ["a: b: c\n", "BLOCK_AS_IMPLICIT_KEY", "a second key on the same line"],
    ["a:\n  b: 1\n c: 2\n", "BAD_INDENT", "a key not indented like its neighbours"],
    ["a: @b\n", "BAD_SCALAR_START", "plain value cannot start with reserved character @"],
    ["a: [b] c\n", "UNEXPECTED_TOKEN", "text after the end of a value"],
    ['a: "\\q"\n', "BAD_DQ_ESCAPE", "invalid escape sequence \\q"],
    ["a: x\u0007\n", "CONTROL_CHARACTER", "the character U+0007"],
    ["a: \ud83d\n", "CONTROL_CHARACTER", "the character U+D83D"],
    ["a: \uFEFFb\n", "CONTROL_CHARACTER", "the character U+FEFF"],
  ])("%j has a code and a detail", (text, code, detail) => {
    expect(read(text).problems.map(({ rule, facts }) => ({ rule, facts }))).toContainEqual({
      rule: "text-not-yaml",
      facts: { code, detail },
    });
  });

  test.each([
    ["a: 'it'\nb: \"one\nc: 2\n", '"one', "QUOTE_NOT_CLOSED", 'the " that opens here is not closed', '"'],
    [
      "w:\n  - { a: 'b, c: d }\n",
      "'b, c: d }",
      "QUOTE_NOT_CLOSED",
      "the ' that opens here is not closed",
      "'",
    ],
    ["a: [1, 2\n", "[", "BRACKET_NOT_CLOSED", "[ is not closed", "]"],
    ["a: 'Owner's data'\nb: 1\n", "s data'", "TEXT_AFTER_QUOTE", "text after the value 'Owner'", "'"],
    ['w:\n  - { a: "b, c: "d }\n', "d", "TEXT_AFTER_QUOTE", 'text after the value "b, c: "', '"'],
  ])("%j has one finding, which tells what to type", (text, at, code, detail, missing) => {
    const [problem, ...more] = read(text).problems;
    expect(text.slice(problem!.span.start, problem!.span.end)).toBe(at);
    expect(problem!.facts).toEqual({ code, detail, missing });
    expect(more).toEqual([]);
  });

  test("a whole pair of surrogates is a character like any other", () => {
    expect(read("a: \ud83d\ude00\n").problems).toEqual([]);
  });

  test("a list without a key is said at its first dash", () => {
    expect(outcome("a: 1\n- b\n- c\nd: 2\n")).toContain("text-not-yaml at '-'");
    expect(brief(read("a: 1\n- b\n- c\nd: 2\n").root)).toBe("{a: 1, d: 2}");
  });
});

test.each([
  ["a: !!int 5\nb: !x [1]\n", "{a: 5, b: [1]}", ["tag at '!!int'", "tag at '!x'"]],
  ["%YAML 1.2\n---\na: 1\n", "{a: 1}", ["directive at '%YAML 1.2'"]],
  ["---\na: 1\n", "{a: 1}", []],
  [
    "a: 1\n---\nb: 2\n---\nc: 3\n",
    "{a: 1, b: 2, c: 3}",
    ["several-documents at '---'", "several-documents at '---'"],
  ],
  ["? a\n: 1\nb: 2\n", "{a: 1, b: 2}", ["explicit-key at '?'"]],
  [
    "[x, y]: 1\na: {[z]: 2, b: 3}\n",
    "{a: {b: 3}}",
    ["collection-key at '[x, y]'", "collection-key at '[z]'"],
  ],
  [": 1\na: 2\n", "{a: 2}", ["empty-key at ':'"]],
  ["a: &x {b: 1}\nc:\n  <<: *x\n  d: 2\n", "{a: {b: 1}, c: {d: 2}}", ["merge-key at '<<'"]],
  ["'<<': 1\n", "{<<: 1}", []],
  ["- a\n- b\n", "{}", ["top-level-list at '- a'"]],
  ["[a, b]\n", "{}", ["top-level-list at '[a, b]'"]],
  ["|\n  a\n", "{}", ["top-level-value at '|'"]],
  ["{a: 1, b: [2]}\n", "{a: 1, b: [2]}", []],
])("parts of YAML that records do not use: %j", (text, tree, features) => {
  const reading = read(text);
  const said = reading.problems.map(
    ({ facts, span }) => `${facts.feature} at '${text.slice(span.start, span.end)}'`,
  );
  expect(brief(reading.root)).toBe(tree);
  expect(said).toEqual(features);
});

describe("keys that are there twice", () => {
  const text = "a: 1\nb:\n  c: 1\n  d: 2\n  'c': 3\n\na: 2\nlist:\n  - e: 1\n    e: 2\n    e: 3\n";

  test("are said at the second, with the line of the first", () => {
    const reading = read(text);
    expect(marked(reading)).toEqual([
      "key-duplicate at ''c''",
      "key-duplicate at 'a'",
      "key-duplicate at 'e'",
      "key-duplicate at 'e'",
    ]);
    expect(reading.problems.map(({ facts }) => facts)).toEqual([
      { key: "c", line: 3 },
      { key: "a", line: 1 },
      { key: "e", line: 9 },
      { key: "e", line: 9 },
    ]);
    for (const { node, span } of reading.problems) expect(reading.spanOf(node!)).toEqual(span);
  });

  test("in an item that moved have their line there", () => {
    const after = read(`\n\n${text}`, read(text));
    expect(after.problems.map(({ facts }) => facts.line)).toEqual([5, 3, 11, 11]);
  });
});

describe("conflict markers", () => {
  const text = [
    "w:",
    "<<<<<<< ours",
    "- a",
    "||||||| base",
    "- gone",
    "=======",
    "- b",
    ">>>>>>> theirs",
    "- c",
    "<<<<<<< ours",
    "=======",
    "x: 1",
    ">>>>>>> theirs",
    "",
  ].join("\n");

  test("are said once for each conflict, and both sides are read", () => {
    expect(outcome(text)).toEqual([
      "{w: [a, b, c], x: 1}",
      "text-merge-conflict at '<<<<<<< ours'",
      "text-merge-conflict at '<<<<<<< ours'",
    ]);
    expect(outcome(text.replaceAll("\n", "\r\n"))).toEqual(outcome(text));
  });

  test("left alone by a half-done merge are said each", () => {
    expect(outcome("a: 1\n=======\nb: 2\n>>>>>>> theirs\n")).toEqual([
      "{a: 1, b: 2}",
      "text-merge-conflict at '======='",
      "text-merge-conflict at '>>>>>>> theirs'",
    ]);
  });

  test("are only what stands alone at the margin", () => {
    expect(outcome("a: |\n  <<<<<<< x\n  =======\nb: <<<<<<<\n")).toEqual([
      "{a: <<<<<<< x\n=======\n, b: <<<<<<<}",
    ]);
    expect(outcome("a: 1\n======== b: 2\n")).not.toContain("text-merge-conflict at '======='");
  });
});

describe("tabs", () => {
  test("in the indentation are said, and read as a space each", () => {
    expect(outcome("w:\n\t- a: 1\n\t  b: 2\nx: 3\n")).toEqual([
      "{w: [{a: 1, b: 2}], x: 3}",
      "text-tab-indent at '\t'",
      "text-tab-indent at '\t  '",
    ]);
  });

  test("on blank lines, before comments and after content do no harm", () => {
    expect(outcome("a:\t1\n\t\n\t# c\nb: 2\t# d\n")).toEqual(["{a: 1, b: 2}"]);
  });

  test("inside of a block scalar are content", () => {
    expect(outcome("a: |\n  x\n  \ty\n \tz\nb: 1\n")).toEqual([
      "{a: x\n\ty\nz\n, b: 1}",
      "text-tab-indent at '\t'",
    ]);
    expect(outcome("a: |\n\tx\n")).toEqual(["{a: x\n}", "text-tab-indent at '\t'"]);
  });
});

describe("limits", () => {
  test("of problems: the first ones of each rule are kept, and the last of them counts the others", () => {
    const many = limits.findingsPerRule + 23;
    for (const text of ["k: @\n".repeat(many), `m:\n${"  k: @\n".repeat(many)}`]) {
      const problems = read(text).problems;
      const syntax = problems.filter(({ rule }) => rule === "text-not-yaml");
      expect(syntax).toHaveLength(limits.findingsPerRule);
      expect(syntax.map(({ facts }) => facts.omitted ?? 0)).toEqual([
        ...new Array(limits.findingsPerRule - 1).fill(0),
        23,
      ]);
      expect(problems.filter(({ rule }) => rule === "key-duplicate").at(-1)!.facts.omitted).toBe(22);
    }
  });

  test("of nesting: the item at fault has no value, and the others are read", () => {
    const deep = (levels: number) => `${"[".repeat(levels)}x${"]".repeat(levels)}`;
    // The root map is the first level.
    expect(outcome(`a: ${deep(limits.nestingDepth - 1)}\nb: 1\n`)[1]).toBeUndefined();
    expect(outcome(`a: ${deep(limits.nestingDepth)}\nb: 1\n`)).toEqual([
      "{a: ~, b: 1}",
      "text-too-deep at '['",
    ]);
    expect(outcome(`w:\n- a: 1\n- b: ${deep(limits.nestingDepth)}\n- c: 3\n`)).toEqual([
      "{w: [{a: 1}, ~, {c: 3}]}",
      "text-too-deep at '['",
    ]);
    expect(read(`a: ${deep(90)}\n`).problems[0]!.facts).toEqual({ limit: limits.nestingDepth });
  });

  test("of nesting: aliases do not get around it", () => {
    const half = limits.nestingDepth / 2;
    const nest = (inner: string) => "[".repeat(half) + inner + "]".repeat(half);
    expect(marked(read(`a: &a ${nest("x")}\nb: ${nest("*a")}\n`))).toEqual(["text-too-deep at '*a'"]);
  });

  test("of length: nothing is read", () => {
    const text = `a: ${"x".repeat(limits.recordLength)}`;
    const reading = read(text);
    expect(reading.root.entries).toEqual([]);
    expect(reading.problems).toEqual([
      {
        rule: "text-too-large",
        span: { start: 0, end: 0 },
        facts: { length: text.length, limit: limits.recordLength },
      },
    ]);
    expect(brief(read("a: 1\n", reading).root)).toBe("{a: 1}");
  });

  test("of items: a text with more is read as one", () => {
    const reading = read(`w:\n${"- a\n".repeat(limits.separateItems + 1)}`);
    expect(reading.items).toHaveLength(1);
    expect(reading.root.entries[0]!.value).toMatchObject({
      kind: "list",
      entries: { length: limits.separateItems + 1 },
    });
  });
});
