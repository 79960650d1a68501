import { structureOf } from "../../graph/derivations";
import { roarkCircle, roarkRoundedRectangle } from "../../methods/stress-concentration";
import { formatApart } from "../../quantities";
import { defineRule } from "../rule";
import { doublerExample } from "./doubler-example";
import { type HeldFacts, hold } from "./held";

export const cutoutStressAboveAllowable = defineRule<HeldFacts>({
  id: "cutout-stress-above-allowable",
  severity: "error",
  area: "structure",
  title: "The stress at an opening's edge is higher than the panel's data allow",
  why:
    "Stress gathers at the sides of an opening: the mean stress of what is left of the panel times a factor of its shape. " +
    "The doubler is not counted in it. Told where the panel's record gives its load and what its material may see.",
  sources: [roarkCircle, roarkRoundedRectangle],
  say: ({ cutout, is, limit }) => {
    const [a, b] = formatApart(is, limit);
    return {
      what: `At the edge of cutout ${cutout} the stress is ${a} psi; the panel's data allow ${b} psi.`,
      todo: "Make the opening smaller or rounder, turn it along the load, or have its reinforcement analysed.",
    };
  },
  *check(project) {
    for (const { stress } of structureOf(project).openings) {
      if (!stress) continue;
      const { cutout, id } = stress.opening;
      const place = (cutout.opening?.shape ?? cutout.opening ?? cutout).place;
      yield* hold("cutout-stress-above-allowable", id, place, stress.peak, stress.allowable, "at-most");
    }
  },
  examples: () => [
    {
      title: "A hole of 1 in in a sheet of 20 in under 4000 lbf",
      text: doublerExample({
        opening: "{ shape: circle, diameter: 1 in, at: { x: 0 in, y: 0 in } }",
        panel: ["load: { direction: 90 deg, force: 4000 lbf, allowable: 18 ksi, data: Stress note B9-77 }"],
        doubler: "",
      }),
      finds: ["the stress is 18.* psi; the panel's data allow 18000 psi"],
    },
    {
      title: "A strip of 6 in at the hole, in a panel that is 20 in wide elsewhere",
      text: doublerExample({
        opening: "{ shape: circle, diameter: 2 in, at: { x: 5 in, y: 0 in } }",
        thickness: "0.040 in",
        panel: ["load: { direction: 0 deg, force: 800 lbf, allowable: 10 ksi, data: Stress note B9-77 }"],
        doubler: "",
      }).replace(
        "{ shape: rectangle, width: 20 in, height: 12 in, corner-radius: 1 in }",
        "{ shape: polygon, points: [{ x: -10 in, y: -10 in }, { x: 0 in, y: -10 in }, { x: 0 in, y: -3 in }, { x: 10 in, y: -3 in }, { x: 10 in, y: 3 in }, { x: 0 in, y: 3 in }, { x: 0 in, y: 10 in }, { x: -10 in, y: 10 in }] }",
      ),
      finds: ["the stress is 11533 psi; the panel's data allow 10000 psi"],
    },
    {
      title: "Half the force",
      text: doublerExample({
        opening: "{ shape: circle, diameter: 1 in, at: { x: 0 in, y: 0 in } }",
        panel: ["load: { direction: 90 deg, force: 2000 lbf, allowable: 18 ksi, data: Stress note B9-77 }"],
        doubler: "",
      }),
      finds: [],
    },
  ],
});
