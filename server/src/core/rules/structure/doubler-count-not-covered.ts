import type { Problem } from "../../findings/finding";
import { coverageWords } from "../../tables/lookup-words";
import { rivetTables } from "../../tables/rivets-per-inch";
import { defineRule } from "../rule";
import { doublerExample } from "./doubler-example";
import { reinforcementsOf } from "./held";

export const doublerCountNotCovered = defineRule<{ cutout: string; reason: string }>({
  id: "doubler-count-not-covered",
  severity: "warning",
  area: "structure",
  title: "No table gives the number of fasteners of a reinforcement",
  why:
    "The tables hold certain aluminium sheets from 0.016 to 0.128 in and certain fasteners, and leave cells blank. " +
    "Nothing is extrapolated: the count is held against nothing.",
  sources: Object.values(rivetTables).map(({ source }) => source),
  say: ({ cutout, reason }) => ({
    what: `No count of fasteners for cutout ${cutout}: ${reason}.`,
    todo: "Take the count from the maker's repair data or an analysis, or choose a fastener that the table has.",
  }),
  *check(project): Iterable<Problem> {
    for (const { opening, reinforcement, notCovered } of reinforcementsOf(project)) {
      const [gap] = notCovered;
      if (!gap) continue;
      const reason =
        gap.kind === "sheet"
          ? `no table names ${gap.material.slice(0, 40)}`
          : `Table ${gap.table}, ${coverageWords(gap.gap)}`;
      yield {
        rule: "doubler-count-not-covered",
        subject: { kind: "cutout", id: opening.id },
        place: (reinforcement.fasteners?.diameter ?? reinforcement).place,
        facts: { cutout: opening.id, reason },
      };
    }
  },
  examples: () => [
    {
      title: "A sheet that no table names",
      text: doublerExample({ material: "6061-T6" }),
      finds: ["for cutout C1: no table names 6061-T6"],
    },
    {
      title: "A rivet that the table leaves blank for this sheet",
      text: doublerExample({
        thickness: "0.051 in",
        fasteners: "{ kind: 2117-rivet, diameter: 3/32 in, count-per-side: 30 }",
      }),
      finds: [
        "Table 4-9, sheet thickness 0.051 in, the table holds 0.016 in to 0.04 in \\(3/32 in rivets\\)",
      ],
    },
    { title: "Clad 2024-T3 and 1/8 in rivets", text: doublerExample(), finds: [] },
  ],
});
