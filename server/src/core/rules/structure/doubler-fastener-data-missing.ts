import type { Problem } from "../../findings/finding";
import { defineRule } from "../rule";
import { listWords } from "../wording";
import { doublerExample } from "./doubler-example";
import { reinforcementsOf } from "./held";

export const doublerFastenerDataMissing = defineRule<{ cutout: string; missing: readonly string[] }>({
  id: "doubler-fastener-data-missing",
  severity: "warning",
  area: "structure",
  title: "Distances of a reinforcement's fasteners are not recorded",
  why:
    "Pitch, distance between rows and distance to an edge each have a least value; what is not recorded is not held " +
    "against it. The distance to an edge is measured where the places of the fasteners are recorded.",
  sources: [],
  say: ({ cutout, missing }) => ({
    what: `The fasteners around cutout ${cutout} are not checked in full: no ${listWords(missing, "and")} is recorded.`,
    todo: `Add ${listWords(missing, "and")} from the drawing.`,
  }),
  *check(project): Iterable<Problem> {
    for (const { opening, reinforcement, edge } of reinforcementsOf(project)) {
      const { fasteners } = reinforcement;
      if (!fasteners) continue;
      const missing = [
        ...(fasteners.pitch || fasteners.lines?.length ? [] : ["pitch"]),
        ...(fasteners.rowPitch || (fasteners.rows?.value ?? 1) === 1 ? [] : ["row-pitch"]),
        ...(edge.value || !fasteners.diameter ? [] : ["edge-distance"]),
      ];
      if (missing.length === 0) continue;
      yield {
        rule: "doubler-fastener-data-missing",
        subject: { kind: "cutout", id: opening.id },
        place: (fasteners.kind ?? fasteners).place,
        facts: { cutout: opening.id, missing },
        related: [],
      };
    }
  },
  examples: () => [
    {
      title: "Two rows, and nothing of their distances",
      text: doublerExample({
        fasteners: "{ kind: 2117-rivet, diameter: 1/8 in, count-per-side: 14, rows: 2 }",
      }),
      finds: ["no pitch, row-pitch and edge-distance is recorded"],
    },
    {
      title: "One row has no distance between rows",
      text: doublerExample({
        fasteners:
          "{ kind: 2117-rivet, diameter: 1/8 in, count-per-side: 14, pitch: 0.5 in, edge-distance: 0.3 in }",
      }),
      finds: [],
    },
    { title: "All of them", text: doublerExample(), finds: [] },
  ],
});
