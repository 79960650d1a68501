import { holds } from "../../findings/finding";
import { airOf } from "../../graph/derivations";
import { screenSources } from "../../methods/air/screens";
import { formatNumber } from "../../quantities";
import { defineRule } from "../rule";
import { airExample } from "./air-example";

export const screenAirTooSlow = defineRule<{ cutout: string; condition: string; is: number; least: number }>({
  id: "screen-air-too-slow",
  severity: "warning",
  area: "air",
  title: "Air through a mesh is too slow for the formula of its loss",
  why:
    "The formula of a mesh's loss holds for fast air. In slow air, below a Reynolds number of its wires of about 400, a mesh " +
    "loses more than that, so that less air passes than is computed.",
  sources: [screenSources.mesh],
  say: ({ cutout, condition, is, least }) => ({
    what: `In ${condition}, the wires of the mesh in ${cutout} see a Reynolds number of ${formatNumber(is, 3)}, below ${least}.`,
    todo: "Record the screen's loss coefficient from its maker's data.",
  }),
  *check(project) {
    for (const { conditions, path } of airOf(project).paths) {
      for (const { id: condition, wires } of conditions) {
        for (const { cutout, value, least } of wires) {
          if (!value || !least) continue;
          yield {
            rule: "screen-air-too-slow",
            subject: { kind: "cutout", id: cutout },
            place: (path.id ?? path).place,
            value,
            limit: least,
            sense: "at-least",
            holds: holds(value.value, "at-least", least.value),
            facts: { cutout, condition, is: value.value, least: least.value },
            related: [],
          };
        }
      }
    }
  },
  examples: () => [
    {
      title: "Fine wires in slow air",
      text: airExample({ screen: "{ kind: square-mesh, opening: 0.097 in, wire: 0.028 in }" }),
      finds: ["In cruise, the wires of the mesh in C-IN see a Reynolds number of .*, below 400"],
    },
    {
      title: "The loss is recorded",
      text: airExample({ screen: "{ kind: square-mesh, opening: 0.097 in, wire: 0.028 in, loss: 1.2 }" }),
      finds: [],
    },
  ],
});
