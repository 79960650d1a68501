import type { RecordFacts } from "../../records/problem-facts";
import { recordExample, wireExample } from "../example-record";
import { defineRule } from "../rule";
import { didYouMean, listWords, nameOf, quote, sentence } from "../wording";
import { meant } from "./meant";

export const keyUnknown = defineRule<RecordFacts["key-unknown"]>({
  id: "key-unknown",
  severity: "error",
  area: "record",
  title: "A key means nothing where it stands",
  why:
    "A key that is not known is not read. If it was meant to be a gauge or a limit, the record says one thing to " +
    "its reader and another to the checks.",
  sources: [],
  say: ({ key, free, belongsFurtherOut, ...where }) => ({
    what: `${sentence(nameOf(where))} has the unknown key ${quote(key)}.`,
    todo: remedy(key, free, belongsFurtherOut),
  }),
  *corrections({ facts: { key, free }, place }) {
    yield* meant(key, free, place);
  },
  isSafe: true,
  examples: () => [
    {
      title: "A slip of the fingers",
      text: wireExample({ gauge: undefined, guage: "8 AWG" }),
      finds: ["Wire P101A8 has the unknown key 'guage'"],
    },
    {
      title: "A section that slipped into the one above it",
      text: recordExample({
        document: "document:\n  number: HM-0412\n  revision: A\n  status: draft\n  wires: []",
      }),
      finds: ["'document' has the unknown key 'wires'"],
    },
    { title: "A key of the wire", text: wireExample({ material: "aluminium" }), finds: [] },
  ],
});

function remedy(key: string, free: readonly string[], belongsFurtherOut: boolean): string {
  if (belongsFurtherOut) return `Indent ${quote(key)} less: it is a key of what stands around this.`;
  const guess = didYouMean(key, free);
  if (guess) return `${guess} If not, take it out, or make it a comment with '#'.`;
  const instead = free.length > 0 ? ` Keys that can still be added here: ${listWords(free, "and")}.` : "";
  return `Take it out, or make it a comment with '#'.${instead}`;
}
