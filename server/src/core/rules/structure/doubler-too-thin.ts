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
    "What an opening takes out of the sheet's section has to be put back beside it. The width that counts is what the " +
    "doubler has beside the opening in the narrowest section across the panel's load that cuts the opening, less the " +
    "holes of its fasteners; what lies beyond a gap, or before and behind the opening, carries nothing past it. Where " +
    "the panel records no direction of its load, the opening's greatest width counts, and the doubler as a ring of its " +
    "least width. The comparison holds for the same material.",
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
    {
      title:
        "A strip of 3 in around 2 in, turned by 45 deg to the load: 4.24 in wide at the hole, however long it is",
      text: stripExample("angle: 45 deg", "direction: 0 deg"),
      finds: ["is 0.02 in thick; the section cut out asks for 0.03212 in"],
    },
    {
      title: "An L that is 3 in wide at the hole",
      text: doublerExample({
        opening: "{ shape: circle, diameter: 2 in, at: { x: -4 in, y: 0 in } }",
        panel: ["load: { direction: 0 deg }"],
        doubler:
          "kind: doubler, material: 2024-T3 clad, thickness: 0.050 in, outline: { shape: polygon, points: [{ x: -5.5 in, y: -1.5 in }, { x: 5 in, y: -1.5 in }, { x: 5 in, y: 5 in }, { x: 2 in, y: 5 in }, { x: 2 in, y: 1.5 in }, { x: -5.5 in, y: 1.5 in }] }",
        fasteners: oneRow,
      }),
      finds: ["is 0.05 in thick; the section cut out asks for 0.08533 in"],
    },
    {
      title: "A slot of 6 by 3 in, 20 deg askew: 4.03 in out of 8 in of doubler, less four holes",
      text: doublerExample({
        opening: "{ shape: slot, length: 6 in, width: 3 in, at: { x: 0 in, y: 0 in }, angle: 20 deg }",
        panel: ["load: { direction: 0 deg }"],
        doubler:
          "kind: doubler, material: 2024-T3 clad, thickness: 0.032 in, outline: { shape: rectangle, width: 9.5 in, height: 8 in, corner-radius: 0.5 in }",
      }),
      finds: ["is 0.032 in thick; the section cut out asks for 0.03709 in"],
    },
    {
      title: "Three holes abreast on each side, by their places: 5 in less six holes",
      text: doublerExample({
        opening: "{ shape: circle, diameter: 2 in, at: { x: 0 in, y: 0 in } }",
        panel: ["load: { direction: 0 deg }"],
        doubler:
          "kind: doubler, material: 2024-T3 clad, thickness: 0.014 in, outline: { shape: rectangle, width: 7 in, height: 7 in, corner-radius: 0.5 in }",
        fasteners: `{ kind: 2117-rivet, diameter: 1/8 in, count-per-side: 14, lines: [${[-3, -2.5, -2, 2, 2.5, 3].map((y) => `{ from: { x: -3 in, y: ${y} in }, to: { x: 3 in, y: ${y} in }, count: 9 }`).join(", ")}] }`,
      }),
      finds: ["is 0.014 in thick; the section cut out asks for 0.01506 in"],
    },
    {
      title: "The strip where nobody says which way the load runs: half an inch on each side",
      text: stripExample("angle: 0 deg"),
      finds: ["is 0.02 in thick; the section cut out asks for 0.08533 in"],
    },
    {
      title: "The strip across the load: 2.75 in on each side",
      text: stripExample("angle: 90 deg", "direction: 0 deg"),
      finds: [],
    },
    { title: "One gauge heavier than the sheet", text: doublerExample(), finds: [] },
  ],
});

const oneRow =
  "{ kind: 2117-rivet, diameter: 1/8 in, count-per-side: 14, rows: 1, pitch: 0.4 in, edge-distance: 0.25 in }";

/** A doubler of 7.5 by 3 in around a hole of 2 in; no load where its direction is left out. */
function stripExample(angle: string, load?: string): string {
  return doublerExample({
    opening: "{ shape: circle, diameter: 2 in, at: { x: 0 in, y: 0 in } }",
    panel: load ? [`load: { ${load} }`] : [],
    doubler: `kind: doubler, material: 2024-T3 clad, thickness: 0.020 in, outline: { shape: rectangle, width: 7.5 in, height: 3 in, corner-radius: 0.25 in, ${angle} }`,
    fasteners: oneRow,
  });
}

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
