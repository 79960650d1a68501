import { describe, expect, test } from "vitest";
import { type Node, read } from "../../server/src/core/reading";
import { brief, marked, nodesIn } from "./outline";

/** Every scalar as `style 'written text'`. */
function scalars(text: string): string[] {
  const reading = read(text);
  return [...nodesIn(reading.root)].flatMap((node) => {
    if (node.kind !== "scalar") return [];
    const { start, end } = reading.spanOf(node);
    return [`${node.style} '${text.slice(start, end)}'`];
  });
}

describe("values", () => {
  test.each(["1.10", "007", "1e3", "0x1F", "~", "true", "null", "-.5", "12:30", "14.5 ft", "a:b", "a#b"])(
    "a plain scalar stays as written: %s",
    (written) => {
      expect(brief(read(`a: ${written}\n`).root)).toBe(`{a: ${written}}`);
    },
  );

  test.each([
    ["'it''s'", "it's"],
    ['"a\\tb \\u00b0 \\"c\\""', 'a\tb ° "c"'],
    ["|\n  one\n\n    two\n", "one\n\n  two\n"],
    [">-\n  one\n  two\n\n  three\n", "one two\nthree"],
    ["one\n  two\n", "one two"],
    ["''", ""],
  ])("quotes, escapes and line breaks are resolved: %j", (written, text) => {
    expect(brief(read(`a: ${written}\n`).root)).toBe(`{a: ${text}}`);
  });

  test("scalars know how they were written", () => {
    expect(scalars("a: b\n'c': \"d\"\ne: |\n  f\n\ng:\n- h\n-\n")).toEqual([
      "plain 'a'",
      "plain 'b'",
      "quoted ''c''",
      "quoted '\"d\"'",
      "plain 'e'",
      "block '|\n  f'",
      "plain 'g'",
      "plain 'h'",
      "empty ''",
    ]);
  });

  test("flow and block collections read alike", () => {
    const flow = "a: {b: [1, {c: 2}], d: []}\ne: [f: 3]\n";
    const block = "a:\n  b:\n    - 1\n    - c: 2\n  d: []\ne:\n- f: 3\n";
    expect(brief(read(flow).root)).toBe("{a: {b: [1, {c: 2}], d: []}, e: [{f: 3}]}");
    expect(brief(read(block).root)).toBe(brief(read(flow).root));
  });

  test("keys that mean something to objects are keys like any other", () => {
    const reading = read("__proto__: 1\nconstructor:\n  toString: 2\nhasOwnProperty: 3\n");
    expect(brief(reading.root)).toBe("{__proto__: 1, constructor: {toString: 2}, hasOwnProperty: 3}");
    expect(reading.problems).toEqual([]);
    expect(marked(read("__proto__: 1\n__proto__: 2\n"))).toEqual(["key-duplicate at '__proto__'"]);
  });
});

