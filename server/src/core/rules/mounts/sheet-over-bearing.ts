import { formatMeasure } from "../../quantities";
import { leastThicknessRatio } from "../../tables/fastener-strengths";
import { defineRule } from "../rule";
import { holdCases, type LoadFacts, largerFasteners, loadWords } from "./held";
import { mountExample } from "./mount-example";

export const sheetOverBearing = defineRule<LoadFacts>({
  id: "sheet-over-bearing",
  severity: "error",
  area: "mounts",
  title: "The shank of a mount's fastener presses on the sheet beyond its bearing strength",
  why:
    "The sheet yields around a shank that presses too hard: the hole grows long and the mount works loose. What the " +
    "airframe's record gives for the sheet counts as data; a figure for its material is from memory and only warns.",
  sources: [leastThicknessRatio.source],
  say: ({ component, direction, value, limit }) => ({
    what:
      `Loaded ${loadWords(direction)}, a fastener of ${component} bears on its sheet with ` +
      `${formatMeasure(value, "lbf")}; the sheet holds ${formatMeasure(limit, "lbf")}.`,
    todo: "Take larger or more fasteners, or thicken the sheet with a doubler and record its thickness.",
  }),
  check: (project) =>
    holdCases(
      "sheet-over-bearing",
      project,
      ({ shear }) => shear,
      ({ strengths }) => strengths.bearing,
    ),
  remedies: largerFasteners,
  examples: () => [
    {
      title: "A soft sheet, its strength recorded",
      text: mountExample({
        weight: "50 lb",
        shelf: "thickness: 0.040 in, bearing-strength: 30 ksi, data: B9-53",
      }),
      finds: [
        "^Loaded forward, a fastener of RACK bears on its sheet with 258.8 lbf; the sheet holds 225 lbf",
      ],
    },
    { title: "15 lb on 0.050 in clad sheet", text: mountExample(), finds: [] },
  ],
});
