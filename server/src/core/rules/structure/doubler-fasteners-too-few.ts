import { rivetTables } from "../../tables/rivets-per-inch";
import { defineRule } from "../rule";
import { doublerExample } from "./doubler-example";
import { both, type HeldFacts, hold, reinforcementsOf, resultOf } from "./held";
import { layoutsFor } from "./row-layouts";

export const doublerFastenersTooFew = defineRule<HeldFacts>({
  id: "doubler-fasteners-too-few",
  severity: "error",
  area: "structure",
  title: "Too few fasteners carry the load around an opening",
  why:
    "The load that ran through the sheet where the opening is has to go into the reinforcement on one side of it and " +
    "back on the other. The tables give how many fasteners that takes for each inch of width, on each side; their notes " +
    "allow fewer for stringers, intermediate frames and single laps. Clad 2024-T3 stands in two tables: the larger counts.",
  sources: Object.values(rivetTables).map(({ source }) => source),
  say: (facts) => {
    const [is, asked] = both(facts);
    return {
      what: `Cutout ${facts.cutout} has ${is} fasteners on each side; the width that is cut needs ${asked}.`,
      todo: "Add fasteners, in another row if need be, or take larger ones.",
    };
  },
  *check(project) {
    for (const { opening, reinforcement, count } of reinforcementsOf(project)) {
      const { countPerSide } = reinforcement.fasteners ?? {};
      const place = (countPerSide ?? reinforcement).place;
      yield* hold("doubler-fasteners-too-few", opening.id, place, count.value, count.least, "at-least");
    }
  },
  *remedies(assessment, project) {
    const result = resultOf(assessment, project);
    if (result) yield* layoutsFor(result, assessment.limit.value);
  },
  examples: () => [
    {
      title: "3 in out of 0.032 in clad 2024-T3 with 1/8 in rivets in a single lap",
      text: doublerExample({
        fasteners:
          "{ kind: 2117-rivet, diameter: 1/8 in, count-per-side: 12, rows: 2, pitch: 0.6 in, row-pitch: 0.5 in, edge-distance: 0.3 in }",
      }),
      finds: ["has 12 fasteners on each side; the width that is cut needs 14"],
    },
    {
      title: "Across the load the slot is only as wide as itself",
      text: doublerExample({
        opening: "{ shape: slot, length: 4 in, width: 2 in, at: { x: 0 in, y: 0 in } }",
        panel: ["load: { direction: 0 deg }"],
        fasteners:
          "{ kind: 2117-rivet, diameter: 1/8 in, count-per-side: 10, rows: 2, pitch: 0.6 in, row-pitch: 0.5 in, edge-distance: 0.3 in }",
      }),
      finds: [],
    },
    { title: "Fourteen on each side", text: doublerExample(), finds: [] },
  ],
});
