import type { Problem } from "../../findings/finding";
import { advisoryCircular } from "../../tables/electrical-documents";
import { defineRule } from "../rule";
import { protectionExample } from "./protection-example";

export const bondOnto = defineRule<{ bond: string; onto: "magnesium" | "composite" }>({
  id: "bond-onto",
  severity: "error",
  area: "protection",
  title: "A bond leads to a material that must not carry its current",
  why:
    "The circular forbids grounding directly to magnesium, and leading a power or fault return through carbon-fibre " +
    "composite: there the current needs a conductor of its own.",
  sources: [advisoryCircular("ch. 11, bonding and grounding", "published")],
  say: ({ bond, onto }) => ({
    what:
      onto === "magnesium"
        ? `Bond ${bond} is fastened directly to magnesium.`
        : `Bond ${bond} is a ground return, but leads into composite.`,
    todo:
      onto === "magnesium"
        ? "Lead it to basic structure of another metal."
        : "Lead the return to metal by a conductor of its own.",
  }),
  *check(project): Iterable<Problem> {
    for (const { id, kind, onto } of project.install.bonds ?? []) {
      if (!id || !onto) continue;
      const isReturn = kind?.value === "ground-return";
      if (onto.value !== "magnesium" && !(onto.value === "composite" && isReturn)) continue;
      yield {
        rule: "bond-onto",
        subject: { kind: "bond", id: id.value },
        place: onto.place,
        facts: { bond: id.value, onto: onto.value },
      };
    }
  },
  examples: () => [
    {
      title: "A jumper onto magnesium, and a return into composite",
      text: protectionExample({
        sections: [
          "bonds:",
          "  - { id: BJ-1, kind: jumper, resistance: 2 mohm, onto: magnesium }",
          "  - { id: GR-1, kind: ground-return, resistance: 4 mohm, onto: composite }",
        ],
      }),
      finds: ["BJ-1 is fastened directly to magnesium", "GR-1 is a ground return"],
    },
    {
      title: "Onto aluminium",
      text: protectionExample({
        sections: ["bonds: [{ id: BJ-1, kind: jumper, resistance: 2 mohm, onto: aluminium }]"],
      }),
      finds: [],
    },
  ],
});
