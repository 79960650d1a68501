import { describe, expect, test } from "vitest";
import type { Change } from "../../server/src/core/edits/change";
import type { Content } from "../../server/src/core/edits/content";
import { editsFor } from "../../server/src/core/edits/edit";
import { applyEdits } from "../../server/src/core/edits/text-edit";
import { type MapNode, type Node, type Reading, read } from "../../server/src/core/reading";

/** The node that a path of keys and indices leads to. */
function at(reading: Reading, ...path: (string | number)[]): Node {
  let node: Node = reading.root;
  for (const step of path) {
    if (typeof step === "number") node = (node as Extract<Node, { kind: "list" }>).entries[step]!;
    else node = (node as MapNode).entries.find(({ key }) => key.text === step)!.value;
  }
  return node;
}

const place = (node: Node) => ({ file: "f", node });

function after(text: string, changes: (reading: Reading) => readonly Change[]): string | undefined {
  const reading = read(text);
  const edits = editsFor(changes(reading), reading);
  return edits && applyEdits(text, edits);
}

const withEntry = (text: string, list: string, ...entries: Content[]) =>
  after(text, ({ root }) => [{ place: place(root), list, entries }]);

const withKey = (text: string, path: (string | number)[], key: string, value: Content) =>
  after(text, (reading) => [{ place: place(at(reading, ...path)), key, value }]);

const B2 = { id: "B2", wires: "2", loading: "60 %", ambient: undefined };
const line = "- { id: B2, wires: 2, loading: 60 % }";

describe("an entry of a list of the record", () => {
  test.each([
    ["below entries in brackets", "b:\n  - { id: B1 }\n", `b:\n  - { id: B1 }\n  ${line}\n`],
    [
      "below entries in lines, as they are",
      "b:\n  - id: B1\n    wires: 3\nc: 1\n",
      "b:\n  - id: B1\n    wires: 3\n  - id: B2\n    wires: 2\n    loading: 60 %\nc: 1\n",
    ],
    ["at the key's own indent", "b:\n- { id: B1 }\nc: 1\n", `b:\n- { id: B1 }\n${line}\nc: 1\n`],
    [
      "behind a comment",
      "b:\n  - { id: B1 } # one\n\nc: 1\n",
      `b:\n  - { id: B1 } # one\n  ${line}\n\nc: 1\n`,
    ],
    [
      "before comments that follow",
      "b:\n  - { id: B1 }\n  # more?\n\n# c\nc: 1\n",
      `b:\n  - { id: B1 }\n  ${line}\n  # more?\n\n# c\nc: 1\n`,
    ],
    ["at the end of the file", "b:\n  - { id: B1 }", `b:\n  - { id: B1 }\n  ${line}`],
    [
      "with its line breaks",
      "b:\r\n  - { id: B1 }\r\nc: 1\r\n",
      `b:\r\n  - { id: B1 }\r\n  ${line}\r\nc: 1\r\n`,
    ],
    ["after a byte order mark", "\uFEFFb:\n- { id: B1 }\n", `\uFEFFb:\n- { id: B1 }\n${line}\n`],
    [
      "with a blank line, where all have one",
      "b:\n  - { id: B0 }\n\n  # the other\n  - { id: B1 }\n",
      `b:\n  - { id: B0 }\n\n  # the other\n  - { id: B1 }\n\n  ${line}\n`,
    ],
    ["in brackets", "b: [{ id: B1 }]\n", "b: [{ id: B1 }, { id: B2, wires: 2, loading: 60 % }]\n"],
    ["in empty brackets", "b: []\n", "b: [{ id: B2, wires: 2, loading: 60 % }]\n"],
    ["in brackets with a space", "b: [ ]\n", "b: [ { id: B2, wires: 2, loading: 60 % } ]\n"],
    [
      "in brackets that are not closed yet",
      "b: [{ id: B1 }\n",
      "b: [{ id: B1 }, { id: B2, wires: 2, loading: 60 % }\n",
    ],
    [
      "in brackets with a comma at the end",
      "b: [{ id: B1 },]\n",
      "b: [{ id: B1 }, { id: B2, wires: 2, loading: 60 % },]\n",
    ],
    [
      "in brackets over lines",
      "b: [\n  { id: B1 }, # one\n]\n",
      "b: [\n  { id: B1 }, # one\n  { id: B2, wires: 2, loading: 60 % },\n]\n",
    ],
    [
      "in brackets over lines, without a comma",
      "b: [\n  { id: B1 } # one\n]\n",
      "b: [\n  { id: B1 }, # one\n  { id: B2, wires: 2, loading: 60 % }\n]\n",
    ],
    ["below a key that has nothing", "b:\nc: 1\n", `b:\n  ${line}\nc: 1\n`],
    ["below a key that has a comment", "b: # none\nc: 1\n", `b: # none\n  ${line}\nc: 1\n`],
    ["below a key that has nothing, as others are", "b:\nc:\n- a\n", `b:\n${line}\nc:\n- a\n`],
    ["below a key at the end", "b:", `b:\n  ${line}`],
    ["in a new section", "a: 1\nc: 2\n", `a: 1\nc: 2\nb:\n  ${line}\n`],
    ["in a new section, apart as others are", "a: 1\n\nc: 2\n", `a: 1\n\nc: 2\n\nb:\n  ${line}\n`],
    ["in a new section, behind all", "a: 1\nc:\n  - x\n  # end", `a: 1\nc:\n  - x\n  # end\nb:\n  ${line}`],
    ["in a new section of a record with a margin", "  a: 1\n", `  a: 1\n  b:\n    ${line}\n`],
    ["in an empty record", "", `b:\n  ${line}\n`],
    ["in a record of comments", "# to do\n", `# to do\nb:\n  ${line}\n`],
    ["after a block text", "c: |\n  one\n\n", `c: |\n  one\nb:\n  ${line}\n\n`],
  ])("%s", (_, before, expected) => {
    expect(withEntry(before, "b", B2)).toBe(expected);
  });

  test("of several at once", () => {
    expect(withEntry("b:\n  - x\n", "b", "y", "z")).toBe("b:\n  - x\n  - y\n  - z\n");
    expect(withEntry("b: [x]\n", "b", "y", "z")).toBe("b: [x, y, z]\n");
    expect(withEntry("b: [\n  x\n]\n", "b", "y", "z")).toBe("b: [\n  x,\n  y,\n  z\n]\n");
    expect(withEntry("a: 1\n", "b", "y", "z")).toBe("a: 1\nb: [y, z]\n");
  });

  test.each([
    ["a value that is no list", "b: 1\n"],
    ["an alias", "a: &a\n  - x\nb: *a\n"],
    ["a text that keeps the lines behind it", "b:\n  - |+\n    x\n\nc: 1\n"],
    ["the end of the document", "b:\n  - x\n...\n"],
  ])("is not added to %s", (name, text) => {
    const expected = name.startsWith("the end") ? "b:\n  - x\n  - y\n...\n" : undefined;
    expect(withEntry(text, "b", "y")).toBe(expected);
  });
});

