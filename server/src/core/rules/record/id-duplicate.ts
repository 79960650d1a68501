import type { RecordFacts } from "../../records/problem-facts";
import { wireExample } from "../example-record";
import { defineRule } from "../rule";
import { kindName, quote, shorten } from "../wording";

export const idDuplicate = defineRule<RecordFacts["id-duplicate"]>({
  id: "id-duplicate",
  severity: "error",
  area: "record",
  title: "Two things of one kind have the same id",
  why:
    "Whatever refers to the id means one of the two, and nobody can tell which. On the aircraft it is two wires " +
    "with one marker.",
  sources: [],
  say: ({ ownerKind, ownerId }) => ({
    what: `Another ${kindName(ownerKind)} already has the id ${quote(ownerId)}.`,
    todo: `Give this one an id of its own, such as ${shorten(ownerId)}-2, and mend what refers to it.`,
  }),
  examples: () => [
    {
      title: "Two junctions called TB1",
      text: `${wireExample()}junctions:\n  - { id: TB1 }\n  - { id: TB1 }\n`,
      finds: ["Another junction already has the id 'TB1'"],
    },
    {
      title: "A wire and a junction may share one",
      text: `${wireExample()}junctions:\n  - { id: TB1 }\n  - { id: P101A8 }\n`,
      finds: [],
    },
  ],
});
