import type { Problem } from "../../findings/finding";
import { defineRule } from "../rule";
import { shorten } from "../wording";
import { doublerExample } from "./doubler-example";
import { reinforcementsOf } from "./held";

export const doublerOverStiffener = defineRule<{ cutout: string; stiffener: string }>({
  id: "doubler-over-stiffener",
  severity: "warning",
  area: "structure",
  title: "A doubler or a ring lies over a stiffener",
  why:
    "On the stiffener's side of the sheet it can't lie flat, and its fasteners would be drilled through the " +
    "stiffener's foot. Where it is meant to pick up the stiffener, that is a joint of its own.",
  sources: [{ document: "What a reinforcement lies on", standing: "common-practice" }],
  say: ({ cutout, stiffener }) => ({
    what: `The reinforcement of cutout ${cutout} lies over ${shorten(stiffener)}.`,
    todo: "Make it narrower there or move the opening, or have the joint with the stiffener designed and analysed.",
  }),
  *check(project): Iterable<Problem> {
    for (const { opening, reinforcement, reach } of reinforcementsOf(project)) {
      for (const stiffener of reach.over) {
        yield {
          rule: "doubler-over-stiffener",
          subject: { kind: "cutout", id: opening.id },
          place: (reinforcement.outline ?? reinforcement.width ?? reinforcement).place,
          facts: { cutout: opening.id, stiffener: stiffener.name?.value ?? "a stiffener" },
          related: [{ place: stiffener.place, words: "the stiffener" }],
        };
      }
    }
  },
  examples: () => [
    {
      title: "A stringer under the doubler",
      text: doublerExample({ panel: stringerAt("3 in") }),
      finds: ["The reinforcement of cutout C1 lies over stringer 4"],
    },
    {
      title: "A ring that reaches it",
      text: doublerExample({
        panel: stringerAt("3 in"),
        doubler: "kind: ring, material: 2024-T3 clad, thickness: 0.040 in, width: 1.25 in",
      }),
      finds: ["The reinforcement of cutout C1 lies over stringer 4"],
    },
    {
      title: "A narrower ring",
      text: doublerExample({
        panel: stringerAt("3 in"),
        doubler: "kind: ring, material: 2024-T3 clad, thickness: 0.040 in, width: 1.125 in",
      }),
      finds: [],
    },
    {
      title: "A stringer beside the doubler",
      text: doublerExample({ panel: stringerAt("5 in") }),
      finds: [],
    },
  ],
});

/** A stringer along x, its middle line at this y. */
function stringerAt(y: string): string[] {
  return [
    `stiffeners: [{ name: stringer 4, from: { x: -9 in, y: ${y} }, to: { x: 9 in, y: ${y} }, width: 0.75 in }]`,
  ];
}
