import { widestPitch } from "../../tables/rivet-spacing";
import { defineRule } from "../rule";
import { doublerExample } from "./doubler-example";
import { both, type HeldFacts, hold, otherPitch, reinforcementsOf } from "./held";

export const fastenerPitchTooWide = defineRule<HeldFacts>({
  id: "fastener-pitch-too-wide",
  severity: "warning",
  area: "structure",
  title: "Fasteners of a reinforcement stand unusually far apart",
  why:
    "Between fasteners that stand far apart the sheets gape and buckle. Pitches above eight diameters are seldom used; " +
    "a handbook allows ten to twelve (from memory).",
  sources: [widestPitch.source],
  say: (facts) => {
    const [is, most] = both(facts);
    return {
      what: `Fasteners of cutout ${facts.cutout} have a pitch of ${is}; more than ${most} is seldom used.`,
      todo: "Space them closer.",
    };
  },
  *check(project) {
    for (const { opening, pitch } of reinforcementsOf(project)) {
      const { widest, most } = pitch;
      if (!widest) continue;
      yield* hold("fastener-pitch-too-wide", opening.id, widest.place, widest.value, most, "at-most");
    }
  },
  remedies: otherPitch,
  examples: () => [
    {
      title: "1.2 in for 1/8 in rivets",
      text: doublerExample({
        fasteners: "{ kind: 2117-rivet, diameter: 1/8 in, count-per-side: 14, pitch: 1.2 in }",
      }),
      finds: ["have a pitch of 1.2 in; more than 1 in is seldom used"],
    },
    { title: "0.6 in", text: doublerExample(), finds: [] },
  ],
});
