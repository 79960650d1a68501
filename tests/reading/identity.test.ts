import { expect, test } from "vitest";
import { type Node, type Reading, read } from "../../server/src/core/reading";
import { absolute, brief, nodesIn } from "./outline";

const text = [
  "# A record",
  "document:",
  "  number: D-1",
  "wires: # all of them",
  "  - id: W1",
  "    gauge: 20 AWG",
  "",
  "  # the long one",
  "  - id: W2",
  "    gauge: 8 AWG",
  "  - id: W1",
  "    gauge: 20 AWG",
  "",
  "plan:",
  "- a",
  "- b",
  "",
].join("\n");

const itemTexts = [
  "# A record\n",
  "document:\n  number: D-1\n",
  "wires: # all of them\n",
  "  - id: W1\n    gauge: 20 AWG\n\n  # the long one\n",
  "  - id: W2\n    gauge: 8 AWG\n",
  "  - id: W1\n    gauge: 20 AWG\n\n",
  "plan:\n",
  "- a\n",
  "- b\n",
];

/** Node at a path of keys and indices. */
function at(reading: Reading, ...path: (string | number)[]): Node {
  return path.reduce<Node>((node, step) => {
    const found =
      node.kind === "map"
        ? node.entries.find(({ key }) => key.text === step)?.value
        : node.kind === "list" && typeof step === "number"
          ? node.entries[step]
          : undefined;
    if (!found) throw new Error(`No ${step} in ${brief(node)}`);
    return found;
  }, reading.root);
}

test("a text is cut at its top-level keys and at the entries of their lists", () => {
  expect(read(text).items.map((item) => item.text)).toEqual(itemTexts);
});

test("an unchanged text gives the same reading", () => {
  const reading = read(text);
  expect(read(`${text}`, reading)).toBe(reading);
});

test("only the item with the edit is new", () => {
  const before = read(text);
  const after = read(text.replace("8 AWG", "10 AWG"), before);
  expect(after.items.map((item, index) => item === before.items[index])).toEqual([
    ...[true, true, true, true, false, true, true, true, true],
  ]);
  expect(at(after, "wires", 0)).toBe(at(before, "wires", 0));
  expect(at(after, "wires", 1)).not.toBe(at(before, "wires", 1));
  expect(at(after, "wires", 2)).toBe(at(before, "wires", 2));
  expect(at(after, "plan"), "a list of untouched items").toBe(at(before, "plan"));
  expect(at(after, "wires")).not.toBe(at(before, "wires"));
});

test("an item keeps its nodes while its place moves", () => {
  const before = read(text);
  const after = read(text.replace("D-1", "D-1234"), before);
  const node = at(after, "wires", 1, "gauge");
  expect(node).toBe(at(before, "wires", 1, "gauge"));
  const { start, end } = after.spanOf(node);
  expect(after.text.slice(start, end)).toBe("8 AWG");
  expect(start).toBe(before.spanOf(node).start + 3);
});

test.each([
  ["a remark", "8 AWG", "8 AWG # as measured"],
  ["spaces", "gauge: 8 AWG", "gauge:    8 AWG"],
  ["an empty line", "    gauge: 8 AWG", "\n    gauge: 8 AWG"],
  ["a remark of the header", "# all of them", "# all of them, and the spares"],
  ["a remark before the entry", "# the long one", "#"],
])("%s moves the nodes of an item, and makes no others", (_, old, now) => {
  const before = read(text);
  let after = before;
  // The second edit meets nodes that were taken over by the first.
  for (const edited of [text.replace(old, now), text.replace(old, now).replace(now, `${now} # x`)]) {
    after = read(edited, after);
    expect(absolute(after)).toEqual(absolute(read(edited)));
    expect(at(after, "wires", 1)).toBe(at(before, "wires", 1));
    expect(after.items.map((item) => item.text).join("")).toBe(edited);
  }
  expect(absolute(before)).toEqual(absolute(read(text)));
});

test("a list whose header and entries change by as much stands where it stands", () => {
  const before = read(text);
  const edited = text.replace("# all of them", "#").replace("# the long one", "# the long one, with a spare");
  const after = read(edited, before);
  expect(absolute(after)).toEqual(absolute(read(edited)));
});

test.each([
  ["another value", "8 AWG", "6 AWG"],
  ["another style", "8 AWG", '"8 AWG"'],
  ["another key", "    gauge: 8 AWG", "    gage: 8 AWG"],
  ["one key more", "    gauge: 8 AWG", "    gauge: 8 AWG\n    mark"],
  ["nothing for a value", "gauge: 8 AWG", "gauge:"],
])("%s makes an item anew", (_, old, now) => {
  const before = read(text);
  const after = read(text.replace(old, now), before);
  expect(at(after, "wires", 1)).not.toBe(at(before, "wires", 1));
});

