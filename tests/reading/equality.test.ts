import { expect, test } from "vitest";
import { isMap, isScalar, isSeq, parseAllDocuments } from "yaml";
import { type Reading, read } from "../../server/src/core/reading";
import { readAsOneItem } from "../../server/src/core/reading/read";
import { fc } from "../support/random";
import { editedTexts, recordText } from "./arbitraries";
import { absolute, brief, children, nodesIn } from "./outline";

/** More runs than usual find what is left: READING_RUNS=50000 npx vitest run tests/reading/equality.test.ts */
const numRuns = Number(process.env.READING_RUNS ?? 300);
const timeout = 60_000 + 20 * numRuns;

test("item by item, whole, or from a reading before: the answer is the same", { timeout }, () => {
  let splitReadings = 0;
  fc.assert(
    fc.property(editedTexts, (texts) => {
      let previous: Reading | undefined;
      for (const text of texts) {
        const reading = read(text, previous);
        const answer = absolute(reading);
        expect(answer).toEqual(absolute(read(text)));
        expect(answer).toEqual(absolute(readAsOneItem(text)));
        if (reading.items.length > 1) splitReadings++;
        previous = reading;
      }
    }),
    { numRuns },
  );
  expect(splitReadings, "else the property says nothing").toBeGreaterThan(numRuns);
});

test("what is typed in a word or a remark is read as the parser reads it", { timeout }, () => {
  const typed = fc.tuple(
    fc.nat(),
    fc.constantFrom("7", "x", ".", " a", "-b", "/", ": b", " # c", ", d", "]", "'", "\u0001", "é", "", ""),
  );
  const text = recordText.map((one) => `${one}\nplace: { x: 14.5 ft, at: [ab, cd] } # seen\n`);
  fc.assert(
    fc.property(text, fc.array(typed, { minLength: 1, maxLength: 8 }), (first, strokes) => {
      let now = first;
      let previous = read(now);
      for (const [place, letters] of strokes) {
        const places = [...now.matchAll(/[\w#]/g)].map(({ index }) => index);
        const at = (places[place % Math.max(1, places.length)] ?? 0) + 1;
        // Letters are put in, or a letter is taken out.
        now = now.slice(0, letters ? at : at - 1) + letters + now.slice(at);
        const reading = read(now, previous);
        expect(absolute(reading)).toEqual(absolute(read(now)));
        previous = reading;
      }
    }),
    { numRuns },
  );
});

test("items tile the text, and nodes lie in order inside of their parents", { timeout }, () => {
  fc.assert(
    fc.property(editedTexts, (texts) => {
      const text = texts.at(-1)!;
      const reading = read(text);
      // Tabs in an indentation are read as spaces.
      expect(withoutIndentation(reading.items.map((item) => item.text).join(""))).toBe(
        withoutIndentation(text),
      );
      for (const { start, end } of [...reading.problems.map(({ span }) => span), ...reading.comments]) {
        expect(0 <= start && start <= end && end <= text.length).toBe(true);
        expect(text.slice(start, end)).not.toMatch(/[\r\n]/);
      }
      for (const node of nodesIn(reading.root)) {
        if (node.aliasOf) continue;
        let at = reading.spanOf(node).start;
        for (const child of children(node)) {
          const { start, end } = reading.spanOf(child);
          expect(start).toBeGreaterThanOrEqual(at);
          at = child.aliasOf ? start : end;
        }
        if (node !== reading.root) expect(reading.spanOf(node).end).toBeGreaterThanOrEqual(at);
      }
    }),
    { numRuns },
  );
});

test("a text that YAML accepts is read as YAML reads it, and without a problem", { timeout }, () => {
  let accepted = 0;
  fc.assert(
    fc.property(recordText, (text) => {
      const [document, second] = parseAllDocuments(text, { schema: "failsafe", uniqueKeys: false });
      if (!document || second || document.errors.length > 0) return;
      // A last line of spaces only, without a line break: we take it for a line, the library does not.
      if (/\n +$/.test(text)) return;
      accepted++;
      const reading = read(text);
      expect(reading.problems.filter(({ rule }) => rule !== "key-duplicate")).toEqual([]);
      expect(brief(reading.root)).toBe(document.contents ? briefYaml(document.contents) : "{}");
    }),
    { numRuns },
  );
  expect(accepted).toBeGreaterThan(numRuns / 2);
});

function withoutIndentation(text: string): string {
  return text.replace(/(?<=^|[\r\n])(\uFEFF?)[ \t]+/g, "$1");
}

/** What `brief` gives, from the library's own tree. */
function briefYaml(node: unknown): string {
  if (isMap(node)) {
    return `{${node.items.map(({ key, value }) => `${briefYaml(key)}: ${briefYaml(value)}`).join(", ")}}`;
  }
  if (isSeq(node)) return `[${node.items.map(briefYaml).join(", ")}]`;
  if (isScalar(node) && (node.type !== "PLAIN" || node.source)) return node.source ?? "";
  return "~";
}
