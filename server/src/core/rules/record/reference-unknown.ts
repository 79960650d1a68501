import type { RecordFacts } from "../../records/problem-facts";
import { wireExample } from "../example-record";
import { defineRule } from "../rule";
import { didYouMean, kindName, listWords, nameOf, quote, sentence } from "../wording";
import { meant } from "./meant";

export const referenceUnknown = defineRule<RecordFacts["reference-unknown"]>({
  id: "reference-unknown",
  severity: "error",
  area: "record",
  title: "A name stands for nothing in these records",
  why:
    "What is meant is not known, so whatever rests on it is left out of every sum and check, and what is left looks " +
    "better than it is.",
  sources: [],
  say: ({ id, kinds, known, ...where }) => {
    const wanted = listWords(kinds.map(kindName), "or");
    return {
      what: `${sentence(nameOf(where))} names ${quote(id)}, but there is no such ${wanted}.`,
      todo: [didYouMean(id, known), choice(wanted, known)].filter(Boolean).join(" "),
    };
  },
  *corrections({ facts: { id, known }, place }) {
    // Ids with other figures are other things: a slip in a letter is mended, a slip in a figure is not guessed.
    const figures = (text: string) => text.replace(/\D+/g, " ").trim();
    const alike = known.filter((one) => figures(one) === figures(id));
    yield* meant(id, alike, place);
  },
  isSafe: true,
  examples: () => [
    {
      title: "A slip in a component's name",
      text: wireExample({ to: "RAKC" }),
      finds: [
        "'to' of wire P101A8 names 'RAKC', but there is no such protection, contact, junction, component or ground point",
      ],
    },
    { title: "A component of the kit", text: wireExample({ to: "RACK" }), finds: [] },
  ],
});

function choice(wanted: string, known: readonly string[]): string {
  return known.length > 0
    ? `Name one that is there (${listWords(known, "or")}), or add it to its record.`
    : `Add it to its record first: no ${wanted} is there yet.`;
}
