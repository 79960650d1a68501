import type { Problem } from "../../findings/finding";
import { linesOf } from "../../graph/derivations";
import { fuelLineSource } from "../../tables/line-installation-limits";
import { defineRule } from "../rule";
import { lineExample } from "./line-example";

export const fuelLineNotBonded = defineRule<{ line: string }>({
  id: "fuel-line-not-bonded",
  severity: "error",
  area: "lines",
  title: "A fuel line is not bonded at its clamps",
  why: "Flowing fuel charges the line that it flows in. Bonded at each clamp it can't spark across to what is near.",
  sources: [fuelLineSource],
  say: ({ line }) => ({
    what: `Fuel line ${line} is not bonded at each clamp.`,
    todo: "Take clamps that bond it, on bare metal, and record it.",
  }),
  *check(project): Iterable<Problem> {
    for (const { line, id } of linesOf(project).runs) {
      if (line.fluid?.value !== "fuel" || line.bonded?.value !== false) continue;
      yield {
        rule: "fuel-line-not-bonded",
        subject: { kind: "line", id },
        place: line.bonded.place,
        facts: { line: id },
      };
    }
  },
  examples: () => [
    {
      title: "Cushioned clamps without a bond",
      text: lineExample({ line: "kind: tube, fluid: fuel, dash: 6, material: aluminium, bonded: false" }),
      finds: ["Fuel line L1 is not bonded"],
    },
    {
      title: "Bonded, and a water line that need not be",
      text: lineExample({
        line: "kind: tube, fluid: fuel, dash: 6, material: aluminium, bonded: true",
        sections: ["  - { id: L2, kind: tube, fluid: water, dash: 6, bonded: false }"],
      }),
      finds: [],
    },
  ],
});
