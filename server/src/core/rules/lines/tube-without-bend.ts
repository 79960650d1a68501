import type { Problem } from "../../findings/finding";
import { linesOf } from "../../graph/derivations";
import { isWholeList } from "../../graph/entries";
import { straightTubeSource } from "../../tables/line-installation-limits";
import { defineRule } from "../rule";
import { lineExample } from "./line-example";

export const tubeWithoutBend = defineRule<{ line: string; isMoving: boolean }>({
  id: "tube-without-bend",
  severity: "error",
  area: "lines",
  title: "A tube runs straight between rigid ends, or joins parts that move",
  why:
    "A straight tube between two rigid ends can neither take up heat and pressure nor be drawn up without strain: its " +
    "flares crack. Across relative motion a plain tube breaks.",
  sources: [straightTubeSource],
  say: ({ line, isMoving }) => ({
    what: isMoving
      ? `Tube ${line} joins ends that move against each other.`
      : `Tube ${line} runs straight between two rigid ends.`,
    todo: isMoving ? "Put a hose between the moving ends." : "Give it at least one bend.",
  }),
  *check(project): Iterable<Problem> {
    for (const { line, id } of linesOf(project).runs) {
      if (line.kind?.value !== "tube" || !line.ends) continue;
      const isMoving = line.ends.value === "flexible";
      const isStraight = line.bends?.length === 0 && isWholeList(line, "bends", line.bends);
      if (!isMoving && !isStraight) continue;
      yield {
        rule: "tube-without-bend",
        subject: { kind: "line", id },
        place: line.ends.place,
        facts: { line: id, isMoving },
      };
    }
  },
  examples: () => [
    {
      title: "Straight between rigid ends, and across motion",
      text: lineExample({
        line: "kind: tube, fluid: water, dash: 6, material: steel, ends: rigid, bends: []",
        sections: ["  - { id: L2, kind: tube, fluid: water, dash: 6, material: steel, ends: flexible }"],
      }),
      finds: ["L1 runs straight between two rigid ends", "L2 joins ends that move"],
    },
    {
      title: "With a bend",
      text: lineExample({
        line: "kind: tube, fluid: water, dash: 6, material: steel, ends: rigid, bends: [{ radius: 2 in }]",
      }),
      finds: [],
    },
  ],
});
