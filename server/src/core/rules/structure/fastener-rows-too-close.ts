import { leastRowPitch } from "../../tables/rivet-spacing";
import { defineRule } from "../rule";
import { doublerExample } from "./doubler-example";
import { both, type HeldFacts, hold, lengthThatKeeps, reinforcementOf, reinforcementsOf } from "./held";

export const fastenerRowsTooClose = defineRule<HeldFacts>({
  id: "fastener-rows-too-close",
  severity: "error",
  area: "structure",
  title: "Rows of fasteners stand too near each other",
  why: "Rows nearer than two and a half diameters leave too little sheet between their holes (from memory, so it only warns).",
  sources: [leastRowPitch.source],
  say: (facts) => {
    const [is, asked] = both(facts);
    return {
      what: `The rows of fasteners of cutout ${facts.cutout} are ${is} apart; 2.5 diameters are ${asked}.`,
      todo: "Move the rows apart.",
    };
  },
  *check(project) {
    for (const { opening, reinforcement, rowPitch } of reinforcementsOf(project)) {
      const place = (reinforcement.fasteners?.rowPitch ?? reinforcement).place;
      yield* hold("fastener-rows-too-close", opening.id, place, rowPitch.value, rowPitch.least, "at-least");
    }
  },
  *remedies(assessment, project) {
    const rowPitch = reinforcementOf(assessment, project)?.fasteners?.rowPitch;
    yield* lengthThatKeeps(assessment, rowPitch, (text) => `Set the rows ${text} apart`);
  },
  examples: () => [
    {
      title: "0.3 in for 1/8 in rivets",
      text: doublerExample({
        fasteners: "{ kind: 2117-rivet, diameter: 1/8 in, count-per-side: 14, rows: 2, row-pitch: 0.3 in }",
      }),
      finds: ["are 0.3 in apart; 2.5 diameters are 0.3125 in"],
    },
    { title: "0.5 in", text: doublerExample(), finds: [] },
  ],
});
