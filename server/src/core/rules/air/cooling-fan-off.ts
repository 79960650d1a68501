import type { Problem } from "../../findings/finding";
import { airOf } from "../../graph/derivations";
import { defineRule } from "../rule";
import { airExample } from "./air-example";

export const coolingFanOff = defineRule<{ path: string; condition: string; cools: string }>({
  id: "cooling-fan-off",
  severity: "error",
  area: "air",
  title: "What needs cooling air runs while its fan does not",
  why: "Without its fan the path moves no air that could be counted on, and the equipment gets hot.",
  sources: [],
  say: ({ path, condition, cools }) => ({
    what: `In ${condition}, ${cools} runs, and the fan of ${path} does not.`,
    todo: "Run the fan's component in this condition too, or take the cooled one out of it.",
  }),
  *check(project): Iterable<Problem> {
    for (const { path, id, conditions } of airOf(project).paths) {
      for (const { id: condition, isFanOn } of conditions) {
        if (isFanOn) continue;
        yield {
          rule: "cooling-fan-off",
          subject: { kind: "air-path", id },
          place: (path.fan ?? path).place,
          facts: { path: id, condition, cools: path.cools?.value },
        };
      }
    }
  },
  examples: () => [
    {
      title: "The fan's component is not in the condition's loads",
      text: airExample({ loads: "{ CHILLER: run }" }),
      finds: ["In cruise, CHILLER runs, and the fan of BAY-AIR does not"],
    },
    { title: "Both run", text: airExample(), finds: [] },
  ],
});