describe("a key of a map", () => {
  test.each([
    [
      "in lines",
      "w:\n  - id: W1\n    to: X\n  - id: W2\n",
      "w:\n  - id: W1\n    to: X\n    b: B2\n  - id: W2\n",
    ],
    ["in brackets", "w:\n  - { id: W1, to: X } # one\n", "w:\n  - { id: W1, to: X, b: B2 } # one\n"],
    ["in tight brackets", "w:\n  - {id: W1}\n", "w:\n  - {id: W1, b: B2}\n"],
    ["in empty brackets", "w:\n  - {}\n", "w:\n  - { b: B2 }\n"],
    [
      "in brackets over lines",
      "w:\n  - {\n      id: W1,\n      to: X,\n    }\n",
      "w:\n  - {\n      id: W1,\n      to: X,\n      b: B2,\n    }\n",
    ],
    ["that has nothing", "w:\n  - id: W1\n    b:\n    to: X\n", "w:\n  - id: W1\n    b: B2\n    to: X\n"],
    ["that has a comment", "w:\n  - id: W1\n    b: # ?\n", "w:\n  - id: W1\n    b: B2 # ?\n"],
    ["that has nothing in brackets", "w:\n  - { id: W1, b: }\n", "w:\n  - { id: W1, b: B2 }\n"],
    ["that has no colon", "w:\n  - { b, id: W1 }\n", "w:\n  - { b: B2, id: W1 }\n"],
    [
      "after a key that has nothing",
      "w:\n  - id: W1\n    to:\nc: 1\n",
      "w:\n  - id: W1\n    to:\n    b: B2\nc: 1\n",
    ],
    [
      "after a list",
      "w:\n  - id: W1\n    to:\n    - x # y\n",
      "w:\n  - id: W1\n    to:\n    - x # y\n    b: B2\n",
    ],
  ])("%s", (_, before, expected) => {
    expect(withKey(before, ["w", 0], "b", "B2")).toBe(expected);
  });

  test("with more than one word", () => {
    const text = "w:\n  - id: W1\n";
    expect(withKey(text, ["w", 0], "at", { x: "1 in", y: "2 in" })).toBe(
      `${text}    at: { x: 1 in, y: 2 in }\n`,
    );
    expect(withKey(text, ["w", 0], "passes", [{ by: "fuel-line" }])).toBe(
      `${text}    passes:\n      - { by: fuel-line }\n`,
    );
    expect(withKey("w: { a: 1 }\n", ["w"], "l", ["x", { y: "1" }])).toBe("w: { a: 1, l: [x, { y: 1 }] }\n");
  });

  test("is not added where it is, or to an alias", () => {
    expect(withKey("w: { b: 1 }\n", ["w"], "b", "2")).toBeUndefined();
    expect(withKey("v: &v { a: 1 }\nw: *v\n", ["w"], "b", "2")).toBeUndefined();
  });
});

