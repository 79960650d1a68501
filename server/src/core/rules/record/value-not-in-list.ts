import type { RecordFacts } from "../../records/problem-facts";
import { wireExample } from "../example-record";
import { defineRule } from "../rule";
import { didYouMean, listWords, nameOf, quote, sentence } from "../wording";
import { meant } from "./meant";

export const valueNotInList = defineRule<RecordFacts["value-not-in-list"]>({
  id: "value-not-in-list",
  severity: "error",
  area: "record",
  title: "A value is none of the words that its key takes",
  why:
    "These words choose which table, which limit or which rule applies. With a word that is not known none is " +
    "chosen, and what depends on it is not checked.",
  sources: [],
  say: ({ found, allowed, ...where }) => ({
    what: `${sentence(nameOf(where))} can't be ${quote(found)}.`,
    todo: [didYouMean(found, allowed), `Write ${listWords(allowed, "or")}.`].filter(Boolean).join(" "),
  }),
  *corrections({ facts: { found, allowed }, place }) {
    yield* meant(found, allowed, place);
  },
  isSafe: true,
  examples: () => [
    {
      title: "The other spelling",
      text: wireExample({ material: "aluminum" }),
      finds: ["'material' of wire P101A8 can't be 'aluminum'"],
    },
    { title: "One of the words", text: wireExample({ material: "aluminium" }), finds: [] },
  ],
});
