import { expect, test } from "vitest";
import { nodeAt, read } from "../../server/src/core/reading";
import { brief } from "./outline";

/** The path to the `^` in a text, as keys and indices, and the deepest node. */
function pathTo(marked: string): string {
  const offset = marked.indexOf("^");
  const steps = nodeAt(read(marked.replace("^", "")), offset);
  const names = steps.slice(1).map(({ entry, index }) => entry?.key.text ?? String(index));
  return [...names, brief(steps.at(-1)!.node)].join(" > ");
}

test.each([
  ["^a: 1\n", "a > 1"],
  ["a^: 1\n", "a > 1"],
  ["a:^ 1\n", "a > 1"],
  ["a: 12^\n", "a > 12"],
  ["a: ^\n", "a > ~"],
  ["a:\n  - id: W^1\n    to: x\n", "a > 0 > id > W1"],
  ["a:\n  - id: W1\n    t^o: x\n", "a > 0 > to > x"],
  ["a:\n  ^- id: W1\n", "a > [{id: W1}]"],
  ["a:\n  - id: W1\n  - i^d: W2\nb: 1\n", "a > 1 > id > W2"],
  ["a: [b, {c: ^d}]\n", "a > 1 > c > d"],
  ["a: [b^, c]\n", "a > 0 > b"],
  ["a: [b,^ c]\n", "a > [b, c]"],
  ["a: {b: 1^}\n", "a > b > 1"],
  ["x: &n {y: 1}\na: *^n\n", "a > {y: 1}"],
])("the nodes at the cursor in %j", (marked, path) => {
  expect(pathTo(marked)).toBe(path);
});

test.each(["^\na: 1\n", "# c^\na: 1\n", "a: 1 ^# c\n", "a: 1\n\n^\n", "^"])(
  "none but the root in %j",
  (marked) => {
    const offset = marked.indexOf("^");
    expect(nodeAt(read(marked.replace("^", "")), offset)).toHaveLength(1);
  },
);

test("places outside of the text have no node but the root", () => {
  const reading = read("a: 1\n");
  for (const offset of [-1, 99]) expect(nodeAt(reading, offset)).toEqual([{ node: reading.root }]);
});
