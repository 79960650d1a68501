import { expect, test } from "vitest";
import { Draft } from "../../server/src/core/edits/draft";
import { applyEdits } from "../../server/src/core/edits/text-edit";
import { fc } from "../support/random";

const steps = fc.array(
  fc.array(fc.tuple(fc.nat(40), fc.nat(5), fc.string({ maxLength: 4 })), { minLength: 1, maxLength: 3 }),
  { maxLength: 6 },
);

test("edits made one after the other are edits of the original, in order and apart", () => {
  fc.assert(
    fc.property(fc.string({ maxLength: 40 }), steps, (original, rounds) => {
      const draft = new Draft(original);
      let text = original;
      for (const round of rounds) {
        let done = 0;
        const edits = round
          .toSorted(([a], [b]) => a - b)
          .map(([at, length, newText]) => {
            const start = Math.min(Math.max(at, done), text.length);
            done = Math.min(start + length, text.length);
            return { start, end: done, newText };
          });
        text = applyEdits(text, edits);
        draft.apply(edits);
        expect(draft.text).toBe(text);
      }
      const edits = draft.edits();
      expect(applyEdits(original, edits)).toBe(text);
      for (const [index, { start, end }] of edits.entries()) {
        expect(end).toBeGreaterThanOrEqual(start);
        if (index > 0) expect(start).toBeGreaterThan(edits[index - 1]!.end);
      }
    }),
  );
});

test("what was changed back is no edit", () => {
  const draft = new Draft("gauge: 8 AWG");
  draft.apply([{ start: 7, end: 8, newText: "10" }]);
  expect(draft.edits()).toEqual([{ start: 7, end: 8, newText: "10" }]);
  draft.apply([{ start: 7, end: 9, newText: "8" }]);
  expect(draft.edits()).toEqual([]);
});
