import type { Problem } from "../../findings/finding";
import { climateOf } from "../../graph/derivations";
import { coverageWords } from "../../tables/lookup-words";
import { defineRule } from "../rule";
import { climateExample } from "./climate-example";

export const climateNotCovered = defineRule<{
  space: string;
  condition: string;
  wanted: string;
  gap?: string | undefined;
}>({
  id: "climate-not-covered",
  severity: "warning",
  area: "climate",
  title: "A figure that a heat balance needs is neither recorded nor published",
  why:
    "A balance with a part missing would look like a whole one, and always on the cool side. It is not made: the space " +
    "is not shown to be too warm, and not shown to be right. People's heat is published for air of 24 to 27 degC.",
  sources: [],
  say: ({ space, condition, wanted, gap }) => ({
    what: `${space} in ${condition}: ${wanted} is not known${gap === undefined ? "" : `: ${gap}`}.`,
    todo: "Add the figure to the record, by the maker's data or a measurement.",
  }),
  *check(project): Iterable<Problem> {
    for (const { space, condition, gaps } of climateOf(project).cases) {
      for (const { wanted, place, reason } of gaps) {
        yield {
          rule: "climate-not-covered",
          subject: { kind: "space", id: space },
          place,
          facts: { space, condition, wanted, gap: reason && coverageWords(reason) },
        };
      }
    }
  },
  examples: () => [
    {
      title: "People at a set point that the table does not speak of",
      text: climateExample({
        setPoint: "20 degC",
        climateCase: "outside: 35 degC, sun: 900 W/m2, people: 1, activity: seated-at-rest",
      }),
      finds: [
        "sensible heat of each person is not known: air temperature 20 degC, the table holds 24",
        "latent heat",
      ],
    },
    {
      title: "Fresh air whose moisture is not recorded, and a unit on a day hotter than its points",
      text: climateExample({
        keys: ["fresh-air: 20 cfm"],
        conditioning:
          "{ mode: run, does: cool, capacity: 2000 W, outside: 20 degC }, { mode: run, does: cool, capacity: 1800 W, outside: 30 degC }",
      }),
      finds: [
        "outside-moisture is not known",
        "capacity of CHILLER at this outside temperature is not known",
      ],
    },
    {
      title: "No temperature outside, neither of the case nor of its condition",
      text: climateExample({ climateCase: "sun: 900 W/m2" }),
      finds: ["BAY in taxi: temperature of the outside air is not known"],
    },
    {
      title: "All of it recorded",
      text: climateExample({
        setPoint: "20 degC",
        keys: ["fresh-air: 20 cfm", "inside-moisture: 9 g/kg"],
        climateCase:
          "outside: 30 degC, sun: 0 W/m2, outside-moisture: 14 g/kg, people: 1, sensible-each: 75 W, latent-each: 30 W",
      }),
      finds: [],
    },
  ],
});
