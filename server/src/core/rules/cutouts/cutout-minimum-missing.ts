import type { Problem } from "../../findings/finding";
import { openingsOf } from "../../graph/derivations";
import { defineRule } from "../rule";
import { listWords } from "../wording";
import { panelExample } from "./panel-example";

export const cutoutMinimumMissing = defineRule<{ cutout: string; panel: string; missing: readonly string[] }>(
  {
    id: "cutout-minimum-missing",
    severity: "warning",
    area: "cutouts",
    title: "A panel's record gives no least distance for its openings",
    why:
      "No published figure was found for the distance from an opening to a panel's edge or to another opening, and none " +
      "is invented here. Without the maker's figure the distance is computed but held against nothing.",
    sources: [],
    say: ({ cutout, panel, missing }) => ({
      what: `Panel ${panel} gives no least distance (${listWords(missing, "and")}), so cutout ${cutout} is held against none.`,
      todo: `Add the maker's figures to the panel: minimums: { ${missing.map((key) => `${key}: …`).join(", ")}, data: … }.`,
    }),
    *check(project): Iterable<Problem> {
      for (const { cutout, id, panel, edge, neighbours } of openingsOf(project).cutouts) {
        const missing = [
          ...(edge.kind === "inside" && !edge.least ? ["edge"] : []),
          ...(neighbours.some((other) => other.value && !other.least) ? ["between"] : []),
        ];
        if (missing.length === 0 || !cutout.panel) continue;
        yield {
          rule: "cutout-minimum-missing",
          subject: { kind: "cutout", id },
          place: cutout.panel.place,
          facts: { cutout: id, panel: panel.id?.value, missing },
          related: [{ place: panel.place, words: "the panel" }],
        };
      }
    },
    examples: () => [
      {
        title: "A panel without minimums",
        text: panelExample({ minimums: "" }),
        finds: ["Panel AFT-FLOOR gives no least distance \\(edge\\)"],
      },
      { title: "A panel with minimums", text: panelExample(), finds: [] },
    ],
  },
);
