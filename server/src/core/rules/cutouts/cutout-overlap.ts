import type { Problem } from "../../findings/finding";
import { openingsOf } from "../../graph/derivations";
import { defineRule } from "../rule";
import { panelExample } from "./panel-example";
import { shifts } from "./shifts";

export const cutoutOverlap = defineRule<{ cutout: string; other: string }>({
  id: "cutout-overlap",
  severity: "error",
  area: "cutouts",
  title: "Two openings overlap",
  why: "Together they are another opening than either, with sharp corners where they meet, and neither is checked as it will be.",
  sources: [],
  say: ({ cutout, other }) => ({
    what: `Cutouts ${cutout} and ${other} overlap.`,
    todo: "Move them apart, or record the one opening that they make as a polygon.",
  }),
  *check(project): Iterable<Problem> {
    for (const { cutout, id, neighbours } of openingsOf(project).cutouts) {
      for (const { other, place, isOverlapping } of neighbours) {
        if (!isOverlapping) continue;
        yield {
          rule: "cutout-overlap",
          subject: { kind: "cutout", id },
          place: (cutout.opening?.at ?? cutout.opening ?? cutout).place,
          facts: { cutout: other, other: id },
          related: [{ place, words: `opening of ${other}` }],
        };
      }
    }
  },
  corrections: ({ subject }, project) => shifts(subject?.id, project),
  examples: () => [
    {
      title: "Two circles two inches from centre to centre",
      text: panelExample({
        openings: [
          "{ shape: circle, diameter: 3 in, at: { x: -1 in, y: 0 in } }",
          "{ shape: circle, diameter: 3 in, at: { x: 1 in, y: 0 in } }",
        ],
      }),
      finds: ["C1 and C2 overlap"],
    },
    { title: "One circle", text: panelExample(), finds: [] },
  ],
});
