import type { Problem } from "../../findings/finding";
import { electricalOf } from "../../graph/derivations";
import { formatMeasure } from "../../quantities";
import { isBelow } from "../../rounding";
import { defineRule } from "../rule";
import { guardsOf, smallerDevices } from "../wires/governing";
import { protectionExample } from "./protection-example";

export const protectionAboveSources = defineRule<{ protection: string; rating: number; sources: number }>({
  id: "protection-above-sources",
  severity: "warning",
  area: "protection",
  title: "A breaker or fuse is rated above what all sources together give",
  why:
    "A device opens at more than its rating. What the sources are rated for may never bring that about: a short then " +
    "drags the voltage down and heats what carries it. Told only where every source's record gives a rating.",
  sources: [{ document: "Ratings of the sources, airframe record", standing: "record" }],
  say: ({ protection, rating, sources }) => ({
    what: `${protection} is rated ${formatMeasure(rating, "A")}, above the ${formatMeasure(sources, "A")} of all sources together.`,
    todo: "Take a smaller device, or show by the sources' data what they give into a short.",
  }),
  *check(project): Iterable<Problem> {
    const together = electricalOf(project).protection.sourcesTogether;
    if (!together) return;
    for (const { id, rating, place } of guardsOf(project)) {
      if (!isBelow(together.value, rating.value)) continue;
      yield {
        rule: "protection-above-sources",
        subject: { kind: "protection", id },
        place,
        facts: { protection: id, rating: rating.value, sources: together.value },
      };
    }
  },
  *corrections({ facts }, project) {
    const guard = project && guardsOf(project).find(({ id }) => id === facts.protection);
    if (guard) yield* smallerDevices(guard, project);
  },
  examples: () => [
    {
      title: "A fuse of 150 A with an alternator of 60 A and a battery that gives 80 A",
      text: fused("150 A", "rating: 80 A"),
      finds: ["^CB-RACK is rated 150 A, above the 140 A of all sources together\\.$"],
    },
    {
      title: "A fuse of 100 A with the same",
      text: fused("100 A", "rating: 80 A"),
      finds: [],
    },
    {
      title: "A battery whose greatest current nobody recorded",
      text: fused("150 A", "capacity: 24 Ah"),
      finds: [],
    },
  ],
});

function fused(rating: string, battery: string): string {
  return protectionExample({
    system: [
      "sources:",
      "  - { id: ALT, kind: alternator, bus: MAIN, voltage: 28 V, rating: 60 A }",
      `  - { id: BAT, kind: battery, bus: MAIN, voltage: 25 V, ${battery} }`,
    ],
    devices: [`{ id: CB-20, kind: fuse, rating: ${rating} }`],
  });
}
