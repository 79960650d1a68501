import type { Problem } from "../../findings/finding";
import { structureOf } from "../../graph/derivations";
import { defineRule } from "../rule";
import { doublerExample } from "./doubler-example";

export const cutoutInPressureShell = defineRule<{ cutout: string; panel: string }>({
  id: "cutout-in-pressure-shell",
  severity: "error",
  area: "structure",
  title: "An opening is cut in a pressurised area",
  why:
    "The circular whose data are used here says that they are for areas that are not pressurised. Pressure loads the edge of " +
    "an opening in every flight, and nothing on these pages covers that.",
  sources: [
    {
      document: "FAA AC 43.13-1B",
      edition: "9/8/98",
      at: "purpose and applicability",
      standing: "published",
    },
  ],
  say: ({ cutout, panel }) => ({
    what: `Cutout ${cutout} is in panel ${panel}, which is pressurised; no check here covers it.`,
    todo: "Take the opening and its reinforcement from the maker's data for this place.",
  }),
  *check(project): Iterable<Problem> {
    for (const { opening } of structureOf(project).openings) {
      const { cutout, id, panel } = opening;
      if (!panel.pressurised?.value) continue;
      yield {
        rule: "cutout-in-pressure-shell",
        subject: { kind: "cutout", id },
        place: (cutout.panel ?? cutout).place,
        facts: { cutout: id, panel: panel.id?.value },
        related: [{ place: panel.pressurised.place, words: "the panel" }],
      };
    }
  },
  examples: () => [
    {
      title: "A skin of the pressurised cabin",
      text: doublerExample({ panel: ["pressurised: true"] }),
      finds: ["C1 is in panel BAY-SKIN, which is pressurised"],
    },
    { title: "A skin of the tail", text: doublerExample(), finds: [] },
  ],
});
