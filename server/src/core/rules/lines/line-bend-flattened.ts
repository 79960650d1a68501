import { linesOf } from "../../graph/derivations";
import { leastFlattenedShare } from "../../tables/fluid-lines";
import { defineRule } from "../rule";
import { apart, holdAgainst } from "../wires/recorded";
import { lineExample } from "./line-example";

export const lineBendFlattened = defineRule<{ line: string; diameter: number; least: number }>({
  id: "line-bend-flattened",
  severity: "error",
  area: "lines",
  title: "A tube is flattened too far in a bend",
  why:
    "A flattened tube chokes the flow and works like a bellows under pressure until it cracks. Across a bend at least " +
    "three quarters of the outside diameter must be left.",
  sources: [leastFlattenedShare.source],
  say: ({ line, diameter, least }) => {
    const [is, asked] = apart(diameter, least, "in");
    return {
      what: `Line ${line} measures ${is} across a bend; ${asked} must be left.`,
      todo: "Bend a new tube, with a bender that fits it.",
    };
  },
  *check(project) {
    for (const { line, id, leastFlattened } of linesOf(project).runs) {
      const [worst] = (line.bends ?? [])
        .flatMap(({ flattened }) => flattened ?? [])
        .toSorted((a, b) => a.value.si - b.value.si);
      const held =
        leastFlattened &&
        holdAgainst(
          {
            subject: { kind: "line", id },
            quantity: "flattened-diameter",
            name: "diameter across the bend",
            written: worst,
          },
          "in",
          "least",
          leastFlattened,
        );
      if (!held) continue;
      yield {
        ...held,
        rule: "line-bend-flattened",
        facts: { line: id, diameter: held.value.value, least: held.limit.value },
      };
    }
  },
  examples: () => [
    {
      title: "A 3/8 in tube that measures 0.27 in",
      text: lineExample({
        line: "kind: tube, fluid: water, dash: 6, material: aluminium, bends: [{ radius: 1 in, flattened: 0.27 in }]",
      }),
      finds: ["L1 measures 0.27 in across a bend; 0.2813 in must be left"],
    },
    {
      title: "Three quarters are left",
      text: lineExample({
        line: "kind: tube, fluid: water, dash: 6, material: aluminium, bends: [{ radius: 1 in, flattened: 0.3 in }]",
      }),
      finds: [],
    },
  ],
});
