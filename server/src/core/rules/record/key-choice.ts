import type { RecordFacts } from "../../records/problem-facts";
import { recordExample } from "../example-record";
import { defineRule } from "../rule";
import { listWords, nameOf, quote, sentence } from "../wording";

export const keyChoice = defineRule<RecordFacts["key-choice"]>({
  id: "key-choice",
  severity: "error",
  area: "record",
  title: "Of keys that stand in place of each other there must be exactly one",
  why:
    "They say the same thing in different ways. With none of them it is not said, and nothing that needs it is " +
    "checked; with more than one they can disagree, and nobody can say which of them counts.",
  sources: [],
  say: ({ keys, found, ...where }) => ({
    what:
      found.length === 0
        ? `${sentence(nameOf(where))} has none of ${listWords(keys.map(quote), "and")}.`
        : `${sentence(nameOf(where))} has ${listWords(found.map(quote), "and")}, where one excludes the other.`,
    todo: found.length === 0 ? `Add ${listWords(keys, "or")}.` : `Keep one: ${listWords(found, "or")}.`,
  }),
  examples: () => [
    {
      title: "A current and a power",
      text: kit("{ mode: survey, current: 18 A, power: 500 W }"),
      finds: ["Entry 1 in 'draws' of component RACK has 'current' and 'power'"],
    },
    {
      title: "Neither of them",
      text: kit("{ mode: survey }"),
      finds: ["Entry 1 in 'draws' of component RACK has none of 'current', 'power' and 'resistance'"],
    },
    { title: "A power alone", text: kit("{ mode: survey, power: 500 W }"), finds: [] },
  ],
});

function kit(draw: string): string {
  return recordExample({
    kit: `kit:\n  kit: { number: QSR-60, revision: C }\n  components:\n    - id: RACK\n      weight: 31.2 lb\n      draws: [${draw}]`,
  });
}
