import { staticsSource } from "../../graph/mounts";
import { formatMeasure } from "../../quantities";
import { defineRule } from "../rule";
import { holdCases, type LoadFacts, largerFasteners, loadWords } from "./held";
import { mountExample } from "./mount-example";

export const fastenerOverTension = defineRule<LoadFacts>({
  id: "fastener-over-tension",
  severity: "error",
  area: "mounts",
  title: "A fastener of a mount is pulled beyond its strength",
  why:
    "A force at the height of the centre of gravity tips a component over: fasteners on one side are pulled, the more " +
    "the higher it stands and the nearer together they are. The tension of AN bolts is from memory and only warns.",
  sources: [staticsSource],
  say: ({ component, direction, value, limit }) => ({
    what:
      `Loaded ${loadWords(direction)}, a fastener of ${component} is pulled by ${formatMeasure(value, "lbf")}; ` +
      `it holds ${formatMeasure(limit, "lbf")}.`,
    todo: "Take larger or more fasteners, place them farther apart, or mount the component lower.",
  }),
  check: (project) =>
    holdCases(
      "fastener-over-tension",
      project,
      ({ tension }) => tension,
      ({ strengths }) => strengths.tension,
    ),
  remedies: largerFasteners,
  examples: () => [
    {
      title: "A tall box on a narrow foot",
      text: mountExample({
        cg: "{ from-front: 6 in, from-left: 4 in, from-bottom: 7 in }",
        fastener: "{ kind: other, diameter: 0.138 in, shear: 500 lbf, tension: 120 lbf, data: Screw sheet }",
        fasteners: [
          "{ from-front: 4 in, from-left: 2 in }",
          "{ from-front: 8 in, from-left: 2 in }",
          "{ from-front: 4 in, from-left: 6 in }",
          "{ from-front: 8 in, from-left: 6 in }",
        ],
      }),
      finds: ["^Loaded forward, a fastener of RACK is pulled by 271.7 lbf; it holds 120 lbf"],
    },
    { title: "15 lb on four AN3 bolts", text: mountExample(), finds: [] },
  ],
});
