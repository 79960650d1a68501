import type { RecordFacts } from "../../records/problem-facts";
import { wireExample } from "../example-record";
import { defineRule } from "../rule";
import { nameOf, quote, sentence } from "../wording";

type OutOfRange = RecordFacts["value-out-of-range"];

export const valueOutOfRange = defineRule<OutOfRange>({
  id: "value-out-of-range",
  severity: "error",
  area: "record",
  title: "A count is outside the range that is possible",
  why:
    "A bundle of no wires or a row of one fastener does not exist. The count goes into derating and edge " +
    "distances, where a slip of one key would pass for data.",
  sources: [],
  say: ({ found, ...facts }) => ({
    what: `${sentence(nameOf(facts))} is ${quote(found)}, outside ${range(facts)}.`,
    todo: `Write a whole number, ${range(facts)}.`,
  }),
  examples: () => [
    {
      title: "A bundle of no wires",
      text: bundle("0"),
      finds: ["'wires' of bundle B1 is '0', outside 1 to 1000"],
    },
    { title: "A bundle of four wires", text: bundle("4"), finds: [] },
  ],
});

function range({ least, greatest }: Omit<OutOfRange, "found">): string {
  if (least === undefined) return `up to ${greatest}`;
  return greatest === undefined ? `${least} and more` : `${least} to ${greatest}`;
}

function bundle(wires: string): string {
  return `${wireExample({ bundle: "B1" })}bundles:\n  - { id: B1, wires: ${wires}, loading: 40 % }\n`;
}
