import type { Problem } from "../../findings/finding";
import { advisoryCircular } from "../../tables/electrical-documents";
import { defineRule } from "../rule";
import { protectionExample } from "./protection-example";

export const bondFastening = defineRule<{ bond: string }>({
  id: "bond-fastening",
  severity: "error",
  area: "protection",
  title: "A bond is fastened with a self-tapping screw",
  why: "A self-tapping screw holds the sheet by its edge only: the joint loosens, and its resistance grows.",
  sources: [advisoryCircular("ch. 11, bonding and grounding", "published")],
  say: ({ bond }) => ({
    what: `Bond ${bond} is fastened with a self-tapping screw.`,
    todo: "Fasten it with a bolt and locking hardware, or rivet it.",
  }),
  *check(project): Iterable<Problem> {
    for (const { id, fastened } of project.install.bonds ?? []) {
      if (!id || fastened?.value !== "self-tapping-screw") continue;
      yield {
        rule: "bond-fastening",
        subject: { kind: "bond", id: id.value },
        place: fastened.place,
        facts: { bond: id.value },
      };
    }
  },
  examples: () => [
    {
      title: "A jumper under a self-tapping screw",
      text: protectionExample({
        sections: ["bonds: [{ id: BJ-1, kind: jumper, resistance: 2 mohm, fastened: self-tapping-screw }]"],
      }),
      finds: ["Bond BJ-1 is fastened with a self-tapping screw"],
    },
    {
      title: "A bolt",
      text: protectionExample({
        sections: ["bonds: [{ id: BJ-1, kind: jumper, resistance: 2 mohm, fastened: bolt }]"],
      }),
      finds: [],
    },
  ],
});
