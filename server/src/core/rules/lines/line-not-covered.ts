import type { Problem } from "../../findings/finding";
import { linesOf } from "../../graph/derivations";
import { coverageWords } from "../../tables/lookup-words";
import { defineRule } from "../rule";
import { lineExample } from "./line-example";

export const lineNotCovered = defineRule<{ line: string; wanted: string; gap?: string; table?: string }>({
  id: "line-not-covered",
  severity: "warning",
  area: "lines",
  title: "Neither a published table nor the record gives a limit of a hose or tube",
  why:
    "A number outside a table's range would be a guess, and for some limits no published figure was found at all: the " +
    "working pressure of tubes, and of any line that carries refrigerant. The check that needs it is not made.",
  sources: [],
  say: ({ line, wanted, gap, table }) => ({
    what:
      gap === undefined
        ? `Line ${line}: no published ${wanted} holds for it, and the record gives none.`
        : `Line ${line}: ${wanted} not covered: ${gap} (${table}).`,
    todo: "Add what its maker's data give under maker-limits, or name the material or specification that has a table.",
  }),
  *check(project): Iterable<Problem> {
    for (const { id, gaps } of linesOf(project).runs) {
      for (const { wanted, place, table } of gaps) {
        const known = table && {
          gap: coverageWords(table.reason),
          table: table.source.document,
        };
        yield {
          rule: "line-not-covered",
          subject: { kind: "line", id },
          place,
          facts: { line: id, wanted, ...known },
        };
      }
    }
  },
  examples: () => [
    {
      title: "A size between those of the table, and a refrigerant hotter than the table goes",
      text: lineExample({
        line: "kind: tube, fluid: water, outside-diameter: 7/16 in, material: steel, support-spacing: 20 in",
        sections: [
          "  - { id: L2, kind: hose, fluid: r-134a, dash: 6, hottest: 80 degC, maker-limits: { pressure: 500 psi, data: Hose sheet } }",
        ],
      }),
      finds: [
        "support spacing not covered: steel tube size 0.4375 in",
        "pressure of R-134a not covered: temperature 176 degF",
      ],
    },
    {
      title: "The working pressure of a tube is for its maker to say",
      text: lineExample({ line: "kind: tube, fluid: water, dash: 6, material: steel, pressure: 60 psi" }),
      finds: ["no published working pressure holds for it"],
    },
    {
      title: "The maker says it",
      text: lineExample({
        line: "kind: tube, fluid: water, dash: 6, material: steel, pressure: 60 psi, maker-limits: { pressure: 500 psi, data: Tube sheet }",
      }),
      finds: [],
    },
  ],
});