test("equal texts at two places are two items", () => {
  const twins = read("a:\n- x: 1\n- x: 1\n- x: 1\n");
  expect(new Set(twins.items).size).toBe(4);
  expect(at(twins, "a", 0)).not.toBe(at(twins, "a", 1));
  const fewer = read("a:\n- x: 1\n- x: 1\n", twins);
  const more = read("a:\n- x: 1\n- y: 2\n- x: 1\n- x: 1\n- x: 1\n", fewer);
  expect(new Set(more.items).size).toBe(6);
  expect(at(more, "a", 0)).toBe(at(twins, "a", 0));
});

test("items that change places keep their identity", () => {
  const before = read("a: 1\nb: 2\nc: 3\nd: 4\n");
  const after = read("d: 4\nc: 3\nb: 2\na: 1\n", before);
  expect([...after.items].reverse()).toEqual(before.items);
  for (const [index, item] of [...after.items].reverse().entries()) expect(item).toBe(before.items[index]);
});

test("an item is not taken for one with the same text in another role", () => {
  const before = read("a:\n- x: 1\n");
  const after = read("- x: 1\n", before);
  expect(brief(after.root)).toBe("{}");
  expect(brief(read("a:\n- x: 1\n", after).root)).toBe("{a: [{x: 1}]}");
});

test("what had to be read whole for a while is read by items again", () => {
  const before = read(text);
  const withAnchor = read(text.replace("8 AWG", "&g 8 AWG"), before);
  expect(withAnchor.items).toHaveLength(1);
  const after = read(text, withAnchor);
  expect(after.items.map((item) => item.text)).toEqual(itemTexts);
  expect(after.items[1], "kept meanwhile").toBe(before.items[1]);
});

test("nodes of an item have offsets relative to it", () => {
  const reading = read(text);
  for (const node of nodesIn(reading.root)) {
    if (node === reading.root) continue;
    const start = itemTexts.slice(0, reading.items.indexOf(node.item)).join("").length;
    expect(reading.spanOf(node)).toEqual({ start: start + node.start, end: start + node.end });
  }
});

test("asking one reading for the place of another's node is a fault of the caller", () => {
  const one = read("a: 1\n");
  const other = read("a: 1\n");
  expect(() => other.spanOf(at(one, "a"))).toThrow(RangeError);
});

test.each([
  ["anchors and aliases", "a: &x 1\nb: *x\n"],
  ["document markers", "---\na: 1\nb: 2\n"],
  ["directives", "%YAML 1.2\n---\na: 1\nb: 2\n"],
  ["conflict markers", "<<<<<<< x\na: 1\n=======\nb: 2\n>>>>>>> y\n"],
  ["explicit keys", "? a\n: 1\nb: 2\n"],
  ["brackets at the margin", "a:\n{ b: 1,\nc: 2 }\nd: 3\n"],
  ["a quote open at the margin", 'a: 1\n"b\nc": 2\nd: 3\n'],
  ["an indented first key", "  a: 1\n  b: 2\n"],
])("a text with %s is one item", (_what, whole) => {
  expect(read(whole).items.map((item) => item.text)).toEqual([whole]);
});

test.each([
  ["quoted keys", "a: 1\n'b': 2\nc: 3\n", ["a: 1\n'b': 2\n", "c: 3\n"]],
  ["brackets closed at the margin", "a: [\n  x,\n]\nb: 2\n", ["a: [\n  x,\n]\n", "b: 2\n"]],
  ["a byte order mark", "\uFEFFa: 1\nb: 2\n", ["\uFEFFa: 1\n", "b: 2\n"]],
  ["tabs, laid out,", "a:\n\tb: 1\nc: 2\n", ["a:\n  b: 1\n", "c: 2\n"]],
  ["lone carriage returns", "a: 1\rb: 2\r", ["a: 1\r", "b: 2\r"]],
  ["numbers as keys", "1: a\n02: b\n", ["1: a\n", "02: b\n"]],
  ["keys that objects inherit", "__proto__: a\nconstructor: b\n", ["__proto__: a\n", "constructor: b\n"]],
  ["tags", "a: !!str 1\nb: 2\n", ["a: !!str 1\n", "b: 2\n"]],
  ["unclosed brackets", "a: [1\nb: [\n  - c\n", ["a: [1\n", "b: [\n  - c\n"]],
  ["a list with a stray line", "a:\n  - x\n  y\nb: 1\n", ["a:\n  - x\n  y\n", "b: 1\n"]],
])("a text with %s is still cut", (_what, whole, pieces) => {
  expect(read(whole).items.map((item) => item.text)).toEqual(pieces);
});

test("an entry, and a copy of it that has a remark, are two", () => {
  const before = read("wires:\n- id: W1\n- id: W2\n");
  const after = read("wires:\n- id: W1 # one\n- id: W1\n", before);
  const [first, second] = [at(after, "wires", 0), at(after, "wires", 1)];
  expect(first).not.toBe(second);
  expect([after.spanOf(first).start, after.spanOf(second).start]).toEqual([9, 24]);
});
