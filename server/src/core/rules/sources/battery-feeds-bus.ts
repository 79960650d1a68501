import type { Problem } from "../../findings/finding";
import { electricalOf } from "../../graph/derivations";
import { formatMeasure } from "../../quantities";
import { isAtMost } from "../../rounding";
import { defineRule } from "../rule";
import { conditionName, listWords } from "../wording";
import { conditionPlace } from "./places";
import { sourceCapacity } from "./references";
import { existingLoad, runningIn, sourceExample } from "./source-example";

/** In A: below it a solution's noise, and no battery that is felt. */
const least = 0.01;

export const batteryFeedsBus = defineRule<{
  battery: string;
  condition: string;
  current: number;
  limited: readonly string[];
}>({
  id: "battery-feeds-bus",
  severity: "error",
  area: "sources",
  title: "A battery feeds its bus, though all sources together could carry the loads",
  why:
    "What one bus asks, a source on another can't give where nothing ties the two, or a resistance lies between. The " +
    "sum over the aircraft looks sound, and the battery of that bus goes flat all the same.",
  sources: [sourceCapacity],
  say: ({ battery, condition, current, limited }) => ({
    what: `${battery} gives ${formatMeasure(current, "A", 3)} in ${condition}: ${listWords(limited, "and")} ${limited.length === 1 ? "is" : "are"} at the limit there.`,
    todo: "Move loads to the bus of another source, tie the buses, or have the source at its limit give more.",
  }),
  *check(project): Iterable<Problem> {
    const { balances, sourceLoads } = electricalOf(project).sources;
    for (const { condition, demand, capacity } of balances) {
      // Where all of them together are not enough, that is the finding.
      if (!demand || !capacity || !isAtMost(demand.value, capacity.value)) continue;
      const loads = sourceLoads.filter((one) => one.condition === condition);
      const limited = loads.filter(({ isAtLimit, source }) => isAtLimit && source.kind?.value !== "battery");
      if (limited.length === 0) continue;
      for (const { source, current } of loads) {
        if (source.kind?.value !== "battery" || !current || current.value < least) continue;
        yield {
          rule: "battery-feeds-bus",
          subject: { kind: "source", id: source.id!.value },
          place: conditionPlace(condition),
          facts: {
            battery: source.id!.value,
            condition: conditionName(condition),
            current: current.value,
            limited: limited.map((one) => one.source.id!.value),
          },
        };
      }
    }
  },
  examples: () => [
    {
      title:
        "20 A of loads and the rack on a bus of its own, whose alternator gives 30 A; the other one idles",
      text: apart("30 A"),
      finds: ["^BATT gives 8 A in cruise: ALT is at the limit there\\.$"],
    },
    {
      title: "The same with an alternator of 60 A",
      text: apart("60 A"),
      finds: [],
    },
  ],
});

/** Two buses that nothing ties, all loads on the first. */
function apart(rating: string): string {
  return sourceExample({
    alternator: `bus: MAIN, rating: ${rating}`,
    moreSources: ["{ id: ALT2, kind: alternator, voltage: 28 V, bus: SIDE, rating: 60 A }"],
    existing: [existingLoad("avionics", 20, 8)],
    conditions: [runningIn("cruise")],
  }).replace("buses: [{ id: MAIN }]", "buses: [{ id: MAIN }, { id: SIDE }]");
}
