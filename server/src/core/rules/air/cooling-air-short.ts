import { holds } from "../../findings/finding";
import { airOf } from "../../graph/derivations";
import { standardAtmosphere } from "../../methods/air/atmosphere";
import { formatApart } from "../../quantities";
import { defineRule } from "../rule";
import { airExample } from "./air-example";
import { largerOpenings } from "./larger-openings";

export const coolingAirShort = defineRule<{ path: string; condition: string; is: number; needed: number }>({
  id: "cooling-air-short",
  severity: "error",
  area: "air",
  title: "A fan moves less cooling air than the heat needs",
  why:
    "What the air does not carry away within its allowed rise makes the equipment hotter, until it derates or trips. The " +
    "fan moves the volume at which its curve meets that of its path; what counts is its mass, which falls with altitude " +
    "and heat.",
  sources: [standardAtmosphere],
  say: ({ path, condition, is, needed }) => {
    const [a, b] = formatApart(is, needed);
    return {
      what: `In ${condition}, ${path} delivers ${a} lb/min of air; the heat to reject needs ${b} lb/min.`,
      todo: "Enlarge the openings, take a freer screen or a stronger fan, or limit the mode to lower altitude.",
    };
  },
  *check(project) {
    for (const { path, id, conditions } of airOf(project).paths) {
      for (const { id: condition, delivered, needed } of conditions) {
        if (!delivered || !needed) continue;
        yield {
          rule: "cooling-air-short",
          subject: { kind: "air-path", id },
          place: (path.fan ?? path).place,
          value: delivered,
          limit: needed,
          sense: "at-least",
          holds: holds(delivered.value, "at-least", needed.value),
          facts: { path: id, condition, is: delivered.value, needed: needed.value },
          related: path.cools ? [{ place: path.cools.place, words: "what it cools" }] : [],
        };
      }
    }
  },
  remedies: ({ subject }, project) => largerOpenings(subject.id, project),
  examples: () => [
    {
      title: "Twice the heat",
      text: airExample({ draw: "{ mode: run, current: 20 A, heat: 1200 W }" }),
      finds: ["In cruise, BAY-AIR delivers .* lb/min of air; the heat to reject needs 13.15 lb/min"],
    },
    {
      title: "A maker's own figure for the air",
      text: airExample({ cooling: "air: 12 lb/min, data: Cooling sheet QSR-60-24" }),
      finds: ["needs 12 lb/min"],
    },
    {
      title: "An outlet that is too small",
      text: airExample({ outlet: "shape: circle, diameter: 1.75 in" }),
      finds: ["In cruise, BAY-AIR delivers"],
    },
    { title: "Enough at 8,000 ft", text: airExample(), finds: [] },
  ],
});
