import { leastPitch } from "../../tables/rivet-spacing";
import { defineRule } from "../rule";
import { doublerExample } from "./doubler-example";
import { both, type HeldFacts, hold, otherPitch, reinforcementsOf } from "./held";

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
      const { closest, least } = pitch;
      if (!closest) continue;
      const facts = { rows: reinforcement.fasteners?.rows?.value ?? 1 };
      const { value, place } = closest;
      yield* hold("fastener-pitch-too-close", opening.id, place, value, least, "at-least", facts);
    }
  },
  remedies: otherPitch,
  examples: () => [
    {
      title: "3/8 in for 1/8 in rivets in two rows",
      text: doublerExample({
        fasteners: "{ kind: 2117-rivet, diameter: 1/8 in, count-per-side: 14, rows: 2, pitch: 0.375 in }",
      }),
      finds: ["have a pitch of 0.375 in; 2 rows need 0.5 in"],
    },
    {
      title: "Fourteen placed along 4.8 in, whatever pitch is written",
      text: doublerExample({
        fasteners:
          "{ kind: 2117-rivet, diameter: 1/8 in, count-per-side: 14, rows: 2, pitch: 0.6 in, total: 14, " +
          "lines: [{ from: { x: 2.5 in, y: -2.4 in }, to: { x: 2.5 in, y: 2.4 in }, count: 14 }] }",
      }),
      finds: ["have a pitch of 0.3692 in; 2 rows need 0.5 in"],
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
