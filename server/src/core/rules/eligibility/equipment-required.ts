import { defineRule } from "../rule";
import { shorten } from "../wording";
import { eligibilityExample } from "./eligibility-example";
import { type LackFacts, lacks, wayWords } from "./lacks";

export const equipmentRequired = defineRule<LackFacts>({
  id: "equipment-required",
  severity: "error",
  area: "eligibility",
  title: "The kit requires equipment that this aircraft does not have, or that this record takes out",
  why:
    "A kit relies on what is there, such as an access panel to reach it by. Equipment counts by its id in the airframe's " +
    "equipment list.",
  sources: [],
  say: (facts) => ({
    what: `Kit ${shorten(facts.kit)} requires equipment ${shorten(facts.id)}, which ${shorten(facts.serial)} does not have or loses here.`,
    todo: wayWords(facts),
  }),
  check: (project) =>
    lacks("equipment-required", project, ({ equipment, removed }) => [
      ...equipment.map(({ value }) => ({ id: value })),
      ...removed,
    ]),
  examples: () => [
    {
      title: "An access panel that is not there, with another way",
      text: eligibilityExample({
        groups: [
          "{ type: Type 9, equipment: [aft-access-panel] }",
          "{ type: Type 9, modifications: [MOD-7, MOD-9] }",
        ],
      }),
      finds: ["requires equipment aft-access-panel, which B9-0417 does not have"],
    },
    {
      title: "It is there, and then taken out",
      text: eligibilityExample({
        groups: ["{ type: Type 9, equipment: [aft-access-panel] }"],
        airframe: ["equipment: [{ id: aft-access-panel, weight: 1.2 lb, arm: 150 in }]"],
        sections: "removed: [{ equipment: aft-access-panel }]",
      }),
      finds: ["requires equipment aft-access-panel"],
    },
    {
      title: "It is there",
      text: eligibilityExample({
        groups: ["{ type: Type 9, equipment: [aft-access-panel] }"],
        airframe: ["equipment: [{ id: aft-access-panel, weight: 1.2 lb, arm: 150 in }]"],
      }),
      finds: [],
    },
  ],
});
