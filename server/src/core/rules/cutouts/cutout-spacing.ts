import { holds } from "../../findings/finding";
import { openingsOf } from "../../graph/derivations";
import { geometrySource } from "../../graph/openings";
import { formatMeasure, type UnitSymbol } from "../../quantities";
import { defineRule } from "../rule";
import { panelExample } from "./panel-example";
import { shifts } from "./shifts";

export const cutoutSpacing = defineRule<{
  cutout: string;
  other: string;
  distance: number;
  least: number;
  unit: UnitSymbol;
}>({
  id: "cutout-spacing",
  severity: "error",
  area: "cutouts",
  title: "Two openings lie nearer together than the panel's data allow",
  why:
    "The bridge between two openings carries the load of both, and their stress concentrations add up. How narrow it " +
    "may be is for the maker's data to say; the panel's record names them.",
  sources: [geometrySource],
  say: ({ cutout, other, distance, least, unit }) => ({
    what:
      `Cutouts ${cutout} and ${other} lie ${formatMeasure(distance, unit)} apart; the panel's data ask for ` +
      `${formatMeasure(least, unit)}.`,
    todo: "Move one of them away, or make one opening of the two.",
  }),
  *check(project) {
    for (const { cutout, id, neighbours } of openingsOf(project).cutouts) {
      for (const { other, place, value, least } of neighbours) {
        if (!value || !least) continue;
        yield {
          rule: "cutout-spacing",
          subject: { kind: "cutout", id },
          place: (cutout.opening?.at ?? cutout.opening ?? cutout).place,
          value,
          limit: least,
          sense: "at-least",
          holds: holds(value.value, "at-least", least.value),
          facts: {
            cutout: other,
            other: id,
            distance: value.value,
            least: least.value,
            unit: value.unit as UnitSymbol,
          },
          related: [{ place, words: `opening of ${other}` }],
        };
      }
    }
  },
  remedies: ({ subject }, project) => shifts(subject.id, project),
  examples: () => [
    {
      title: "Two circles an inch apart where 1.5 in is asked for",
      text: panelExample({
        openings: [
          "{ shape: circle, diameter: 3 in, at: { x: -2 in, y: 0 in } }",
          "{ shape: circle, diameter: 3 in, at: { x: 2 in, y: 0 in } }",
        ],
      }),
      finds: ["C1 and C2 lie 1 in apart; the panel's data ask for 1.5 in"],
    },
    {
      title: "Two circles far enough apart",
      text: panelExample({
        openings: [
          "{ shape: circle, diameter: 3 in, at: { x: -3 in, y: 0 in } }",
          "{ shape: circle, diameter: 3 in, at: { x: 3 in, y: 0 in } }",
        ],
      }),
      finds: [],
    },
  ],
});
