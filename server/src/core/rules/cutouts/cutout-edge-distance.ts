import { holds } from "../../findings/finding";
import { openingsOf } from "../../graph/derivations";
import { geometrySource } from "../../graph/openings";
import { formatMeasure, type UnitSymbol } from "../../quantities";
import { defineRule } from "../rule";
import { panelExample } from "./panel-example";
import { shifts } from "./shifts";

export const cutoutEdgeDistance = defineRule<{
  cutout: string;
  panel: string;
  distance: number;
  least: number;
  unit: UnitSymbol;
}>({
  id: "cutout-edge-distance",
  severity: "error",
  area: "cutouts",
  title: "An opening comes nearer to the panel's edge than its data allow",
  why:
    "The strip that is left between opening and edge carries what the whole panel carried. How narrow it may be is " +
    "for the maker's data to say; the panel's record names them.",
  sources: [geometrySource],
  say: ({ cutout, panel, distance, least, unit }) => ({
    what:
      `Cutout ${cutout} leaves ${formatMeasure(distance, unit)} to the edge of panel ${panel}; its data ask for ` +
      `${formatMeasure(least, unit)}.`,
    todo: "Move the opening inward or make it smaller.",
  }),
  *check(project) {
    for (const { cutout, id, panel, edge } of openingsOf(project).cutouts) {
      if (!edge.value || !edge.least) continue;
      yield {
        rule: "cutout-edge-distance",
        subject: { kind: "cutout", id },
        place: (cutout.opening?.at ?? cutout.opening ?? cutout).place,
        value: edge.value,
        limit: edge.least,
        sense: "at-least",
        holds: holds(edge.value.value, "at-least", edge.least.value),
        facts: {
          cutout: id,
          panel: panel.id?.value,
          distance: edge.value.value,
          least: edge.least.value,
          unit: edge.value.unit as UnitSymbol,
        },
        related: panel.outline ? [{ place: panel.outline.place, words: "outline of the panel" }] : [],
      };
    }
  },
  remedies: ({ subject }, project) => shifts(subject.id, project),
  examples: () => [
    {
      title: "Half an inch left where an inch is asked for",
      text: panelExample({ openings: ["{ shape: circle, diameter: 3 in, at: { x: 8 in, y: 0 in } }"] }),
      finds: ["leaves 0.5 in to the edge of panel AFT-FLOOR; its data ask for 1 in"],
    },
    { title: "In the middle", text: panelExample(), finds: [] },
  ],
});
