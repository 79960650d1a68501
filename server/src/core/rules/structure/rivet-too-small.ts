import { diameterRange } from "../../tables/rivet-spacing";
import { rivetDiameters, rivetSizeNames } from "../../tables/rivets-per-inch";
import { defineRule, rewrite } from "../rule";
import { doublerExample } from "./doubler-example";
import { both, type HeldFacts, hold, reinforcementOf, reinforcementsOf } from "./held";

export const rivetTooSmall = defineRule<HeldFacts>({
  id: "rivet-too-small",
  severity: "error",
  area: "structure",
  title: "A rivet is thinner than the thickest sheet that it joins",
  why: "A rivet thinner than the sheet shears or bends long before the sheet is loaded.",
  sources: [diameterRange.least.source],
  say: (facts) => {
    const [is, asked] = both(facts);
    return {
      what: `The rivets of cutout ${facts.cutout} are ${is} across; the thickest sheet is ${asked}.`,
      todo: "Take larger rivets; about three times the sheet is usual.",
    };
  },
  *check(project) {
    for (const { opening, reinforcement, diameter } of reinforcementsOf(project)) {
      const place = (reinforcement.fasteners?.diameter ?? reinforcement).place;
      yield* hold("rivet-too-small", opening.id, place, diameter.value, diameter.least, "at-least");
    }
  },
  *remedies(assessment, project) {
    const diameter = reinforcementOf(assessment, project)?.fasteners?.diameter;
    if (!diameter || assessment.limit.unit !== "in") return;
    for (const [index, size] of rivetDiameters.entries()) {
      if (size < assessment.limit.value) continue;
      yield rewrite(`Take ${rivetSizeNames[index]} in rivets`, diameter.place, `${rivetSizeNames[index]} in`);
    }
  },
  examples: () => [
    {
      title: "1/8 in rivets through 0.160 in",
      text: doublerExample({
        doubler:
          "kind: doubler, material: 2024-T3 clad, thickness: 0.160 in, joint: single-lap, outline: { shape: rectangle, width: 7 in, height: 7 in, corner-radius: 0.5 in }",
        fasteners:
          "{ kind: 2117-rivet, diameter: 1/8 in, count-per-side: 14, pitch: 0.9 in, edge-distance: 0.5 in }",
      }),
      finds: ["are 0.125 in across; the thickest sheet is 0.16 in"],
    },
    { title: "1/8 in rivets through 0.040 in", text: doublerExample(), finds: [] },
  ],
});
