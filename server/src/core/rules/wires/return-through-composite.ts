import type { Problem } from "../../findings/finding";
import { advisoryCircular } from "../../tables/electrical-documents";
import { defineRule } from "../rule";
import { circuitExample } from "./circuit-example";
import { ofEachWire } from "./recorded";

export const returnThroughComposite = defineRule<{ wire: string }>({
  id: "return-through-composite",
  severity: "error",
  area: "wires",
  title: "A return finds its way through carbon-fibre structure",
  why:
    "Carbon fibre conducts badly. A load's current heats it, and a fault's current can destroy it, and may be too " +
    "small to open the breaker.",
  sources: [advisoryCircular("chapter 11, bonding and grounding", "published")],
  say: ({ wire }) => ({
    what: `Wire ${wire} returns its current through carbon-fibre composite.`,
    todo: "Lead the return in a wire of its own to metal structure or to the ground of the source.",
  }),
  check: ofEachWire(function* (wire, subject): Iterable<Problem> {
    if (wire.through?.value !== "composite") return;
    yield {
      rule: "return-through-composite",
      subject,
      place: wire.through.place,
      facts: { wire: subject.id },
    };
  }),
  examples: () => [
    {
      title: "Grounded to a carbon-fibre floor",
      text: circuitExample({
        wires: [
          "{ id: P1, from: CB-RACK, to: RACK, gauge: 10 AWG, length: 12 ft, rating: 150 degC }",
          "{ id: P2N, from: RACK, to: GND-AFT, gauge: 10 AWG, length: 2 ft, rating: 150 degC, through: composite }",
        ],
      }),
      finds: ["P2N returns its current through carbon-fibre composite"],
    },
    { title: "A wire all the way", text: circuitExample({ keys: "through: wire" }), finds: [] },
  ],
});
