import { holds } from "../../findings/finding";
import { climateOf } from "../../graph/derivations";
import { derive, written } from "../../graph/value";
import { heatBalanceSource } from "../../methods/heat-balance";
import { formatApart } from "../../quantities";
import { defineRule } from "../rule";
import { fittedShades } from "./capacity-short";
import { climateExample } from "./climate-example";

export const comfortTooLate = defineRule<{
  space: string;
  condition: string;
  minutes: number;
  allowed: number;
}>({
  id: "comfort-too-late",
  severity: "error",
  area: "climate",
  title: "A soaked space takes longer to its set point than is allowed",
  why:
    "Equipment that has to be cool before it may run, and people who sit beside it, can't wait for it. The space is " +
    "taken as one body at one temperature: seats and structure that give their heat up slowly make it longer, not shorter.",
  sources: [heatBalanceSource],
  say: ({ space, condition, minutes, allowed }) => {
    const [is, most] = formatApart(minutes, allowed, 3);
    return {
      what: `${space} in ${condition} takes ${is} min from the soak to its set point; ${most} min are allowed.`,
      todo: "Shade the glazing, open up before, run less equipment until then, or take a larger unit.",
    };
  },
  *check(project) {
    for (const { space, condition, climateCase, time } of climateOf(project).cases) {
      const subject = { kind: "space", id: space } as const;
      const within = written("time allowed", climateCase.within, "s");
      const allowed = derive({
        subject,
        condition,
        quantity: "time-allowed",
        unit: "s",
        formula: "t",
        operands: { t: within },
        compute: ({ t }) => t,
      });
      if (!time || !allowed || !climateCase.within) continue;
      yield {
        rule: "comfort-too-late",
        subject,
        place: climateCase.within.place,
        value: time,
        limit: allowed,
        sense: "at-most",
        holds: holds(time.value, "at-most", allowed.value),
        facts: { space, condition, minutes: time.value / 60, allowed: allowed.value / 60 },
        related: climateCase.soak ? [{ place: climateCase.soak.place, words: "the soak" }] : [],
      };
    }
  },
  remedies: fittedShades,
  examples: () => [
    {
      title: "Five minutes from 60 degC",
      text: climateExample({
        climateCase: "outside: 35 degC, sun: 900 W/m2, soak: 60 degC, within: 5 min",
      }),
      finds: ["BAY in taxi takes \\d+(\\.\\d+)? min from the soak to its set point; 5 min are allowed"],
    },
    {
      title: "An hour",
      text: climateExample({
        climateCase: "outside: 35 degC, sun: 900 W/m2, soak: 60 degC, within: 1 h",
      }),
      finds: [],
    },
  ],
});
