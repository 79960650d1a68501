import { leastPitch } from "../../tables/rivet-spacing";
import { defineRule } from "../rule";
import { doublerExample } from "./doubler-example";
import { both, type HeldFacts, hold, reinforcementsOf } from "./held";

export const doublerFastenerTooNear = defineRule<HeldFacts>({
  id: "doubler-fastener-too-near",
  severity: "error",
  area: "structure",
  title: "A reinforcement's fastener stands too near one that is there already",
  why:
    "Old holes and new ones weaken the same strip of sheet: from centre to centre they need what neighbours in a row " +
    "need, three diameters of the larger one. Told where the places of both are recorded.",
  sources: [leastPitch(1, "protruding").source],
  say: (facts) => {
    const [is, asked] = both(facts);
    return {
      what: `A new fastener of cutout ${facts.cutout} stands ${is} from one of the panel; they need ${asked}.`,
      todo: "Move the line of fasteners, or pick up the existing hole with one of them.",
    };
  },
  *check(project) {
    for (const { opening, near } of reinforcementsOf(project)) {
      if (!near) continue;
      const related = [{ place: near.existing.place, words: "the panel's fastener" }];
      yield* hold(
        "doubler-fastener-too-near",
        opening.id,
        near.place,
        near.value,
        near.least,
        "at-least",
        {},
        related,
      );
    }
  },
  examples: () => [
    {
      title: "0.3 in from a rivet of the panel",
      text: doublerExample({
        panel: ["fasteners: [{ at: { x: 3 in, y: 2.7 in }, diameter: 1/8 in }]"],
        fasteners:
          "{ kind: 2117-rivet, diameter: 1/8 in, count-per-side: 14, lines: [{ from: { x: -3 in, y: 3 in }, to: { x: 3 in, y: 3 in }, count: 11 }] }",
      }),
      finds: ["stands 0.3 in from one of the panel; they need 0.375 in"],
    },
    {
      title: "Half an inch from it",
      text: doublerExample({
        panel: ["fasteners: [{ at: { x: 3 in, y: 2.5 in }, diameter: 1/8 in }]"],
        fasteners:
          "{ kind: 2117-rivet, diameter: 1/8 in, count-per-side: 14, lines: [{ from: { x: -3 in, y: 3 in }, to: { x: 3 in, y: 3 in }, count: 11 }] }",
      }),
      finds: [],
    },
  ],
});
