import type { Problem } from "../../findings/finding";
import { linesOf } from "../../graph/derivations";
import { flammableFluids, wireAboveLineSource } from "../../tables/line-installation-limits";
import { defineRule } from "../rule";
import { lineExample } from "./line-example";

export const wireBelowLine = defineRule<{ line: string; isHung: boolean }>({
  id: "wire-below-line",
  severity: "error",
  area: "lines",
  title: "A wire runs below a line of flammable fluid, or hangs on one",
  why:
    "What leaks from a line drips on the wire below it, and the first arc lights it. A wire that hangs on a line chafes " +
    "it, and pulls on its fittings.",
  sources: [wireAboveLineSource],
  say: ({ line, isHung }) => ({
    what: isHung
      ? `A wire is held up by line ${line}.`
      : `A wire runs below line ${line}, which carries flammable fluid.`,
    todo: isHung ? "Clamp the wire to structure by itself." : "Route the wire above the line.",
  }),
  *check(project): Iterable<Problem> {
    for (const { line, id } of linesOf(project).runs) {
      for (const { by, stands, hangsOnIt } of line.passes ?? []) {
        if (by?.value !== "wire") continue;
        const isHung = hangsOnIt?.value === true;
        const isBelow = stands?.value === "below" && flammableFluids.has(line.fluid?.value ?? "");
        const place = (isHung ? hangsOnIt : isBelow ? stands : undefined)?.place;
        if (!place) continue;
        yield { rule: "wire-below-line", subject: { kind: "line", id }, place, facts: { line: id, isHung } };
      }
    }
  },
  examples: () => [
    {
      title: "Below a hydraulic line, and tied to a water line",
      text: lineExample({
        line: "kind: tube, fluid: hydraulic, dash: 6, material: steel, passes: [{ by: wire, distance: 8 in, stands: below }]",
        sections: [
          "  - { id: L2, kind: hose, fluid: water, dash: 6, passes: [{ by: wire, distance: 1 in, hangs-on-it: true }] }",
        ],
      }),
      finds: ["A wire runs below line L1", "A wire is held up by line L2"],
    },
    {
      title: "Above",
      text: lineExample({
        line: "kind: tube, fluid: fuel, dash: 6, material: steel, passes: [{ by: wire, distance: 8 in, stands: above }]",
      }),
      finds: [],
    },
  ],
});