describe("places", () => {
  /** Span of the value at the end of a path of keys and indices. */
  function spanAt(text: string, ...path: (string | number)[]) {
    const reading = read(text);
    let node: Node = reading.root;
    for (const step of path) {
      node =
        node.kind === "map"
          ? node.entries.find(({ key }) => key.text === step)!.value
          : (node as { entries: readonly Node[] }).entries[Number(step)]!;
    }
    return reading.spanOf(node);
  }

  function textAt(text: string, ...path: (string | number)[]) {
    const { start, end } = spanAt(text, ...path);
    return text.slice(start, end);
  }

  const text = "\n# head\nwires: # w\n  - id: W1\n    ends: [a, b]  # e\n\n  - id: W2\n\n# tail\nlast: x\n";

  test("of collections: from the first key, dash or bracket to the end of the last value", () => {
    expect(textAt(text, "wires")).toBe("- id: W1\n    ends: [a, b]  # e\n\n  - id: W2");
    expect(textAt(text, "wires", 0)).toBe("id: W1\n    ends: [a, b]");
    expect(textAt(text, "wires", 0, "ends")).toBe("[a, b]");
    expect(textAt("a: {b: 1 }\n", "a")).toBe("{b: 1 }");
    expect(textAt("a:\n  b:\n", "a")).toBe("b:");
  });

  test("of the root: nothing, at the first key", () => {
    const reading = read(text);
    const start = text.indexOf("wires");
    expect(reading.spanOf(reading.root)).toEqual({ start, end: start });
    expect(read("# nothing\n").root).toMatchObject({ start: 0, end: 0, entries: [] });
  });

  test.each([
    ["a:\n", 2],
    ["a: \n", 3],
    ["a:    \n", 3],
    ["a: # c\n", 3],
    ["a:\t\n", 2],
    ["a:", 2],
    ["a:\n\n\nb: 1\n", 2],
    ["a", 1],
    ["a # c\n", 1],
  ])("of a value that is missing in %j: where it belongs", (missing, start) => {
    expect(spanAt(missing, "a")).toEqual({ start, end: start });
  });

  test.each([
    ["a:\n-\n", 4],
    ["a:\n  - \n", 7],
    ["a:\n  -\n  - x\n", 6],
    ["a:\n  -    # c\n", 7],
  ])("of a list entry that is missing in %j: after its dash", (missing, start) => {
    expect(spanAt(missing, "a", 0)).toEqual({ start, end: start });
  });

  test("of values missing in brackets: after the colon, or the key without one", () => {
    expect(spanAt("a: {b: , c}\n", "a", "b")).toEqual({ start: 7, end: 7 });
    expect(spanAt("a: {b: , c}\n", "a", "c")).toEqual({ start: 10, end: 10 });
  });

  test("of comments: from the sign to the end of the line, in order", () => {
    const { comments } = read(text);
    expect(comments.map(({ start, end }) => text.slice(start, end))).toEqual([
      "# head",
      "# w",
      "# e",
      "# tail",
    ]);
    expect(read("a: '#b'\nc: |\n  # d\ne: f#g\n").comments).toEqual([]);
  });

  test("with a byte order mark and line breaks of every kind", () => {
    const mixed = "\uFEFFa: x\r\nb: |\r\n  y\r\n\rc:\n- z\r";
    expect(brief(read(mixed).root)).toBe("{a: x, b: y\n, c: [z]}");
    expect([textAt(mixed, "a"), textAt(mixed, "b"), textAt(mixed, "c", 0)]).toEqual(["x", "|\r\n  y", "z"]);
  });
});

describe("aliases", () => {
  test("stand for a copy of what was anchored, at the place of the alias", () => {
    const text = "base: &b {gauge: 20, ends: [x]}\nwire: *b\n";
    const reading = read(text);
    expect(brief(reading.root)).toBe("{base: {gauge: 20, ends: [x]}, wire: {gauge: 20, ends: [x]}}");
    const [base, wire] = reading.root.entries;
    expect(wire!.value.aliasOf).toBe(base!.value);
    for (const node of nodesIn(wire!.value)) {
      const { start, end } = reading.spanOf(node);
      expect(text.slice(start, end)).toBe("*b");
    }
    expect(reading.problems).toEqual([]);
  });

  test("stand for the latest anchor of that name before them", () => {
    expect(brief(read("a: &x 1\nb: *x\nc: &x 2\nd: *x\n*x : e\n").root)).toBe(
      "{a: 1, b: 1, c: 2, d: 2, 2: e}",
    );
  });

  test("to nothing are a problem and stand for nothing", () => {
    const reading = read("a: *x\nb: &x 1\n");
    expect(brief(reading.root)).toBe("{a: ~, b: 1}");
    expect(marked(reading)).toEqual(["text-not-yaml at '*x'"]);
    expect(reading.problems[0]!.facts).toEqual({
      code: "UNKNOWN_ALIAS",
      detail: "no anchor &x before this alias",
    });
  });

  test("to what they are part of do not loop", () => {
    const reading = read("a: &x\n  b: [*x]\n  c: 1\n");
    expect(brief(reading.root)).toBe("{a: {b: [~], c: 1}}");
    expect(reading.problems.map(({ facts }) => facts)).toEqual([{ feature: "self-reference" }]);
  });

  test("keep to their own document", () => {
    expect(marked(read("a: &x 1\n---\nb: *x\n"))).toEqual([
      "text-feature-not-used at '---'",
      "text-not-yaml at '*x'",
    ]);
  });
});
