import type { Assessment } from "../../findings/finding";
import type { Project } from "../../project";
import { isAtMost } from "../../rounding";
import { defineRule, type Remedy, rewrite } from "../rule";
import { doublerExample } from "./doubler-example";
import { both, type HeldFacts, hold, lengthThatKeeps, reinforcementOf, reinforcementsOf } from "./held";

/** Standard sheet gauges in inches, from memory: they only propose what is then checked. */
const gauges = [
  "0.016",
  "0.020",
  "0.025",
  "0.032",
  "0.040",
  "0.050",
  "0.063",
  "0.071",
  "0.080",
  "0.090",
  "0.100",
  "0.125",
] as const;

export const doublerTooThin = defineRule<HeldFacts>({
  id: "doubler-too-thin",
  severity: "error",
  area: "structure",
  title: "A doubler or ring has less section than what was cut out",
  why:
    "What an opening takes out of the sheet's section has to be put back beside it. The width that counts is that of " +
    "the doubler less the opening and the holes of its fasteners; where the panel records the direction of its load, " +
    "across that, otherwise across the opening's greatest width. The comparison holds for the same material.",
  sources: [
    {
      document: "FAA AC 43.13-1B",
      edition: "9/8/98",
      at: "par. 4-58k and fig. 4-20",
      standing: "published",
    },
  ],
  say: (facts) => {
    const [is, asked] = both(facts);
    return {
      what: `The reinforcement of cutout ${facts.cutout} is ${is} thick; the section cut out asks for ${asked}.`,
      todo: "Make it thicker or wider.",
    };
  },
  *check(project) {
    for (const { opening, reinforcement, thickness } of reinforcementsOf(project)) {
      const place = (reinforcement.thickness ?? reinforcement).place;
      const panel = opening.panel.thickness;
      yield* hold(
        "doubler-too-thin",
        opening.id,
        place,
        thickness.value,
        thickness.least,
        "at-least",
        {},
        panel ? [{ place: panel.place, words: "thickness of the panel" }] : [],
      );
    }
  },
  *remedies(assessment, project) {
    yield* nextGauge(assessment, project);
  },
  examples: () => [
    {
      title: "0.025 in beside 3 in cut out of 0.032 in, in 3.5 in of doubler less four holes",
      text: doublerExample({
        doubler:
          "kind: doubler, material: 2024-T3 clad, thickness: 0.025 in, joint: single-lap, outline: { shape: rectangle, width: 7 in, height: 7 in, corner-radius: 0.5 in }",
      }),
      finds: ["is 0.025 in thick; the section cut out asks for 0.02743 in"],
    },
    {
      title: "A ring too narrow for its thickness",
      text: doublerExample({
        doubler: "kind: ring, material: 2024-T3 clad, thickness: 0.032 in, joint: single-lap, width: 1.5 in",
      }),
      finds: ["is 0.032 in thick; the section cut out asks for 0.0384 in"],
    },
    { title: "One gauge heavier than the sheet", text: doublerExample(), finds: [] },
  ],
});

function* nextGauge(assessment: Assessment, project: Project): Iterable<Remedy> {
  const recorded = reinforcementOf(assessment, project)?.thickness;
  if (!recorded) return;
  const title = (text: string) => `Make the reinforcement ${text} thick`;
  if (assessment.limit.unit !== "in" || recorded.value.unit !== "in") {
    yield* lengthThatKeeps(assessment, recorded, title);
    return;
  }
  for (const gauge of gauges) {
    if (!isAtMost(assessment.limit.value, Number(gauge))) continue;
    yield rewrite(title(`${gauge} in`), recorded.place, `${gauge} in`);
  }
}
