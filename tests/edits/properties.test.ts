import { expect, test } from "vitest";
import type { Change } from "../../server/src/core/edits/change";
import type { Content } from "../../server/src/core/edits/content";
import { editsFor } from "../../server/src/core/edits/edit";
import { applyEdits, type TextEdit } from "../../server/src/core/edits/text-edit";
import { type MapNode, type Reading, read } from "../../server/src/core/reading";
import { recordText } from "../reading/arbitraries";
import { brief, nodesIn } from "../reading/outline";
import { fc } from "../support/random";

const numRuns = Number(process.env.EDITS_RUNS ?? 400);
const timeout = 60_000 + 20 * numRuns;

const entry: Content = { id: "NEW", "a b": "x: y, z", at: { x: "1 in" }, list: ["p", "q # r"] };
const briefEntry = "{id: NEW, a b: x: y, z, at: {x: 1 in}, list: [p, q # r]}";

/** Every addition that could be asked for in a text: a key to each map, an entry to each list under a key. */
function additionsTo(reading: Reading): Change[] {
  const maps = [...nodesIn(reading.root)].filter((node): node is MapNode => node.kind === "map");
  return maps.flatMap((node) => {
    const place = { file: "f", node };
    const lists = node.entries.filter(({ value }) => value.kind !== "map").map(({ key }) => key.text);
    return [
      { place, key: "new-key", value: "1 in" },
      { place, list: "new-list", entries: [entry, "x"] },
      ...lists.map((list) => ({ place, list, entries: [entry] })),
    ];
  });
}

test("the old tree and exactly the addition, every character kept", { timeout }, () => {
  let made = 0;
  let asked = 0;
  fc.assert(
    fc.property(recordText, fc.nat(1000), (text, pick) => {
      const reading = read(text);
      const additions = additionsTo(reading);
      const change = additions[pick % additions.length]!;
      asked++;
      const edits = editsFor([change], reading);
      if (!edits) return;
      made++;
      expect(withoutInsertions(text, edits)).toBe(text);
      const after = read(applyEdits(text, edits));
      expect(plain(without(brief(after.root)))).toBe(plain(brief(reading.root)));
      expect(after.problems.length).toBeLessThanOrEqual(reading.problems.length);
      expect(after.comments.map(({ start, end }) => after.text.slice(start, end))).toEqual(
        reading.comments.map(({ start, end }) => text.slice(start, end)),
      );
      if (text.includes("\r\n")) expect(after.text).not.toMatch(/[^\r]\n/);
    }),
    { numRuns },
  );
  expect(made, "else the property says little").toBeGreaterThan(asked * 0.6);
});

/** The text with what was put in taken out again. */
function withoutInsertions(text: string, edits: readonly TextEdit[]): string {
  expect(edits.every(({ start, end }) => start === end)).toBe(true);
  let after = applyEdits(text, edits);
  for (const { start, newText } of edits) after = after.slice(0, start) + after.slice(start + newText.length);
  return after;
}

/** A tree in one line without what was added, which stands last in its map or list. */
function without(tree: string): string {
  return tree
    .replace(/(?:, )?new-key: 1 in/, "")
    .replace(`new-list: [${briefEntry}, x]`, "new-list")
    .replace(/(?:, )?new-list(?=\})/, "")
    .replace(briefEntry, "new-entry")
    .replace(/(?:, )?new-entry(?=\])/, "");
}

/** What had nothing became a list. */
function plain(tree: string): string {
  return tree.replaceAll(/~|\[\]/g, "");
}
