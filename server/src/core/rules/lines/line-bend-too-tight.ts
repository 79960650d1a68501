import { linesOf } from "../../graph/derivations";
import type { LineRun } from "../../graph/lines/line-run";
import { convert, roundUp } from "../../quantities";
import type { LineBend } from "../../records/types";
import { hoseSource, tubeBendSource } from "../../tables/fluid-lines";
import { defineRule } from "../rule";
import { apart, holdAgainst } from "../wires/recorded";
import { lineExample } from "./line-example";

export const lineBendTooTight = defineRule<{ line: string; kind: string; radius: number; least: number }>({
  id: "line-bend-too-tight",
  severity: "error",
  area: "lines",
  title: "A hose or tube is bent more tightly than its size allows",
  why:
    "A tight bend flattens a tube and thins its outer wall; in a hose it opens the braid and kinks the liner. The " +
    "radii of hoses are published; those of tubes are from memory and only warn. The maker's limit goes before both.",
  sources: [hoseSource, tubeBendSource],
  say: ({ line, kind, radius, least }) => {
    const [is, asked] = apart(radius, least, "in");
    return {
      what: `Line ${line} is bent to a radius of ${is}; a ${kind} of its size asks for ${asked}.`,
      todo: "Route it with a wider bend, or take an elbow fitting.",
    };
  },
  *check(project) {
    for (const run of linesOf(project).runs) {
      const { line, id, leastBendRadius } = run;
      const tightest = bendsOf(run)[0];
      const held =
        leastBendRadius &&
        holdAgainst(
          {
            subject: { kind: "line", id },
            quantity: "line-bend-radius",
            name: "bend radius",
            written: tightest?.radius,
          },
          "in",
          "least",
          leastBendRadius,
        );
      if (!held) continue;
      yield {
        ...held,
        rule: "line-bend-too-tight",
        facts: {
          line: id,
          kind: line.kind?.value,
          radius: held.value.value,
          least: held.limit.value,
        },
      };
    }
  },
  /** All bends that are too tight are widened together. */
  *remedies({ subject, limit }, project) {
    const run = linesOf(project).runs.find(({ id }) => id === subject.id);
    if (!run) return;
    const changes = bendsOf(run).flatMap(({ radius }) => {
      if (!radius || convert(radius.value.si, "m", "in") >= limit.value) return [];
      const unit = radius.value.unit === "mm" ? "mm" : "in";
      const wanted = roundUp(convert(limit.value, "in", unit), unit === "mm" ? 1 : 0.01);
      return [{ place: radius.place, text: `${wanted} ${unit}` }];
    });
    if (changes[0]) yield { title: `Bend line ${subject.id} to no less than ${changes[0].text}`, changes };
  },
  examples: () => [
    {
      title: "A -6 hose round 3.5 in",
      text: lineExample({
        line: "kind: hose, fluid: fuel, dash: 6, specification: MIL-H-8794, bends: [{ radius: 5 in }, { radius: 3.5 in }]",
      }),
      finds: ["L1 is bent to a radius of 3.5 in; a hose of its size asks for 4 in"],
    },
    {
      title: "A 3/8 in aluminium tube round 20 mm: the table is from memory, so it warns",
      text: lineExample({
        line: "kind: tube, fluid: oil, dash: 6, material: aluminium, bends: [{ radius: 20 mm }]",
      }),
      finds: ["L1 is bent to a radius of 0.7874 in; a tube of its size asks for 0.9375 in"],
    },
    {
      title: "A -6 hose round 4 in, and a maker who allows less",
      text: lineExample({
        line: "kind: hose, fluid: fuel, dash: 6, specification: MIL-H-8794, bends: [{ radius: 4 in }]",
        sections: [
          "  - { id: L2, kind: hose, fluid: r-134a, dash: 6, maker-limits: { bend-radius: 2 in, data: Hose sheet }, bends: [{ radius: 2 in }] }",
        ],
      }),
      finds: [],
    },
  ],
});

/** The tightest first. */
function bendsOf({ line }: LineRun): LineBend[] {
  return (line.bends ?? [])
    .filter(({ radius }) => radius)
    .toSorted((a, b) => a.radius!.value.si - b.radius!.value.si);
}
