import { defineRule } from "../rule";
import { shorten } from "../wording";
import { eligibilityExample } from "./eligibility-example";
import { type LackFacts, lacks, wayWords } from "./lacks";

export const modificationRequired = defineRule<LackFacts>({
  id: "modification-required",
  severity: "error",
  area: "eligibility",
  title: "The kit requires a modification that this aircraft does not have",
  why:
    "What the kit rests on, such as a larger alternator or a stiffened floor, is made by another modification. It has to " +
    "be done before, or together with this one: then it stands under `prerequisites` with its data.",
  sources: [],
  say: (facts) => ({
    what: `Kit ${shorten(facts.kit)} requires modification ${shorten(facts.id)}, which ${shorten(facts.serial)} does not have.`,
    todo: wayWords(facts),
  }),
  check: (project) =>
    lacks("modification-required", project, ({ modifications }) =>
      modifications.map(({ value }) => ({ id: value })),
    ),
  examples: () => [
    {
      title: "An older serial number needs another modification first",
      text: eligibilityExample({
        serial: "B9-0117",
        groups: [
          "{ type: Type 9, serials: [{ from: B9-0300 }] }",
          "{ type: Type 9, serials: [{ from: B9-0100, to: B9-0299 }], modifications: [MOD-7] }",
        ],
      }),
      finds: ["Kit QSR-60 requires modification MOD-7, which B9-0117 does not have"],
    },
    {
      title: "Done before, or together with this one",
      text: eligibilityExample({
        groups: ["{ type: Type 9, modifications: [MOD-7, MOD-12] }"],
        airframe: ["modifications: [{ id: MOD-7, data: Drawing B9-2401 }]"],
        sections: "prerequisites: [{ modification: MOD-12, data: Drawing B9-2512 }]",
      }),
      finds: [],
    },
  ],
});
