import type { Problem } from "../../findings/finding";
import { electricalOf } from "../../graph/derivations";
import { edgesOf } from "../../graph/electrical/layout";
import { defineRule } from "../rule";
import { listWords } from "../wording";
import { circuitExample } from "./circuit-example";

export const circuitLoop = defineRule<{ point: string; feeds: readonly string[] }>({
  id: "circuit-loop",
  severity: "error",
  area: "wires",
  title: "Wires lead back to where they came from",
  why: "Followed from the load toward the source, the run never reaches a bus, so nothing on it is computed.",
  sources: [],
  say: ({ point, feeds }) => ({
    what: `The run through ${point} leads back to itself (${listWords(feeds, "and")}) and never reaches a bus.`,
    todo: "Check the ends: 'from' is the end nearer the source, 'to' the end nearer the load.",
  }),
  *check(project): Iterable<Problem> {
    for (const { edge, point, feeds } of electricalOf(project).trace.loops) {
      const edges = edgesOf(project);
      const nameOf = (feed: number) => edges[feed]!.wire?.id?.value ?? edges[feed]!.from;
      yield { rule: "circuit-loop", place: edges[edge]!.place, facts: { point, feeds: feeds.map(nameOf) } };
    }
  },
  examples: () => [
    {
      title: "A wire written from its far end",
      text: `${circuitExample({
        wires: [
          "{ id: P1, from: TB1, to: TB2, gauge: 10 AWG, length: 12 ft, rating: 150 degC }",
          "{ id: P2, from: TB2, to: TB1, gauge: 10 AWG, length: 12 ft, rating: 150 degC }",
          "{ id: P3, from: TB2, to: RACK, gauge: 10 AWG, length: 12 ft, rating: 150 degC }",
        ],
      })}junctions:\n  - { id: TB1 }\n  - { id: TB2 }\n`,
      finds: ["leads back to itself"],
    },
    { title: "A run from bus to load", text: circuitExample(), finds: [] },
  ],
});
