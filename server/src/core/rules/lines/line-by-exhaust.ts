import type { Problem } from "../../findings/finding";
import { linesOf } from "../../graph/derivations";
import { exhaustSource, flammableFluids } from "../../tables/line-installation-limits";
import { defineRule } from "../rule";
import { lineExample } from "./line-example";

export const lineByExhaust = defineRule<{ line: string; fluid: string; burns: boolean }>({
  id: "line-by-exhaust",
  severity: "warning",
  area: "lines",
  title: "A line passes the exhaust without a fireproof shield",
  why:
    "Leakage must not reach hot exhaust parts, and flammable parts beside them need a fireproof shield. The rule gives no " +
    "distance, so every such pass is told. Refrigerant does not burn there, but breaks down into poisonous gas (from memory).",
  sources: [exhaustSource],
  say: ({ line, fluid, burns }) => ({
    what: `Line ${line} (${fluid}) passes the exhaust without a shield between.`,
    todo: burns
      ? "Put a fireproof shield between, or route the line elsewhere."
      : "Route the line elsewhere, or shield it: refrigerant on hot metal gives poisonous gas.",
  }),
  *check(project): Iterable<Problem> {
    for (const { line, id } of linesOf(project).runs) {
      const fluid = line.fluid?.value ?? "";
      const burns = flammableFluids.has(fluid);
      if (!burns && fluid !== "r-134a" && fluid !== "refrigerant") continue;
      for (const { by, guarded } of line.passes ?? []) {
        if (by?.value !== "exhaust" || guarded?.value) continue;
        yield {
          rule: "line-by-exhaust",
          subject: { kind: "line", id },
          place: by.place,
          facts: { line: id, fluid, burns },
        };
      }
    }
  },
  examples: () => [
    {
      title: "Refrigerant a foot from the exhaust",
      text: lineExample({
        line: "kind: hose, fluid: r-134a, dash: 6, passes: [{ by: exhaust, distance: 12 in }]",
      }),
      finds: ["L1 \\(r-134a\\) passes the exhaust without a shield"],
    },
    {
      title: "Shielded, and a line of water",
      text: lineExample({
        line: "kind: tube, fluid: fuel, dash: 6, material: steel, passes: [{ by: exhaust, distance: 6 in, guarded: true }]",
        sections: [
          "  - { id: L2, kind: hose, fluid: water, dash: 6, passes: [{ by: exhaust, distance: 6 in }] }",
        ],
      }),
      finds: [],
    },
  ],
});
