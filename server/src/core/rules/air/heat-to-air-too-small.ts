import { type Assessment, holds } from "../../findings/finding";
import { firstLaw } from "../../graph/air/rejected-heat";
import { airOf } from "../../graph/derivations";
import { formatApart } from "../../quantities";
import { defineRule } from "../rule";
import { airExample } from "./air-example";

export const heatToAirTooSmall = defineRule<{ component: string; mode: string; is: number; least: number }>({
  id: "heat-to-air-too-small",
  severity: "warning",
  area: "air",
  title: "A cooling unit is said to give less heat to its air than it takes out and draws",
  why:
    "What a unit takes out of a space, and the power that drives it, leave together with its own cooling air. A smaller " +
    "figure makes the air that is delivered look like enough.",
  sources: [firstLaw],
  say: ({ component, mode, is, least }) => {
    const [a, b] = formatApart(is, least);
    return {
      what: `${component} is said to give ${a} W to its air in ${mode}; what it takes out and draws come to ${b} W.`,
      todo: "Ask the kit's maker for the heat at its greatest capacity, and record that.",
    };
  },
  *check(project): Iterable<Assessment> {
    for (const { path, rejected } of airOf(project).paths) {
      for (const { mode, recorded, least } of rejected) {
        if (!path.cools) continue;
        yield {
          rule: "heat-to-air-too-small",
          subject: recorded.subject,
          place: path.cools.place,
          value: recorded,
          limit: least,
          sense: "at-least",
          holds: holds(recorded.value, "at-least", least.value),
          facts: { component: path.cools.value, mode, is: recorded.value, least: least.value },
          related: recorded.inputs.flatMap(({ places }) =>
            places.map((place) => ({ place, words: "the heat in the kit" })),
          ),
        };
      }
    }
  },
  examples: () => [
    {
      title: "A unit that takes out 800 W and draws 560 W",
      text: cooler("800 W"),
      finds: [
        "^CHILLER is said to give 1200 W to its air in run; what it takes out and draws come to 1360 W",
      ],
    },
    { title: "One that takes out 600 W", text: cooler("600 W"), finds: [] },
    { title: "Electronics, which take out nothing", text: airExample(), finds: [] },
  ],
});

/** A unit that draws 20 A at 28 V. */
function cooler(capacity: string): string {
  return airExample({
    nominal: "28 V",
    draw: "{ mode: run, current: 20 A, heat: 1200 W }",
    conditioning: `[{ mode: run, does: cool, capacity: ${capacity} }]`,
    cooling:
      "rise: 30 degC, loss-at: 100 cfm, loss: 60 Pa, loss-density: 1.2 kg/m3, data: Cooling sheet QSR-60-24",
  });
}
