import type { Problem } from "../../findings/finding";
import { openingsOf } from "../../graph/derivations";
import { defineRule } from "../rule";
import { panelExample } from "./panel-example";
import { shifts } from "./shifts";

export const cutoutOutsidePanel = defineRule<{ cutout: string; panel: string; how: "crossing" | "outside" }>({
  id: "cutout-outside-panel",
  severity: "error",
  area: "cutouts",
  title: "An opening reaches beyond the edge of its panel",
  why: "Such an opening can't be cut as drawn: a size, a position, or the panel is wrong.",
  sources: [],
  say: ({ cutout, panel, how }) => ({
    what:
      how === "outside"
        ? `Cutout ${cutout} lies wholly outside panel ${panel}.`
        : `Cutout ${cutout} crosses the edge of panel ${panel}.`,
    todo: "Check its sizes and 'at', which is measured in the panel's own x and y.",
  }),
  *check(project): Iterable<Problem> {
    for (const { cutout, id, panel, edge } of openingsOf(project).cutouts) {
      if (edge.kind === "inside") continue;
      yield {
        rule: "cutout-outside-panel",
        subject: { kind: "cutout", id },
        place: (cutout.opening?.at ?? cutout.opening ?? cutout).place,
        facts: { cutout: id, panel: panel.id?.value, how: edge.kind },
        related: panel.outline ? [{ place: panel.outline.place, words: "outline of the panel" }] : [],
      };
    }
  },
  corrections: ({ subject }, project) => shifts(subject?.id, project),
  examples: () => [
    {
      title: "A circle over the edge",
      text: panelExample({ openings: ["{ shape: circle, diameter: 3 in, at: { x: 9 in, y: 0 in } }"] }),
      finds: ["C1 crosses the edge of panel AFT-FLOOR"],
    },
    {
      title: "A circle beside the panel",
      text: panelExample({ openings: ["{ shape: circle, diameter: 3 in, at: { x: 30 in, y: 0 in } }"] }),
      finds: ["C1 lies wholly outside"],
    },
    { title: "A circle in the middle", text: panelExample(), finds: [] },
  ],
});