test.each([
  "",
  " x",
  "x: y",
  "x #y",
  "#",
  "- x",
  "-",
  "~x",
  "it's",
  "'q'",
  "a, b",
  "[",
  "tab\there",
  "two\nlines",
  "ü",
  "{}",
])("%j is written so that it is read again", (text) => {
  for (const before of ["l:\n  - x\n", "l: [x]\n", "l:\n"]) {
    const mended = withEntry(before, "l", text);
    expect((at(read(mended!), "l") as Extract<Node, { kind: "list" }>).entries.at(-1)).toMatchObject({
      text,
    });
  }
});

test("a long entry is written in lines", () => {
  const long = { id: "B2", note: "x".repeat(60), at: { x: "1 in", y: "y".repeat(60) } };
  expect(withEntry("b:\n  - { id: B1 }\n", "b", long)).toBe(
    `b:\n  - { id: B1 }\n  - id: B2\n    note: ${long.note}\n    at: { x: 1 in, y: ${long.at.y} }\n`,
  );
});

describe("several changes", () => {
  test("at one place keep their order: the value, the list, the record", () => {
    const text = "w:\n  - id: W1\n    b:";
    const mended = after(text, (reading) => [
      { place: place(reading.root), list: "bundles", entries: [{ id: "B2" }] },
      { place: place(reading.root), list: "w", entries: [{ id: "W2" }] },
      { place: place(at(reading, "w", 0)), key: "to", value: "X" },
      { place: place(at(reading, "w", 0)), key: "b", value: "B2" },
    ]);
    expect(mended).toBe("w:\n  - id: W1\n    b: B2\n    to: X\n  - id: W2\nbundles:\n  - { id: B2 }");
  });

  test("that meet are none", () => {
    const twice = after("a: 1\n", (reading) => [
      { place: place(at(reading, "a")), text: "2" },
      { place: place(at(reading, "a")), text: "3" },
    ]);
    expect(twice).toBeUndefined();
  });

  test("of what an alias stands for, seen at both places", () => {
    const text = "a: &a { b: 1 }\nc: *a\n";
    const mended = after(text, (reading) => [{ place: place(at(reading, "a", "b")), text: "2" }]);
    expect(mended).toBe("a: &a { b: 2 }\nc: *a\n");
  });
});

test("a text that would say something else is not put in", () => {
  expect(
    after("a: [1, 2]\n", (reading) => [{ place: place(at(reading, "a", 0)), text: "x, y" }]),
  ).toBeUndefined();
  expect(after("a: 1\n", (reading) => [{ place: place(at(reading, "a")), text: "1 # y" }])).toBe(
    "a: 1 # y\n",
  );
});

describe("what is taken out", () => {
  const without = (text: string, parent: (string | number)[], step: string | number) =>
    after(text, (reading) => [
      { place: place(at(reading, ...parent)), removed: place(at(reading, ...parent, step)) },
    ]);

  test.each([
    ["an entry", "l:\n  - a\n  - b # b\n  - c\n", 1, "l:\n  - a\n  - c\n"],
    ["the first", "l:\n  - a\n  # c\n  - c\n", 0, "l:\n  # c\n  - c\n"],
    ["the last of a file", "l:\n  - a\n  - x: 1\n    y: 2", 1, "l:\n  - a"],
    ["the last of a file with CRLF", "l:\r\n  - a\r\n  - b", 1, "l:\r\n  - a"],
    ["in brackets", "l: [a, b, c]\n", 1, "l: [a, c]\n"],
    ["the first in brackets", "l: [a, b, c]\n", 0, "l: [b, c]\n"],
    ["the only one in brackets", "l: [a]\n", 0, "l: []\n"],
    ["the only one", "l:\n  - a\n", 0, undefined],
    ["with a comment between", "l: [a, # a\n  b]\n", 1, undefined],
  ])("%s", (_, text, index, expected) => {
    expect(without(text, ["l"], index)).toBe(expected);
  });

  test.each([
    ["a key", "w:\n  - id: W1\n    b: x # y\n    to: X\n", "b", "w:\n  - id: W1\n    to: X\n"],
    ["the first behind a dash", "w:\n  - id: W1\n    b: x\n", "id", "w:\n  - b: x\n"],
    ["in brackets", "w:\n  - { id: W1, b: x }\n", "b", "w:\n  - { id: W1 }\n"],
    [
      "with lines below it",
      "w:\n  - id: W1\n    b:\n      - x\n    to: X\n",
      "b",
      "w:\n  - id: W1\n    to: X\n",
    ],
  ])("%s", (_, text, key, expected) => {
    expect(without(text, ["w", 0], key)).toBe(expected);
  });
});

describe("a value written anew", () => {
  const edits = (text: string, ...changes: readonly (readonly [key: string, text: string])[]) => {
    const reading = read(text);
    return editsFor(
      changes.map(([key, written]) => ({ place: place(at(reading, key)), text: written })),
      reading,
    );
  };

  test("is no edit where it stands there already", () => {
    expect(edits("x: 6 in\ny: 2 in\n", ["x", "6 in"], ["y", "3 in"])).toEqual([
      { start: 11, end: 15, newText: "3 in" },
    ]);
    expect(edits("x: 6 in\n", ["x", "6 in"])).toEqual([]);
  });
});
