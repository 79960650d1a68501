import type { Problem } from "../../findings/finding";
import { defineRule } from "../rule";
import { listWords } from "../wording";
import { doublerExample } from "./doubler-example";
import { reinforcementsOf } from "./held";

export const doublerDataMissing = defineRule<{ cutout: string; panel: string; missing: readonly string[] }>({
  id: "doubler-data-missing",
  severity: "warning",
  area: "structure",
  title: "A reinforcement is on a panel whose sheet is not recorded",
  why: "Section and count of fasteners come from the panel's material and thickness. Without them neither is checked.",
  sources: [],
  say: ({ cutout, panel, missing }) => ({
    what: `The reinforcement of cutout ${cutout} is not checked: panel ${panel} records no ${listWords(missing, "and")}.`,
    todo: "Add them to the panel in the airframe's record.",
  }),
  *check(project): Iterable<Problem> {
    for (const { opening, reinforcement, lacks } of reinforcementsOf(project)) {
      if (lacks.length === 0) continue;
      yield {
        rule: "doubler-data-missing",
        subject: { kind: "cutout", id: opening.id },
        place: (reinforcement.kind ?? reinforcement).place,
        facts: { cutout: opening.id, panel: opening.panel.id?.value, missing: lacks },
        related: [{ place: opening.panel.place, words: "the panel" }],
      };
    }
  },
  examples: () => [
    {
      title: "A panel without material and thickness",
      text: doublerExample().replace(/^ +(material|thickness): .*\n/gm, ""),
      finds: ["panel BAY-SKIN records no material and thickness"],
    },
    { title: "A panel with both", text: doublerExample(), finds: [] },
  ],
});
