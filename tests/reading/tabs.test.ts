import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { limits } from "../../server/src/core/limits";
import { read } from "../../server/src/core/reading";
import { brief, marked } from "./outline";

const demo = new URL("../../client/demo/survey-rack-0417.install.yaml", import.meta.url);
const record = readFileSync(demo, "utf8");
const tree = brief(read(record).root);

/** Indentations of lines with content. */
const indentations = /(?<=\n) +(?=[^\s#])/g;

/** What stands in place of the spaces of an indentation. */
type Tabbed = (spaces: string) => string;

const tabsOf =
  (width: number): Tabbed =>
  ({ length }) =>
    "\t".repeat(length / width) + " ".repeat(length % width);

describe.each<[string, Tabbed]>([
  ["one tab", () => "\t"],
  ["tabs of four", tabsOf(4)],
  ["tabs of two", tabsOf(2)],
])("%s in place of spaces", (_what, tabbed) => {
  const wires = record.slice(record.indexOf("\nwires:") + 1, record.indexOf("\nbonds:") + 1);

  test("before any one line of the wires changes nothing but that it is told", () => {
    const untouched = brief(read(wires).root);
    let count = 0;
    for (const { 0: spaces, index } of wires.matchAll(indentations)) {
      const text = wires.slice(0, index) + tabbed(spaces) + wires.slice(index + spaces.length);
      if (!text.includes("\t")) continue;
      const reading = read(text);
      expect(
        reading.problems.map(({ rule }) => rule),
        text,
      ).toEqual(["text-tab-indent"]);
      expect(brief(reading.root)).toBe(untouched);
      count++;
    }
    expect(count).toBeGreaterThan(30);
  });
});

test.each([2, 4])("a record that is indented with tabs of %d alone is read as it was", (width) => {
  const reading = read(record.replace(indentations, tabsOf(width)));
  expect(brief(reading.root)).toBe(tree);
  const told = reading.problems.filter(({ rule }) => rule === "text-tab-indent");
  expect(told).toHaveLength(limits.findingsPerRule);
  expect(told.at(-1)!.facts.omitted).toBeGreaterThan(0);
  expect(reading.problems).toEqual(told);
});

test.each([
  [
    "an entry that its next line belongs to",
    "w:\n  - p:\n      - a\n\t- p: 1\n    q: 2\n",
    "{w: [{p: [a]}, {p: 1, q: 2}]}",
  ],
  ["an entry of the inner list", "w:\n  - p:\n      - a\n\t- b\n  - q: 1\n", "{w: [{p: [a, b]}, {q: 1}]}"],
  ["the first key of a map", "d:\n\tn: 1\n  r: 2\n", "{d: {n: 1, r: 2}}"],
  ["a key behind a blank", "w:\n  - g:\n\tl: 1\n    r: 2\n", "{w: [{g: ~, l: 1, r: 2}]}"],
  ["brackets over lines", "w:\n  - {\n\ta: 1,\n\t}\n  - b: 2\n", "{w: [{a: 1}, {b: 2}]}"],
  ["a list at the column of its key", "w:\n- a: 1\n\tb: 2\n- c: 3\n", "{w: [{a: 1, b: 2}, {c: 3}]}"],
  ["a value that goes on", "a: one\n\ttwo\nb: 1\n", "{a: one two, b: 1}"],
  ["tabs and spaces", "w:\n \t- a: 1\n \t  b: 2\n", "{w: [{a: 1, b: 2}]}"],
])("%s", (_what, text, expected) => {
  const reading = read(text);
  expect(brief(reading.root)).toBe(expected);
  expect(new Set(reading.problems.map(({ rule }) => rule))).toEqual(new Set(["text-tab-indent"]));
});

test("everything is found where it was written", () => {
  const text = "w:\n\t- a: 1\n\t\tb: [2\nc: 3\n";
  const reading = read(text);
  expect(marked(reading)).toEqual([
    "text-tab-indent at '\t'",
    "text-tab-indent at '\t\t'",
    "text-not-yaml at '['",
  ]);
  const list = reading.root.entries[0]!.value;
  const map = list.kind === "list" ? list.entries[0]! : list;
  const written = map.kind === "map" ? map.entries.flatMap(({ key, value }) => [key, value]) : [];
  expect(written.map((node) => text.slice(reading.spanOf(node).start, reading.spanOf(node).end))).toEqual([
    "a",
    "1",
    "b",
    "[2",
  ]);
});

test("a tab that is typed and taken out again leaves all nodes as they were", () => {
  const before = read("a: 1\nw:\n  - b: 1\n    c: 2\n");
  const tabbed = read("a: 1\nw:\n  - b: 1\n\tc: 2\n", before);
  expect(tabbed.root.entries[1]).toBe(before.root.entries[1]);
  expect(read(before.text, tabbed).root.entries[1]).toBe(before.root.entries[1]);
});
