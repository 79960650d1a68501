import type { Problem } from "../../findings/finding";
import { structureOf } from "../../graph/derivations";
import type { StressGap } from "../../graph/structure/stress";
import { roarkRoundedRectangle } from "../../methods/stress-concentration";
import { formatMeasure } from "../../quantities";
import { coverageWords } from "../../tables/lookup-words";
import { defineRule } from "../rule";
import { doublerExample } from "./doubler-example";

export const cutoutStressNotCovered = defineRule<{ cutout: string; reason: string }>({
  id: "cutout-stress-not-covered",
  severity: "warning",
  area: "structure",
  title: "No published factor covers the stress at an opening's edge",
  why:
    "The factors hold for a circle in the middle of a strip, and for slots and rounded rectangles of certain proportions " +
    "along or across the load. The panel counts as a strip where its edges beside the opening run along the load, and " +
    "do so for a width of the opening beyond both of its ends (common practice). For tapered panels, openings off the " +
    "middle or with others beside them, turned ones and polygons no usable formula was found, and none is invented.",
  sources: [roarkRoundedRectangle],
  say: ({ cutout, reason }) => ({
    what: `The stress at the edge of cutout ${cutout} is not covered: ${reason}.`,
    todo: "Have it analysed.",
  }),
  *check(project): Iterable<Problem> {
    for (const { stress } of structureOf(project).openings) {
      if (!stress?.gap) continue;
      const { cutout, id } = stress.opening;
      yield {
        rule: "cutout-stress-not-covered",
        subject: { kind: "cutout", id },
        place: (cutout.opening?.shape ?? cutout.opening ?? cutout).place,
        facts: { cutout: id, reason: gapWords(stress.gap) },
      };
    }
  },
  examples: () => [
    {
      title: "A slot so long across the load that the polynomial ends",
      text: doublerExample({
        opening: "{ shape: slot, length: 5 in, width: 1 in, at: { x: 0 in, y: 0 in } }",
        panel: ["load: { direction: 90 deg, force: 500 lbf }"],
        doubler: "",
      }),
      finds: ["not covered: opening along the load over across it 0.2, the table holds 0.3 to 1"],
    },
    {
      title: "A hole off the middle",
      text: doublerExample({
        opening: "{ shape: circle, diameter: 1 in, at: { x: 4 in, y: 0 in } }",
        panel: ["load: { direction: 90 deg, force: 500 lbf }"],
        doubler: "",
      }),
      finds: ["not covered: it stands 4 in off the middle of the panel"],
    },
    {
      title: "A strip that is turned to the load",
      text: doublerExample({
        opening: "{ shape: circle, diameter: 1 in, at: { x: 0 in, y: 0 in } }",
        panel: ["load: { direction: 60 deg, force: 500 lbf }"],
        doubler: "",
      }),
      finds: ["not covered: beside it the panel is no strip along the load, or ends too near"],
    },
    {
      title: "A hole near the end where the load comes in",
      text: doublerExample({
        opening: "{ shape: circle, diameter: 2 in, at: { x: 0 in, y: -3.5 in } }",
        panel: ["load: { direction: 90 deg, force: 500 lbf }"],
        doubler: "",
      }),
      finds: ["not covered: beside it the panel is no strip along the load, or ends too near"],
    },
    {
      title: "A second hole in the same section",
      text: besideExample("{ x: 5 in, y: 1 in }"),
      finds: ["not covered: cutout C2 stands beside it", "not covered: cutout C1 stands beside it"],
    },
    {
      title: "A second hole farther along the load: only that one, off the middle, is not covered",
      text: besideExample("{ x: 1 in, y: 4 in }"),
      finds: ["C2 is not covered: it stands 1 in off the middle of the panel"],
    },
    {
      title: "A slot of two to one across the load",
      text: doublerExample({
        opening: "{ shape: slot, length: 2 in, width: 1 in, at: { x: 0 in, y: 0 in } }",
        panel: ["load: { direction: 90 deg, force: 500 lbf }"],
        doubler: "",
      }),
      finds: [],
    },
  ],
});

/** A hole of 1 in in the middle, and another at this place, under a load along y. */
function besideExample(at: string): string {
  return doublerExample({
    opening: "{ shape: circle, diameter: 1 in, at: { x: 0 in, y: 0 in } }",
    panel: ["load: { direction: 90 deg, force: 500 lbf }"],
    doubler: "",
  }).concat(`  - { id: C2, panel: BAY-SKIN, opening: { shape: circle, diameter: 1 in, at: ${at} } }\n`);
}

function gapWords(gap: StressGap): string {
  switch (gap.kind) {
    case "figure":
      return `no factor is known for a ${gap.shape}`;
    case "turned":
      return "it is turned against the load";
    case "no-strip":
      return "beside it the panel is no strip along the load, or ends too near";
    case "beside":
      return `cutout ${gap.other} stands beside it, or nearer along the load than it is wide`;
    case "off-centre":
      return `it stands ${formatMeasure(gap.by, gap.unit)} off the middle of the panel`;
    case "formula":
      return coverageWords(gap.gap);
  }
}
