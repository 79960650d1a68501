import { holds } from "../../findings/finding";
import { electricalOf } from "../../graph/derivations";
import { formatMeasure } from "../../quantities";
import { mainPowerDropSource } from "../../tables/voltage-drop-limits";
import { placeInAirframe } from "../link-places";
import { defineRule } from "../rule";
import { exampleAlternator, sourceExample } from "./source-example";

export const feederVoltageDrop = defineRule<{
  feeder: string;
  source: string;
  rated: number;
  drop: number;
  limit: number;
}>({
  id: "feeder-voltage-drop",
  severity: "error",
  area: "sources",
  title: "A main power wire drops more than 2 % of its source's voltage at rated current",
  why: "All that is fed from the bus starts from a voltage that is too low, and its own wires drop more of it.",
  sources: [mainPowerDropSource],
  say: ({ feeder, source, rated, drop, limit }) => ({
    what:
      `${feeder} drops ${formatMeasure(drop, "V")} at the ${formatMeasure(rated, "A")} that ${source} is rated for, ` +
      `above the ${formatMeasure(limit, "V")} allowed.`,
    todo: "Measure the feeder's resistance again, clean its connections, or fit a thicker or shorter feeder.",
  }),
  *check(project) {
    for (const { feeder, source, rating, drop, limit } of electricalOf(project).sources.feeders) {
      const written = feeder.resistance?.place ?? feeder.place;
      yield {
        rule: "feeder-voltage-drop",
        subject: drop.subject,
        ...placeInAirframe(project, written, "the feeder's resistance"),
        value: drop,
        limit,
        sense: "at-most",
        holds: holds(drop.value, "at-most", limit.value),
        facts: {
          feeder: feeder.id?.value,
          source: source.id?.value,
          rated: rating.value,
          drop: drop.value,
          limit: limit.value,
        },
      };
    }
  },
  examples: () => [
    {
      title: "60 A through 10 mohm: 0.6 V, where 2 % of 28 V are 0.56 V",
      text: sourceExample({
        alternator: exampleAlternator.replace("bus: MAIN, ", ""),
        feeders: ["{ id: F-ALT, from: ALT, to: MAIN, resistance: 10 mohm }"],
      }),
      finds: ["F-ALT drops 0.6 V at the 60 A that ALT is rated for, above the 0.56 V allowed"],
    },
    {
      title: "60 A through 9 mohm: 0.54 V",
      text: sourceExample({
        alternator: exampleAlternator.replace("bus: MAIN, ", ""),
        feeders: ["{ id: F-ALT, from: ALT, to: MAIN, resistance: 9 mohm }"],
      }),
      finds: [],
    },
  ],
});
