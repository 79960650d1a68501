import { heatBalanceSource } from "../../methods/heat-balance";
import { defineRule } from "../rule";
import { type CapacityFacts, capacityShort, sayShort } from "./capacity-short";
import { climateExample } from "./climate-example";

export const heatingCapacityShort = defineRule<CapacityFacts>({
  id: "heating-capacity-short",
  severity: "error",
  area: "climate",
  title: "The kit puts in less heat than is lost at the set point",
  why:
    "Walls and fresh air lose what sun, people and equipment don't bring. Where the kit puts in less than the rest, the " +
    "space settles below the set point however long it runs.",
  sources: [heatBalanceSource],
  say: (facts) => ({
    ...sayShort(facts, "put in"),
    todo: "Insulate, let in less fresh air, or take a larger heater.",
  }),
  check: (project) => capacityShort("heating-capacity-short", "heat", project),
  examples: () => [
    {
      title: "A 500 W heater at -20 degC",
      text: climateExample({
        conditioning: "{ mode: run, does: heat, capacity: 500 W }",
        climateCase: "outside: -20 degC, sun: 0 W/m2",
        setPoint: "20 degC",
        loads: "{ CHILLER: run }",
      }),
      finds: [
        "BAY in taxi: 960 W to put in, the kit has 500 W. 20 degC is never reached: it settles at 0.833 degC",
      ],
    },
    {
      title: "A 1 kW heater",
      text: climateExample({
        conditioning: "{ mode: run, does: heat, capacity: 1 kW }",
        climateCase: "outside: -20 degC, sun: 0 W/m2",
        setPoint: "20 degC",
        loads: "{ CHILLER: run }",
      }),
      finds: [],
    },
  ],
});
