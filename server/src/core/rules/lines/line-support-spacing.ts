import { linesOf } from "../../graph/derivations";
import { handbookSupportSource, hoseSupportSpacing, steelSupportSource } from "../../tables/fluid-lines";
import { defineRule } from "../rule";
import { apart, holdAgainst, lengthThatKeeps } from "../wires/recorded";
import { lineExample } from "./line-example";

export const lineSupportSpacing = defineRule<{ line: string; spacing: number; most: number }>({
  id: "line-support-spacing",
  severity: "error",
  area: "lines",
  title: "The supports of a hose or tube are too far apart",
  why:
    "Between supports a line swings with the engine, and its flares crack or it chafes. The spacing of steel tubes and " +
    "of hoses is published; that of aluminium tubes is from memory and only warns. Where a tube carries fittings, its " +
    "supports stand a fifth nearer.",
  sources: [steelSupportSource, handbookSupportSource, hoseSupportSpacing.source],
  say: ({ line, spacing, most }) => {
    const [is, allowed] = apart(spacing, most, "in");
    return {
      what: `Line ${line} is supported every ${is}, farther apart than the ${allowed} allowed.`,
      todo: "Add clamps along the run.",
    };
  },
  *check(project) {
    for (const { line, id, widestSupportSpacing } of linesOf(project).runs) {
      const held =
        widestSupportSpacing &&
        holdAgainst(
          {
            subject: { kind: "line", id },
            quantity: "line-support-spacing",
            name: "distance between supports",
            written: line.supportSpacing,
          },
          "in",
          "most",
          widestSupportSpacing,
        );
      if (!held) continue;
      yield {
        ...held,
        rule: "line-support-spacing",
        facts: { line: id, spacing: held.value.value, most: held.limit.value },
      };
    }
  },
  *remedies(assessment, project) {
    const run = linesOf(project).runs.find(({ id }) => id === assessment.subject.id);
    yield* lengthThatKeeps(
      assessment,
      run?.line.supportSpacing,
      (length) => `Support line ${assessment.subject.id} every ${length}`,
    );
  },
  examples: () => [
    {
      title: "A 3/8 in steel tube every 24 in, and one with fittings every 18 in",
      text: lineExample({
        line: "kind: tube, fluid: hydraulic, dash: 6, material: steel, support-spacing: 24 in",
        sections: [
          "  - { id: L2, kind: tube, fluid: water, dash: 6, material: steel, support-spacing: 18 in, carries-fittings: true }",
        ],
      }),
      finds: [
        "L1 is supported every 24 in, farther apart than the 20 in",
        "L2 is supported every 18 in.* 16 in",
      ],
    },
    {
      title: "A hose every 30 in",
      text: lineExample({ line: "kind: hose, fluid: water, dash: 8, support-spacing: 30 in" }),
      finds: ["every 30 in, farther apart than the 24 in"],
    },
    {
      title: "An aluminium tube every 16 in",
      text: lineExample({
        line: "kind: tube, fluid: water, dash: 6, material: aluminium, support-spacing: 16 in",
      }),
      finds: [],
    },
  ],
});
