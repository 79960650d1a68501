import { linesOf } from "../../graph/derivations";
import { plainLimit } from "../../graph/lines/limits";
import { passThroughClearance as limit } from "../../tables/line-installation-limits";
import { defineRule } from "../rule";
import { apart, holdAgainst } from "../wires/recorded";
import { lineExample } from "./line-example";

export const passThroughClearance = defineRule<{ passThrough: string; clearance: number; least: number }>({
  id: "pass-through-clearance",
  severity: "error",
  area: "lines",
  title: "What goes through a bare hole comes too near to its edge",
  why:
    "The edge of a hole cuts what moves against it. Without a clamp right there, either a distance is kept or a grommet " +
    "lines the hole.",
  sources: [limit.source],
  say: ({ passThrough, clearance, least }) => {
    const [is, asked] = apart(clearance, least, "in");
    return {
      what: `Pass-through ${passThrough} leaves ${is} to the edge of a bare hole; ${asked} must be kept.`,
      todo: "Line the hole with a grommet, clamp what goes through, or make the hole larger.",
    };
  },
  *check(project) {
    for (const { passThrough, id } of linesOf(project).passThroughs) {
      if (passThrough.grommet?.value || passThrough.clamped?.value) continue;
      const subject = { kind: "pass-through", id } as const;
      const least = plainLimit(
        subject,
        "least-pass-through-clearance",
        limit.value,
        limit.source,
        limit.note,
      );
      const held =
        least &&
        holdAgainst(
          { subject, quantity: "pass-through-clearance", name: "clearance", written: passThrough.clearance },
          "in",
          "least",
          least,
        );
      if (!held) continue;
      yield {
        ...held,
        rule: "pass-through-clearance",
        facts: { passThrough: id, clearance: held.value.value, least: held.limit.value },
      };
    }
  },
  examples: () => [
    {
      title: "A quarter inch from a bare edge",
      text: lineExample({ sections: ["pass-throughs: [{ id: PT1, hole: 2 in, clearance: 0.25 in }]"] }),
      finds: ["PT1 leaves 0.25 in to the edge of a bare hole; 0.375 in must be kept"],
    },
    {
      title: "With a grommet, with a clamp, or far enough",
      text: lineExample({
        sections: [
          "pass-throughs:",
          "  - { id: PT1, hole: 2 in, clearance: 0.1 in, grommet: true }",
          "  - { id: PT2, hole: 2 in, clearance: 0.1 in, clamped: true }",
          "  - { id: PT3, hole: 2 in, clearance: 3/8 in }",
        ],
      }),
      finds: [],
    },
  ],
});
