import type { Problem } from "../../findings/finding";
import { formatMeasure, type UnitSymbol } from "../../quantities";
import { defineRule } from "../rule";
import { doublerExample } from "./doubler-example";
import { reinforcementsOf } from "./held";

export const doublerTooNarrow = defineRule<{ cutout: string; net: number; unit: UnitSymbol }>({
  id: "doubler-too-narrow",
  severity: "error",
  area: "structure",
  title: "A doubler or ring leaves no section beside its opening",
  why: "Opening and fastener holes take its whole width across the load, so that no thickness would do.",
  sources: [],
  say: ({ cutout, net, unit }) => ({
    what: `Beside cutout ${cutout} the reinforcement leaves ${formatMeasure(net, unit)} of width, fastener holes taken off.`,
    todo: "Make it wider across the load, or set fewer rows of fasteners.",
  }),
  *check(project): Iterable<Problem> {
    for (const { opening, reinforcement, net } of reinforcementsOf(project)) {
      if (!net || net.value > 0) continue;
      yield {
        rule: "doubler-too-narrow",
        subject: { kind: "cutout", id: opening.id },
        place: (reinforcement.width ?? reinforcement.outline ?? reinforcement).place,
        facts: { cutout: opening.id, net: net.value, unit: net.unit as UnitSymbol },
      };
    }
  },
  examples: () => [
    {
      title: "A doubler as wide as its opening",
      text: doublerExample({
        doubler:
          "kind: doubler, material: 2024-T3 clad, thickness: 0.040 in, joint: single-lap, outline: { shape: rectangle, width: 3.25 in, height: 3.25 in, corner-radius: 0 in }",
      }),
      finds: ["leaves -0.25 in of width"],
    },
    { title: "Two inches on each side", text: doublerExample(), finds: [] },
  ],
});
