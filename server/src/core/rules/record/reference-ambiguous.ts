import type { RecordFacts } from "../../records/problem-facts";
import { wireExample } from "../example-record";
import { defineRule } from "../rule";
import { kindName, listWords, nameOf, quote, sentence, withArticle } from "../wording";

export const referenceAmbiguous = defineRule<RecordFacts["reference-ambiguous"]>({
  id: "reference-ambiguous",
  severity: "error",
  area: "record",
  title: "A name stands for more than one thing that could be meant",
  why:
    "Two things of different kinds may share an id, but a wire that could end at either has no end. Which circuit " +
    "it belongs to, and what feeds it, would be a guess.",
  sources: [],
  say: ({ id, kinds, ...where }) => ({
    what: `${sentence(nameOf(where))} names ${quote(id)}, which is ${listWords(
      kinds.map((kind) => withArticle(kindName(kind))),
      "and",
    )}.`,
    todo: "Give one of them another id, so that the name stands for one thing.",
  }),
  examples: () => [
    {
      title: "A junction called like the component",
      text: `${wireExample({ to: "RACK" })}junctions:\n  - { id: RACK }\n`,
      finds: ["'to' of wire P101A8 names 'RACK', which is a junction and a component"],
    },
    {
      title: "A junction with a name of its own",
      text: `${wireExample({ to: "RACK" })}junctions:\n  - { id: TB1 }\n`,
      finds: [],
    },
  ],
});
