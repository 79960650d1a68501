import { holds } from "../../findings/finding";
import { openingsOf } from "../../graph/derivations";
import { assumed, derive } from "../../graph/value";
import { convert, formatMeasure, type UnitSymbol } from "../../quantities";
import type { Source } from "../../source";
import { defineRule } from "../rule";
import { lengthThatKeeps } from "../wires/recorded";
import { panelExample } from "./panel-example";

/** No published figure was found; AC 43.13-1B par. 3-1b only asks for rounded corners. */
const shopFigure: Source = {
  document: "Shop practice for corner radii",
  standing: "memory",
  note: "AC 43.13-1B gives no figure; it asks for rounded corners (par. 3-1b)",
};
const shopRadiusInches = 0.25;

export const cutoutCornerRadius = defineRule<{
  cutout: string;
  radius: number;
  least: number;
  unit: UnitSymbol;
  isRecorded: boolean;
}>({
  id: "cutout-corner-radius",
  severity: "error",
  area: "cutouts",
  title: "A corner of an opening is sharper than allowed",
  why:
    "Stress gathers in corners, the more the sharper they are, and cracks start there. Where the panel's data give a " +
    "least radius it is held against that; where they give none, a figure from memory (1/4 in) only warns.",
  sources: [shopFigure],
  say: ({ cutout, radius, least, unit, isRecorded }) => ({
    what:
      `Cutout ${cutout} has a corner radius of ${formatMeasure(radius, unit)}; ` +
      (isRecorded ? "the panel's data ask" : "shop practice (from memory) asks") +
      ` for ${formatMeasure(least, unit)}.`,
    todo: isRecorded
      ? "Make the radius larger, or the opening round."
      : "Make the radius larger, or record the panel's own minimum with its document.",
  }),
  *check(project) {
    for (const { cutout, id, radius } of openingsOf(project).cutouts) {
      const subject = { kind: "cutout", id } as const;
      const limit = radius.least ?? shopRadius(subject, radius.value?.unit === "mm" ? "mm" : "in");
      if (!radius.value || !limit) continue;
      yield {
        rule: "cutout-corner-radius",
        subject,
        place: (cutout.opening?.cornerRadius ?? cutout.opening?.shape ?? cutout).place,
        value: radius.value,
        limit,
        sense: "at-least",
        holds: holds(radius.value.value, "at-least", limit.value),
        facts: {
          cutout: id,
          radius: radius.value.value,
          least: limit.value,
          unit: limit.unit as UnitSymbol,
          isRecorded: radius.least !== undefined,
        },
        related: [],
      };
    }
  },
  *remedies(assessment, project) {
    const found = openingsOf(project).cutouts.find(({ id }) => id === assessment.subject.id);
    yield* lengthThatKeeps(
      assessment,
      found?.cutout.opening?.cornerRadius,
      (length) => `Give ${assessment.subject.id} a corner radius of ${length}`,
    );
  },
  examples: () => [
    {
      title: "1/4 in where the panel's data ask for 1/2 in",
      text: panelExample({
        openings: ["{ shape: rectangle, width: 4 in, height: 3 in, corner-radius: 1/4 in }"],
      }),
      finds: ["radius of 0.25 in; the panel's data ask for 0.5 in"],
    },
    {
      title: "A polygon has sharp corners",
      text: panelExample({
        openings: [
          "{ shape: polygon, points: [{ x: 0 in, y: 0 in }, { x: 3 in, y: 0 in }, { x: 0 in, y: 3 in }] }",
        ],
        minimums: "",
      }),
      finds: ["radius of 0 in; shop practice \\(from memory\\) asks for 0.25 in"],
    },
    {
      title: "Half an inch",
      text: panelExample({
        openings: ["{ shape: rectangle, width: 4 in, height: 3 in, corner-radius: 1/2 in }"],
      }),
      finds: [],
    },
  ],
});

function shopRadius(subject: { readonly kind: "cutout"; readonly id: string }, unit: "in" | "mm") {
  return derive({
    subject,
    quantity: "least-distance",
    unit,
    formula: "r",
    operands: {
      r: assumed(
        "shop practice",
        convert(shopRadiusInches, "in", unit),
        unit,
        "The panel's record gives no least radius.",
      ),
    },
    compute: ({ r }) => r,
    sources: [shopFigure],
  });
}
