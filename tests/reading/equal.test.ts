import fc from "fast-check";
import { expect, test } from "vitest";
import { read } from "../../server/src/core/reading";
import { readAsOneItem } from "../../server/src/core/reading/read";
import { absolute, editedText, recordText } from "./support";

const runs = Number(process.env["READING_RUNS"] ?? 1000);

test("reading item by item gives what reading the whole text gives", () => {
  fc.assert(
    fc.property(editedText, (texts) => {
      const text = texts.at(-1)!;
      expect(absolute(read(text))).toEqual(absolute(readAsOneItem(text)));
    }),
    { numRuns: runs },
  );
});
