import { holds } from "../../findings/finding";
import { openingsOf } from "../../graph/derivations";
import { formatMeasure, type UnitSymbol } from "../../quantities";
import { fastenerEdgeDistance } from "../../tables/fastener-edge-distance";
import { defineRule } from "../rule";
import { panelExample } from "./panel-example";
import { shifts } from "./shifts";

export const cutoutFastenerDistance = defineRule<{
  cutout: string;
  panel: string;
  x: number;
  y: number;
  distance: number;
  least: number;
  unit: UnitSymbol;
}>({
  id: "cutout-fastener-distance",
  severity: "error",
  area: "cutouts",
  title: "An opening leaves a fastener too little edge distance",
  why:
    "The edge of an opening is an edge for the fastener beside it: nearer than its edge distance, the sheet tears out " +
    "before the fastener carries its load.",
  sources: [fastenerEdgeDistance("protruding").source, fastenerEdgeDistance("countersunk").source],
  say: ({ cutout, panel, x, y, distance, least, unit }) => ({
    what:
      distance < 0
        ? `Cutout ${cutout} removes the fastener at x ${formatMeasure(x, unit)}, y ${formatMeasure(y, unit)} of panel ${panel}.`
        : `Cutout ${cutout} leaves ${formatMeasure(distance, unit)} to the fastener at x ${formatMeasure(x, unit)}, ` +
          `y ${formatMeasure(y, unit)} of panel ${panel}; it needs ${formatMeasure(least, unit)}.`,
    todo: "Move the opening away from the fastener or make it smaller.",
  }),
  *check(project) {
    for (const { cutout, id, panel, fastener: worst } of openingsOf(project).cutouts) {
      if (!worst?.value || !worst.least) continue;
      yield {
        rule: "cutout-fastener-distance",
        subject: { kind: "cutout", id },
        place: (cutout.opening?.at ?? cutout.opening ?? cutout).place,
        value: worst.value,
        limit: worst.least,
        sense: "at-least",
        holds: holds(worst.value.value, "at-least", worst.least.value),
        facts: {
          cutout: id,
          panel: panel.id?.value,
          x: worst.at.x,
          y: worst.at.y,
          distance: worst.value.value,
          least: worst.least.value,
          unit: worst.value.unit as UnitSymbol,
        },
        related: [{ place: worst.place, words: "the fastener" }],
      };
    }
  },
  remedies: ({ subject }, project) => shifts(subject.id, project),
  examples: () => [
    {
      title: "0.2 in to a 1/8 in fastener that needs 0.25 in",
      text: panelExample({ fasteners: "[{ at: { x: 1.7 in, y: 0 in }, diameter: 1/8 in }]" }),
      finds: ["leaves 0.2 in to the fastener at x 1.7 in, y 0 in of panel AFT-FLOOR; it needs 0.25 in"],
    },
    {
      title: "A fastener inside the opening",
      text: panelExample({ fasteners: "[{ at: { x: 0.5 in, y: 0 in }, diameter: 1/8 in }]" }),
      finds: ["removes the fastener"],
    },
    {
      title: "Exactly two diameters",
      text: panelExample({ fasteners: "[{ at: { x: 1.75 in, y: 0 in }, diameter: 1/8 in }]" }),
      finds: [],
    },
  ],
});
