import { diameterRange } from "../../tables/rivet-spacing";
import { rivetDiameters, rivetSizeNames } from "../../tables/rivets-per-inch";
import { defineRule, rewrite } from "../rule";
import { doublerExample } from "./doubler-example";
import { both, type HeldFacts, hold, reinforcementOf, reinforcementsOf } from "./held";

export const rivetTooLarge = defineRule<HeldFacts>({
  id: "rivet-too-large",
  severity: "warning",
  area: "structure",
  title: "A rivet is larger than three times the thickest sheet asks for",
  why: "Driving so large a rivet bulges and distorts thin sheet, and its hole takes more away than the sheet can spare. Three times the sheet, rounded up to the next 1/32 in, is usual.",
  sources: [diameterRange.largest.source],
  say: (facts) => {
    const [is, most] = both(facts);
    return {
      what: `The rivets of cutout ${facts.cutout} are ${is} across; three times the thickest sheet, rounded up, is ${most}.`,
      todo: "Take smaller rivets, and more of them.",
    };
  },
  *check(project) {
    for (const { opening, reinforcement, diameter } of reinforcementsOf(project)) {
      const place = (reinforcement.fasteners?.diameter ?? reinforcement).place;
      yield* hold("rivet-too-large", opening.id, place, diameter.value, diameter.largest, "at-most");
    }
  },
  *remedies(assessment, project) {
    const diameter = reinforcementOf(assessment, project)?.fasteners?.diameter;
    if (!diameter || assessment.limit.unit !== "in") return;
    for (const [index, size] of [...rivetDiameters.entries()].reverse()) {
      if (size > assessment.limit.value) continue;
      yield rewrite(`Take ${rivetSizeNames[index]} in rivets`, diameter.place, `${rivetSizeNames[index]} in`);
    }
  },
  examples: () => [
    {
      title: "3/16 in rivets through 0.040 in",
      text: doublerExample({
        fasteners: "{ kind: 2117-rivet, diameter: 3/16 in, count-per-side: 14, pitch: 0.8 in }",
      }),
      finds: ["are 0.1875 in across; three times the thickest sheet, rounded up, is 0.125 in"],
    },
    {
      title: "1/8 in rivets through 0.050 in",
      text: doublerExample({
        doubler:
          "kind: doubler, material: 2024-T3 clad, thickness: 0.050 in, joint: single-lap, outline: { shape: rectangle, width: 7 in, height: 7 in, corner-radius: 0.5 in }",
      }),
      finds: [],
    },
  ],
});
