import { defineRule } from "../rule";
import { shorten } from "../wording";
import { eligibilityExample } from "./eligibility-example";
import { type LackFacts, lacks } from "./lacks";

export const modificationIncompatible = defineRule<LackFacts>({
  id: "modification-incompatible",
  severity: "error",
  area: "eligibility",
  title: "This aircraft has a modification that the kit does not go with",
  why:
    "Two modifications may each be sound and not be so together: they use the same place, the same strength or the same " +
    "spare current. That they do not go together is for the kit's data to say.",
  sources: [],
  say: ({ kit, serial, id }) => ({
    what: `Kit ${shorten(kit)} does not go with modification ${shorten(id)}, which ${shorten(serial)} has.`,
    todo: "Ask the kit's maker for data that cover both, or leave one of the two out.",
  }),
  check: (project) =>
    lacks("modification-incompatible", project, ({ incompatible }) =>
      incompatible.map(({ value }) => ({ id: value })),
    ),
  examples: () => [
    {
      title: "A long-range tank where the rack goes",
      text: eligibilityExample({
        groups: ["{ type: Type 9, incompatible: [MOD-31] }"],
        airframe: ["modifications: [{ id: MOD-31, title: Aft tank }]"],
      }),
      finds: ["does not go with modification MOD-31, which B9-0417 has"],
    },
    {
      title: "Another modification",
      text: eligibilityExample({
        groups: ["{ type: Type 9, incompatible: [MOD-31] }"],
        airframe: ["modifications: [{ id: MOD-7 }]"],
      }),
      finds: [],
    },
  ],
});
