import type { Problem } from "../../findings/finding";
import { structureOf } from "../../graph/derivations";
import { defineRule } from "../rule";
import { doublerExample } from "./doubler-example";

export const doublerCoversOpening = defineRule<{ cutout: string; other: string }>({
  id: "doubler-covers-opening",
  severity: "error",
  area: "structure",
  title: "A doubler lies over another opening",
  why: "It would close part of that opening, and its own section is cut where it is counted on.",
  sources: [],
  say: ({ cutout, other }) => ({
    what: `The doubler of cutout ${cutout} lies over cutout ${other}.`,
    todo: "Make it smaller, move it, or reinforce both openings with one doubler that is cut for both.",
  }),
  *check(project): Iterable<Problem> {
    for (const { by, opening } of structureOf(project).covered) {
      yield {
        rule: "doubler-covers-opening",
        subject: { kind: "cutout", id: by.opening.id },
        place: (by.reinforcement.outline ?? by.reinforcement).place,
        facts: { cutout: by.opening.id, other: opening.id },
        related: opening.cutout.opening
          ? [{ place: opening.cutout.opening.place, words: `opening of ${opening.id}` }]
          : [],
      };
    }
  },
  examples: () => [
    {
      title: "A second opening under the doubler's corner",
      text: doublerExample().concat(
        "  - { id: C2, panel: BAY-SKIN, opening: { shape: circle, diameter: 1 in, at: { x: 3.5 in, y: 0 in } } }\n",
      ),
      finds: ["The doubler of cutout C1 lies over cutout C2"],
    },
    {
      title: "A second opening beside it",
      text: doublerExample().concat(
        "  - { id: C2, panel: BAY-SKIN, opening: { shape: circle, diameter: 1 in, at: { x: 5.5 in, y: 0 in } } }\n",
      ),
      finds: [],
    },
  ],
});
