import type { Problem } from "../../findings/finding";
import { linesOf } from "../../graph/derivations";
import { torqueSources } from "../../tables/flare-nut-torque";
import { defineRule } from "../rule";
import { listWords } from "../wording";
import { lineExample } from "./line-example";

export const flareNutTorqueWithoutTable = defineRule<{
  fitting: string;
  line: string;
  missing: readonly string[];
}>({
  id: "flare-nut-torque-without-table",
  severity: "warning",
  area: "lines",
  title: "A torque of a flare nut does not say which table it is from",
  why:
    "Three published columns give three torques for one nut: a 3/8 in nut on steel takes 215 to 245 in lb by one table " +
    "and 270 to 300 in lb by another. A torque without its table can't be checked by anybody.",
  sources: torqueSources,
  say: ({ fitting, line, missing }) => ({
    what: `The torque of flare nut ${fitting} of line ${line} does not name its ${listWords(missing, "and")}.`,
    todo: "Name the table and the column that the torque is taken from.",
  }),
  *check(project): Iterable<Problem> {
    for (const run of linesOf(project).runs) {
      for (const { fitting, id } of run.fittings) {
        const missing = [...(fitting.table ? [] : ["table"]), ...(fitting.column ? [] : ["column"])];
        if (missing.length === 0 || !fitting.torque) continue;
        yield {
          rule: "flare-nut-torque-without-table",
          subject: { kind: "fitting", id },
          place: fitting.torque.place,
          facts: { fitting: id, line: run.id, missing },
        };
      }
    }
  },
  examples: () => [
    {
      title: "A bare number",
      text: lineExample({
        line: "kind: tube, fluid: water, dash: 6, material: steel, fittings: [{ id: FN-1, torque: 230 in lb }]",
      }),
      finds: ["FN-1 of line L1 does not name its table and column"],
    },
    {
      title: "With its table and column",
      text: lineExample({
        line: "kind: tube, fluid: water, dash: 6, material: steel, fittings: [{ id: FN-1, torque: 230 in lb, table: NAVEDTRA 14018 Table 5-9, column: steel-tube }]",
      }),
      finds: [],
    },
  ],
});
