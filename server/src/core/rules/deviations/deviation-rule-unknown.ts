import { defineRule } from "../rule";
import { quote, shorten } from "../wording";
import { deviationExample } from "./deviation-example";

export const deviationRuleUnknown = defineRule<{ rule: string; guess: string }>({
  id: "deviation-rule-unknown",
  severity: "error",
  area: "deviations",
  title: "A deviation names a rule that does not exist",
  why: "It covers nothing, and nobody can tell what it was meant to cover.",
  sources: [],
  say: ({ rule, guess }) => ({
    what: `There is no rule ${quote(rule)} to deviate from.`,
    todo: guess === "" ? "Write the rule as the report names it." : `Did you mean ${shorten(guess)}?`,
  }),
  examples: () => [
    {
      title: "A slip in the rule's name",
      text: deviationExample({ rule: "wire-voltage-dorp" }),
      finds: ["^There is no rule 'wire-voltage-dorp'"],
    },
    { title: "A rule by its name", text: deviationExample(), finds: [] },
  ],
});
