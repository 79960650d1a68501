import type { Problem } from "../../findings/finding";
import { defineRule } from "../rule";
import { doublerExample } from "./doubler-example";
import { reinforcementsOf } from "./held";

export const doublerOutsidePanel = defineRule<{ cutout: string; panel: string }>({
  id: "doubler-outside-panel",
  severity: "error",
  area: "structure",
  title: "A doubler or a ring reaches beyond the edge of its panel",
  why: "What lies beyond the edge is held by nothing there, and the fasteners along it find no sheet.",
  sources: [],
  say: ({ cutout, panel }) => ({
    what: `The reinforcement of cutout ${cutout} reaches beyond the edge of panel ${panel}.`,
    todo: "Make it smaller, or move it with its opening: sizes and 'at' are in the panel's x and y.",
  }),
  *check(project): Iterable<Problem> {
    for (const { opening, reinforcement, reach } of reinforcementsOf(project)) {
      // Of an opening that crosses the edge itself, that is the finding.
      if (!reach.isBeyondPanel || opening.edge.kind !== "inside") continue;
      const { panel, id } = opening;
      yield {
        rule: "doubler-outside-panel",
        subject: { kind: "cutout", id },
        place: (reinforcement.outline ?? reinforcement.width ?? reinforcement).place,
        facts: { cutout: id, panel: panel.id?.value ?? "" },
        related: panel.outline ? [{ place: panel.outline.place, words: "outline of the panel" }] : [],
      };
    }
  },
  examples: () => [
    {
      title: "A doubler wider than what is left beside its opening",
      text: doublerExample({
        opening: "{ shape: circle, diameter: 3 in, at: { x: 7 in, y: 0 in } }",
        doubler:
          "kind: doubler, material: 2024-T3 clad, thickness: 0.040 in, outline: { shape: rectangle, width: 7 in, height: 7 in, corner-radius: 0.5 in, at: { x: 7 in, y: 0 in } }",
      }),
      finds: ["The reinforcement of cutout C1 reaches beyond the edge of panel BAY-SKIN"],
    },
    {
      title: "A ring wider than that",
      text: doublerExample({
        opening: "{ shape: circle, diameter: 3 in, at: { x: 7 in, y: 0 in } }",
        doubler: "kind: ring, material: 2024-T3 clad, thickness: 0.040 in, width: 1.75 in",
      }),
      finds: ["The reinforcement of cutout C1 reaches beyond the edge"],
    },
    {
      title: "A ring that just fits",
      text: doublerExample({
        opening: "{ shape: circle, diameter: 3 in, at: { x: 7 in, y: 0 in } }",
        doubler: "kind: ring, material: 2024-T3 clad, thickness: 0.040 in, width: 1.5 in",
      }),
      finds: [],
    },
    { title: "A doubler in the middle", text: doublerExample(), finds: [] },
  ],
});
