import type { Problem } from "../../findings/finding";
import { structureOf } from "../../graph/derivations";
import { defineRule } from "../rule";
import { shorten } from "../wording";
import { doublerExample } from "./doubler-example";

export const cutoutStiffenerCut = defineRule<{ cutout: string; stiffener: string }>({
  id: "cutout-stiffener-cut",
  severity: "error",
  area: "structure",
  title: "An opening cuts a stiffener",
  why: "A stiffener carries load along its whole length; cut, it carries none, and a doubler on the sheet does not replace it.",
  sources: [],
  say: ({ cutout, stiffener }) => ({
    what: `Cutout ${cutout} cuts ${shorten(stiffener)}.`,
    todo: "Move the opening beside it, or have the cut stiffener and its splice designed and analysed.",
  }),
  *check(project): Iterable<Problem> {
    for (const { stiffeners } of structureOf(project).openings) {
      for (const { opening, stiffener, isCut } of stiffeners) {
        if (!isCut) continue;
        const { cutout, id } = opening;
        yield {
          rule: "cutout-stiffener-cut",
          subject: { kind: "cutout", id },
          place: (cutout.opening?.at ?? cutout.opening ?? cutout).place,
          facts: { cutout: id, stiffener: stiffener.name?.value ?? "a stiffener" },
          related: [{ place: stiffener.place, words: "the stiffener" }],
        };
      }
    }
  },
  examples: () => [
    {
      title: "A stringer runs through the opening",
      text: doublerExample({
        panel: [
          "stiffeners: [{ name: stringer 4, from: { x: -9 in, y: 1 in }, to: { x: 9 in, y: 1 in }, width: 0.75 in }]",
        ],
      }),
      finds: ["C1 cuts stringer 4"],
    },
    {
      title: "It passes beside it",
      text: doublerExample({
        panel: [
          "stiffeners: [{ name: stringer 4, from: { x: -9 in, y: 3 in }, to: { x: 9 in, y: 3 in }, width: 0.75 in }]",
        ],
      }),
      finds: [],
    },
  ],
});
