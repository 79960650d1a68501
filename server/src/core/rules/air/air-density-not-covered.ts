import type { Problem } from "../../findings/finding";
import { airOf } from "../../graph/derivations";
import { standardAtmosphere } from "../../methods/air/atmosphere";
import { coverageWords } from "../../tables/lookup-words";
import { defineRule } from "../rule";
import { airExample } from "./air-example";

export const airDensityNotCovered = defineRule<{ condition: string; gap: string }>({
  id: "air-density-not-covered",
  severity: "warning",
  area: "air",
  title: "A condition lies outside the standard atmosphere's formulas",
  why: "The formulas hold up to the tropopause. Above it no air is computed in this condition.",
  sources: [standardAtmosphere],
  say: ({ condition, gap }) => ({
    what: `The air of ${condition} is not covered: ${gap}.`,
    todo: "Check the condition's altitude.",
  }),
  *check(project): Iterable<Problem> {
    for (const { condition, id, gap } of airOf(project).conditions) {
      if (!gap) continue;
      yield {
        rule: "air-density-not-covered",
        subject: { kind: "condition", id },
        place: (condition.altitude ?? condition).place,
        facts: { condition: id, gap: coverageWords(gap) },
      };
    }
  },
  examples: () => [
    {
      title: "41,000 ft",
      text: airExample({ altitude: "41000 ft" }),
      finds: ["altitude 41000 ft, the table holds -16404 ft to 36089 ft"],
    },
    { title: "8,000 ft", text: airExample(), finds: [] },
  ],
});
