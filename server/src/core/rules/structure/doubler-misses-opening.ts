import type { Problem } from "../../findings/finding";
import { defineRule } from "../rule";
import { doublerExample } from "./doubler-example";
import { reinforcementsOf } from "./held";

export const doublerMissesOpening = defineRule<{ cutout: string }>({
  id: "doubler-misses-opening",
  severity: "error",
  area: "structure",
  title: "An opening is not wholly inside its doubler",
  why: "Where the doubler does not reach, the edge of the opening is not reinforced and nothing carries the load around it.",
  sources: [],
  say: ({ cutout }) => ({
    what: `Cutout ${cutout} is not wholly inside its doubler.`,
    todo: "Check the doubler's sizes and its 'at', which is measured in the panel's x and y like that of the opening.",
  }),
  *check(project): Iterable<Problem> {
    for (const { opening, reinforcement, surrounds } of reinforcementsOf(project)) {
      if (surrounds) continue;
      yield {
        rule: "doubler-misses-opening",
        subject: { kind: "cutout", id: opening.id },
        place: (reinforcement.outline ?? reinforcement).place,
        facts: { cutout: opening.id },
        related: opening.cutout.opening
          ? [{ place: opening.cutout.opening.place, words: "the opening" }]
          : [],
      };
    }
  },
  examples: () => [
    {
      title: "A doubler that was left at the panel's origin",
      text: doublerExample({ opening: "{ shape: circle, diameter: 3 in, at: { x: 5 in, y: 0 in } }" }),
      finds: ["C1 is not wholly inside its doubler"],
    },
    { title: "A doubler around its opening", text: doublerExample(), finds: [] },
  ],
});
