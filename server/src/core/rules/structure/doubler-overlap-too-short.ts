import type { Assessment } from "../../findings/finding";
import { geometrySource } from "../../graph/structure/figures";
import { inUnit, isUnitOf, roundDown } from "../../quantities";
import type { Reinforcement } from "../../records/types";
import { defineRule, type Remedy, rewrite } from "../rule";
import { doublerExample } from "./doubler-example";
import { both, type HeldFacts, hold, lengthText, reinforcementOf, reinforcementsOf } from "./held";
import { larger } from "./larger-reinforcement";

export const doublerOverlapTooShort = defineRule<HeldFacts>({
  id: "doubler-overlap-too-short",
  severity: "error",
  area: "structure",
  title: "Rows and edge distances take more than a reinforcement has beyond its opening",
  why:
    "Between the opening's edge and its own a reinforcement has to hold its rows of fasteners, with the edge distance on " +
    "both sides of them. What counts is the width of a ring, the least length of a doubler before and behind the opening, " +
    "and its least width all around where nobody says which way the load runs. Where the record leaves out the edge " +
    "distance or that between rows, the least that it may be counts; where it gives the places of the fasteners, those " +
    "are measured instead.",
  sources: [geometrySource],
  say: (facts) => {
    const [is, asked] = both(facts);
    return {
      what: `The reinforcement of cutout ${facts.cutout} reaches ${is} beyond it; rows and edge distances take ${asked}.`,
      todo: "Make it larger, or set fewer rows.",
    };
  },
  *check(project) {
    for (const { opening, reinforcement, room } of reinforcementsOf(project)) {
      const place = (reinforcement.width ?? reinforcement.outline ?? reinforcement).place;
      const { value, least } = room.overlap;
      yield* hold("doubler-overlap-too-short", opening.id, place, value, least, "at-least");
    }
  },
  *remedies(assessment, project) {
    const reinforcement = reinforcementOf(assessment, project);
    if (!reinforcement) return;
    yield* closerToEdges(assessment, reinforcement);
    const short = assessment.limit.value - assessment.value.value;
    yield* larger(reinforcement, { ring: short, side: 2 * short }, assessment.limit.unit);
  },
  examples: () => [
    {
      title: "5.4 in of doubler over an opening of 5 in",
      text: doublerExample({
        opening: "{ shape: circle, diameter: 5 in, at: { x: 0 in, y: 0 in } }",
        doubler:
          "kind: doubler, material: 2024-T3 clad, thickness: 0.050 in, outline: { shape: rectangle, width: 5.4 in, height: 11 in, corner-radius: 0.2 in }",
        panel: ["load: { direction: 0 deg }"],
        fasteners: "{ kind: 2117-rivet, diameter: 1/8 in, count-per-side: 20, pitch: 0.5 in }",
      }),
      finds: ["reaches 0.2 in beyond it; rows and edge distances take 0.5 in"],
    },
    {
      title: "A ring of 0.6 in with two rows",
      text: ringExample("0.6 in"),
      finds: ["reaches 0.6 in beyond it; rows and edge distances take 1 in"],
    },
    {
      title: "An edge distance that no sheet beside the opening has",
      text: doublerExample({
        fasteners:
          "{ kind: 2117-rivet, diameter: 1/8 in, count-per-side: 14, rows: 2, pitch: 0.6 in, row-pitch: 0.5 in, edge-distance: 5 in }",
      }),
      finds: ["reaches 2 in beyond it; rows and edge distances take 10.5 in"],
    },
    { title: "A ring of 1 in", text: ringExample("1 in"), finds: [] },
    { title: "Two inches for two rows", text: doublerExample(), finds: [] },
  ],
});

/** The edge distance that leaves the rows room. */
function* closerToEdges({ value, limit }: Assessment, { fasteners }: Reinforcement): Iterable<Remedy> {
  const recorded = fasteners?.edgeDistance;
  if (!recorded || !isUnitOf("length", limit.unit)) return;
  const edge = inUnit(recorded.value, limit.unit) - (limit.value - value.value) / 2;
  const text = edge > 0 && lengthText(edge, limit.unit, recorded.value.unit, roundDown);
  if (text) yield rewrite(`Keep ${text} to every edge`, recorded.place, text, "edge");
}

function ringExample(width: string): string {
  return doublerExample({
    doubler: `kind: ring, material: 2024-T3 clad, thickness: 0.063 in, width: ${width}`,
    fasteners:
      "{ kind: 2117-rivet, diameter: 1/8 in, count-per-side: 14, rows: 2, pitch: 0.6 in, row-pitch: 0.5 in, edge-distance: 0.25 in }",
  });
}
