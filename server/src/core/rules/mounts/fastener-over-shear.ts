import { formatMeasure } from "../../quantities";
import { fittingFactor } from "../../tables/load-factors";
import { defineRule } from "../rule";
import { holdCases, type LoadFacts, largerFasteners, loadWords } from "./held";
import { mountExample } from "./mount-example";

export const fastenerOverShear = defineRule<LoadFacts>({
  id: "fastener-over-shear",
  severity: "error",
  area: "mounts",
  title: "A fastener of a mount is sheared beyond its strength",
  why:
    "In a hard landing a component pulls at its mount with many times its weight. Each fastener takes its share of the " +
    "force, and more of it the farther it stands from where the force passes. Loads are ultimate; the fitting factor " +
    "is in them where it applies.",
  sources: [fittingFactor.source],
  say: ({ component, direction, value, limit }) => ({
    what:
      `Loaded ${loadWords(direction)}, a fastener of ${component} is sheared by ${formatMeasure(value, "lbf")}; ` +
      `it holds ${formatMeasure(limit, "lbf")}.`,
    todo: "Take larger or more fasteners, or place them farther apart around the centre of gravity.",
  }),
  check: (project) =>
    holdCases(
      "fastener-over-shear",
      project,
      ({ shear }) => shear,
      ({ strengths }) => strengths.shear,
    ),
  remedies: largerFasteners,
  examples: () => [
    {
      title: "60 lb on two insert screws, 18 g forward",
      text: mountExample({
        weight: "60 lb",
        fastener: "{ kind: other, diameter: 0.138 in, shear: 500 lbf, tension: 900 lbf, data: Screw sheet }",
        fasteners: ["{ from-front: 6 in, from-left: 2 in }", "{ from-front: 6 in, from-left: 6 in }"],
        cg: "{ from-front: 6 in, from-left: 4 in, from-bottom: 0 in }",
      }),
      finds: ["^Loaded forward, a fastener of RACK is sheared by 621 lbf; it holds 500 lbf"],
    },
    { title: "15 lb on four AN3 bolts", text: mountExample(), finds: [] },
  ],
});
