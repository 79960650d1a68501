import type { Problem } from "../../findings/finding";
import { structureOf } from "../../graph/derivations";
import { defineRule } from "../rule";
import { doublerExample } from "./doubler-example";

export const cutoutNotReinforced = defineRule<{ cutout: string; panel: string }>({
  id: "cutout-not-reinforced",
  severity: "warning",
  area: "structure",
  title: "An opening in a load-bearing panel has no reinforcement",
  why: "What the opening takes out of a load-bearing sheet has to be carried around it, unless the maker's data say that it need not.",
  sources: [],
  say: ({ cutout, panel }) => ({
    what: `Cutout ${cutout} in the load-bearing panel ${panel} has no reinforcement.`,
    todo: "Record its doubler or ring under 'reinforcement'.",
  }),
  *check(project): Iterable<Problem> {
    for (const { opening, reinforced } of structureOf(project).openings) {
      const { cutout, id, panel } = opening;
      if (reinforced || !panel.loadBearing?.value || panel.construction?.value === "sandwich") continue;
      yield {
        rule: "cutout-not-reinforced",
        subject: { kind: "cutout", id },
        place: (cutout.id ?? cutout).place,
        facts: { cutout: id, panel: panel.id?.value },
        related: [{ place: panel.loadBearing.place, words: "the panel" }],
      };
    }
  },
  examples: () => [
    {
      title: "A bare hole in a load-bearing skin",
      text: doublerExample({ panel: ["load-bearing: true"], doubler: "" }),
      finds: ["C1 in the load-bearing panel BAY-SKIN has no reinforcement"],
    },
    { title: "With a doubler", text: doublerExample({ panel: ["load-bearing: true"] }), finds: [] },
    { title: "In a panel that carries nothing", text: doublerExample({ doubler: "" }), finds: [] },
  ],
});
