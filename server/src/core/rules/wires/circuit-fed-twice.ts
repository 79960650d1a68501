import { electricalOf } from "../../graph/derivations";
import { defineRule } from "../rule";
import { listWords } from "../wording";
import { circuitExample } from "./circuit-example";

export const circuitFedTwice = defineRule<{ point: string; feeds: readonly string[] }>({
  id: "circuit-fed-twice",
  severity: "warning",
  area: "wires",
  title: "A point is fed from more than one side",
  why:
    "How the current divides between parallel feeders depends on their resistances. The check follows one feeder " +
    "to each point, so nothing behind this point is computed.",
  sources: [],
  say: ({ point, feeds }) => ({
    what: `${point} is fed from more than one side: ${listWords(feeds, "and")}. Nothing behind it is computed.`,
    todo: "Draw one feeder to the point, from its end nearer the bus; 'from' is the end nearer the source.",
  }),
  check: (project) =>
    electricalOf(project).circuit.problems.filter(({ rule }) => rule === "circuit-fed-twice"),
  examples: [
    {
      title: "Two feeders in parallel",
      text: circuitExample({
        wires: [
          "{ id: P1, from: CB-RACK, to: RACK, gauge: 10 AWG, length: 12 ft, rating: 150 degC }",
          "{ id: P3, from: CB-RACK, to: RACK, gauge: 10 AWG, length: 12 ft, rating: 150 degC }",
        ],
      }),
      finds: ["P1 and P3"],
    },
    { title: "One feeder", text: circuitExample(), finds: [] },
  ],
});
