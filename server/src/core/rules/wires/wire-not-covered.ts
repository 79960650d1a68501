import type { Problem } from "../../findings/finding";
import { electricalOf } from "../../graph/derivations";
import { coverageWords } from "../../tables/lookup-words";
import { defineRule } from "../rule";
import { circuitExample } from "./circuit-example";

export const wireNotCovered = defineRule<{ wire: string; wanted: string; gap: string; table: string }>({
  id: "wire-not-covered",
  severity: "warning",
  area: "wires",
  title: "A published table ends before this wire",
  why:
    "A number outside a table's range would be a guess. The value is left out, and the checks that need it are not " +
    "made: the record is not shown to be wrong here, and not shown to be right.",
  sources: [],
  say: ({ wire, wanted, gap, table }) => ({
    what: `Wire ${wire}: ${wanted} not covered: ${gap} (${table}).`,
    todo: "Bring the wire inside the table, or show the value by the maker's data or by test.",
  }),
  *check(project): Iterable<Problem> {
    for (const { wire, id, isUsed, gaps } of electricalOf(project).wires) {
      if (!isUsed) continue;
      for (const { wanted, reason, source } of gaps) {
        yield {
          rule: "wire-not-covered",
          subject: { kind: "wire", id },
          place: (reason.quantity === "gauge" ? wire.gauge?.place : undefined) ?? wire.id!.place,
          facts: {
            wire: id,
            wanted,
            gap: coverageWords(reason),
            table: [source.document, source.at].join(", "),
          },
        };
      }
    }
  },
  examples: [
    {
      title: "More wires in the bundle than the figure covers at this loading",
      text: circuitExample({ bundle: "{ id: B1, wires: 40, loading: 40 % }" }),
      finds: ["bundle factor not covered"],
    },
    {
      title: "A bundle inside the figure",
      text: circuitExample({ bundle: "{ id: B1, wires: 6, loading: 40 % }" }),
      finds: [],
    },
  ],
});
