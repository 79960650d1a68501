import { dimensions } from "../../quantities";
import type { RecordFacts } from "../../records/problem-facts";
import { wireExample } from "../example-record";
import { defineRule, rewrite } from "../rule";
import { listWords, nameOf, quote, sentence } from "../wording";
import { unitChoice } from "./quantity-words";

export const quantityUnitUnknown = defineRule<RecordFacts["quantity-unit-unknown"]>({
  id: "quantity-unit-unknown",
  severity: "error",
  area: "record",
  title: "A unit is written as no unit is",
  why:
    "A unit that can't be read can't be converted, and what it belongs to drops out of every sum. Guessing it " +
    "would be worse: in, mm and mil are a slip of the finger apart.",
  sources: [],
  say: ({ text, wrong, expected, nearest, ...where }) => ({
    what: `${sentence(nameOf(where))} is ${quote(text)}; ${quote(wrong)} is no unit of ${dimensions[expected].name}.`,
    todo:
      nearest.length > 0
        ? `Did you mean ${listWords(nearest, "or")}? Write the unit so.`
        : `Write a unit behind the number. ${unitChoice(expected)}`,
  }),
  *corrections({ facts: { text, wrong, nearest }, place }) {
    const at = text.lastIndexOf(wrong);
    for (const unit of nearest) {
      const mended = text.slice(0, at) + unit + text.slice(at + wrong.length);
      yield rewrite(`Write ${mended}`, place, mended, unit);
    }
  },
  examples: () => [
    {
      title: "A unit with a slip in it",
      text: wireExample({ length: "14.5 fet" }),
      finds: ["'length' of wire P101A8 is '14.5 fet'; 'fet' is no unit of length"],
    },
    { title: "Spellings of the trade are read", text: wireExample({ length: "14.5 feet" }), finds: [] },
  ],
});
