import { heatBalanceSource } from "../../methods/heat-balance";
import { peopleHeatSource } from "../../tables/people-heat";
import { defineRule } from "../rule";
import { type CapacityFacts, capacityShort, fittedShades, sayShort } from "./capacity-short";
import { climateExample } from "./climate-example";

export const coolingCapacityShort = defineRule<CapacityFacts>({
  id: "cooling-capacity-short",
  severity: "error",
  area: "climate",
  title: "The kit takes out less heat than comes in at the set point",
  why:
    "Sun, walls, fresh air, people and equipment bring heat in, and condensing moisture takes part of the capacity. " +
    "Where the kit takes out less than that, the space settles above the set point however long it runs. The sun is " +
    "taken to shine on all of the recorded glazing at once: the high side.",
  sources: [heatBalanceSource, peopleHeatSource],
  say: (facts) => ({
    ...sayShort(facts, "take out"),
    todo: "Shade the glazing, let in less fresh air, run less equipment, or take a larger unit.",
  }),
  check: (project) => capacityShort("cooling-capacity-short", "cool", project),
  remedies: fittedShades,
  examples: () => [
    {
      title: "Two more people than the unit can carry",
      text: climateExample({
        climateCase: "outside: 35 degC, sun: 900 W/m2, people: 5, activity: seated-very-light-work",
      }),
      finds: [
        "BAY in taxi: 20\\d\\d W to take out, the kit has 2000 W. 25 degC is never reached: it settles at 2\\d",
      ],
    },
    {
      title: "Less capacity on a hotter day, from the kit's points",
      text: climateExample({
        conditioning:
          "{ mode: run, does: cool, capacity: 2000 W, outside: 30 degC }, { mode: run, does: cool, capacity: 1000 W, outside: 40 degC }",
      }),
      finds: [],
    },
    {
      title: "Shades would do",
      text: climateExample({
        conditioning: "{ mode: run, does: cool, capacity: 1000 W }",
        keys: ["shades: [{ glazing: WINDOW, passes: 30 % }]"],
        climateCase: "outside: 35 degC, sun: 900 W/m2, shades: stowed",
      }),
      finds: ["BAY in taxi: 14\\d\\d W to take out, the kit has 1000 W"],
    },
    { title: "Enough", text: climateExample(), finds: [] },
  ],
});
