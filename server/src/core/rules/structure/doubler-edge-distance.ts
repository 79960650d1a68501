import { fastenerEdgeDistance } from "../../tables/fastener-edge-distance";
import { defineRule } from "../rule";
import { doublerExample } from "./doubler-example";
import { both, type HeldFacts, hold, lengthThatKeeps, reinforcementOf, reinforcementsOf } from "./held";

export const doublerEdgeDistance = defineRule<HeldFacts & { head: string }>({
  id: "doubler-edge-distance",
  severity: "error",
  area: "structure",
  title: "A reinforcement's fasteners stand too near an edge",
  why:
    "Nearer to an edge of panel, opening or reinforcement than its edge distance, a fastener tears the sheet before it " +
    "carries its load: two diameters for protruding heads, two and a half for countersunk ones (from memory). Where the " +
    "places of the fasteners are recorded the distance is measured, otherwise the recorded one counts.",
  sources: [fastenerEdgeDistance("protruding").source, fastenerEdgeDistance("countersunk").source],
  say: (facts) => {
    const [is, asked] = both(facts);
    return {
      what: `Fasteners of cutout ${facts.cutout} stand ${is} from an edge; ${facts.head} heads need ${asked}.`,
      todo: "Move them inward, or make the reinforcement wider.",
    };
  },
  *check(project) {
    for (const { opening, reinforcement, edge } of reinforcementsOf(project)) {
      const { edgeDistance, lines, head } = reinforcement.fasteners ?? {};
      const place = (lines?.[0] ?? edgeDistance ?? reinforcement).place;
      const facts = { head: head?.value ?? "protruding" };
      yield* hold("doubler-edge-distance", opening.id, place, edge.value, edge.least, "at-least", facts);
    }
  },
  *remedies(assessment, project) {
    const fasteners = reinforcementOf(assessment, project)?.fasteners;
    if (fasteners?.lines) return;
    yield* lengthThatKeeps(assessment, fasteners?.edgeDistance, (text) => `Keep ${text} to every edge`);
  },
  examples: () => [
    {
      title: "1/8 in protruding heads 0.24 in from an edge",
      text: doublerExample({
        fasteners: "{ kind: 2117-rivet, diameter: 1/8 in, count-per-side: 14, edge-distance: 0.24 in }",
      }),
      finds: ["stand 0.24 in from an edge; protruding heads need 0.25 in"],
    },
    {
      title: "5/32 in countersunk heads 0.39 in from an edge",
      text: doublerExample({
        fasteners:
          "{ kind: 2117-rivet, diameter: 5/32 in, head: countersunk, count-per-side: 14, edge-distance: 0.39 in }",
      }),
      finds: ["stand 0.39 in from an edge; countersunk heads need 0.3906 in"],
    },
    {
      title: "Measured: a line 0.2 in inside the doubler's edge",
      text: doublerExample({
        fasteners:
          "{ kind: 2117-rivet, diameter: 1/8 in, count-per-side: 14, lines: [{ from: { x: -3 in, y: 3.3 in }, to: { x: 3 in, y: 3.3 in }, count: 11 }] }",
      }),
      finds: ["stand 0.2 in from an edge; protruding heads need 0.25 in"],
    },
    {
      title: "Exactly two diameters",
      text: doublerExample({
        fasteners: "{ kind: 2117-rivet, diameter: 1/8 in, count-per-side: 14, edge-distance: 0.25 in }",
      }),
      finds: [],
    },
  ],
});
