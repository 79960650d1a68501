import { leastPitch } from "../../tables/rivet-spacing";
import { defineRule } from "../rule";
import { doublerExample } from "./doubler-example";
import { both, type HeldFacts, hold, lengthThatKeeps, reinforcementOf, reinforcementsOf } from "./held";

export const fastenerPitchTooClose = defineRule<HeldFacts & { rows: number }>({
  id: "fastener-pitch-too-close",
  severity: "error",
  area: "structure",
  title: "Fasteners of a reinforcement stand too near each other in their row",
  why:
    "Holes too near each other leave too little sheet between them: three diameters from centre to centre in one row " +
    "or three, four in two rows; half a diameter more for countersunk heads (from memory).",
  sources: [
    leastPitch(1, "protruding").source,
    leastPitch(2, "protruding").source,
    leastPitch(1, "countersunk").source,
  ],
  say: (facts) => {
    const [is, asked] = both(facts);
    const { cutout, rows } = facts;
    return {
      what: `Fasteners of cutout ${cutout} have a pitch of ${is}; ${rows === 1 ? "a single row needs" : `${rows} rows need`} ${asked}.`,
      todo: "Space them wider, in another row if need be.",
    };
  },
  *check(project) {
    for (const { opening, reinforcement, pitch } of reinforcementsOf(project)) {
      const { fasteners } = reinforcement;
      const place = (fasteners?.pitch ?? reinforcement).place;
      const facts = { rows: fasteners?.rows?.value ?? 1 };
      yield* hold("fastener-pitch-too-close", opening.id, place, pitch.value, pitch.least, "at-least", facts);
    }
  },
  *remedies(assessment, project) {
    const pitch = reinforcementOf(assessment, project)?.fasteners?.pitch;
    yield* lengthThatKeeps(assessment, pitch, (text) => `Space the fasteners ${text} apart`);
  },
  examples: [
    {
      title: "3/8 in for 1/8 in rivets in two rows",
      text: doublerExample({
        fasteners: "{ kind: 2117-rivet, diameter: 1/8 in, count-per-side: 14, rows: 2, pitch: 0.375 in }",
      }),
      finds: ["have a pitch of 0.375 in; 2 rows need 0.5 in"],
    },
    {
      title: "3/8 in for 1/8 in rivets in one row",
      text: doublerExample({
        fasteners: "{ kind: 2117-rivet, diameter: 1/8 in, count-per-side: 14, pitch: 0.375 in }",
      }),
      finds: [],
    },
  ],
});
