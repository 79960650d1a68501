import { wireInstallationLimits } from "../../tables/wire-installation-limits";
import { defineRule } from "../rule";
import { circuitExample } from "./circuit-example";
import { holdRecorded } from "./recorded";

const limit = wireInstallationLimits.terminalsPerStud;

export const terminalsPerStud = defineRule<{ junction: string; terminals: number; most: number }>({
  id: "terminals-per-stud",
  severity: "error",
  area: "wires",
  title: "A stud holds more terminals than it may",
  why:
    "The current has to pass through the faces of the terminals, not through the stud. A tall stack does not stay " +
    "tight, and the one at the top runs hot.",
  sources: [limit.source],
  say: ({ junction, terminals, most }) => ({
    what: `Junction ${junction} has ${terminals} terminals on one stud; ${most} are the most.`,
    todo: "Put a small bus across two or more studs, and share the terminals out.",
  }),
  *check({ install }) {
    for (const { id, terminals } of install.junctions ?? []) {
      const held =
        id &&
        holdRecorded(
          {
            subject: { kind: "junction", id: id.value },
            quantity: "terminal-count",
            name: "terminals on one stud",
            written: terminals,
          },
          limit,
          "most-terminals",
        );
      if (!held) continue;
      yield {
        ...held,
        rule: "terminals-per-stud",
        facts: { junction: id.value, terminals: held.value.value, most: held.limit.value },
      };
    }
  },
  examples: () => [
    {
      title: "Five on one stud",
      text: circuitExample({ sections: ["junctions: [{ id: TB1, terminals: 5 }]"] }),
      finds: ["TB1 has 5 terminals on one stud; 4 are the most"],
    },
    {
      title: "Four on one stud",
      text: circuitExample({ sections: ["junctions: [{ id: TB1, terminals: 4 }]"] }),
      finds: [],
    },
  ],
});
