import type { Problem } from "../../findings/finding";
import { climateOf } from "../../graph/derivations";
import { formatMeasure, inUnit } from "../../quantities";
import { defineRule } from "../rule";
import { climateExample } from "./climate-example";

export const spaceNotConditioned = defineRule<{
  space: string;
  condition: string;
  setPoint: number;
  steady?: number | undefined;
}>({
  id: "space-not-conditioned",
  severity: "warning",
  area: "climate",
  title: "Nothing cools or heats a space in a condition that it has to be comfortable in",
  why:
    "What serves the space does not run in this condition, or its kit record says of no mode what it takes out or puts " +
    "in. Its temperature then is what sun, walls, fresh air, people and equipment make of it.",
  sources: [],
  say: ({ space, condition, setPoint, steady }) => ({
    what:
      `Nothing cools or heats ${space} in ${condition}` +
      (steady === undefined
        ? "."
        : `: it settles at ${formatMeasure(steady, "degC", 3)}, its set point is ${formatMeasure(setPoint, "degC", 3)}.`),
    todo: "Run what serves it in this condition, add its capacity to the kit, or leave the condition out.",
  }),
  *check(project): Iterable<Problem> {
    for (const { does, space, condition, climateCase, entry, steady } of climateOf(project).cases) {
      if (does !== undefined || !climateCase.condition || !entry.setPoint) continue;
      yield {
        rule: "space-not-conditioned",
        subject: { kind: "space", id: space },
        place: climateCase.condition.place,
        facts: {
          space,
          condition,
          setPoint: inUnit(entry.setPoint.value, "degC"),
          steady: steady?.value,
        },
      };
    }
  },
  examples: () => [
    {
      title: "The cooling unit does not run",
      text: climateExample({ loads: "{ RACK: survey }" }),
      finds: [
        "Nothing cools or heats BAY in taxi: it settles at \\d+(\\.\\d)? degC, its set point is 25 degC",
      ],
    },
    { title: "It runs", text: climateExample(), finds: [] },
  ],
});
