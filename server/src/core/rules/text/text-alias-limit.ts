import { recordExample } from "../example-record";
import { defineRule } from "../rule";
import { omittedWords, quote } from "../wording";

export const textAliasLimit = defineRule<{ name: string; limit: number; omitted?: number }>({
  id: "text-alias-limit",
  severity: "error",
  area: "text",
  title: "Aliases stand for more than the checks follow",
  why:
    "An alias repeats what stands at its anchor, and aliases of aliases multiply: ten short lines can stand for " +
    "millions of entries. Beyond the limit they are not followed, and what they stand for is not checked.",
  sources: [],
  say: ({ name, limit, omitted }) => ({
    what: `The alias ${quote(`*${name}`)} brings this record above ${limit} repeated keys and values, and is not followed.`,
    todo: `Write the entries out where they are needed, or use fewer aliases.${omittedWords(omitted)}`,
  }),
  examples: () => [
    {
      title: "Aliases of aliases of aliases",
      text: recordExample({
        sections: [
          "added:",
          "  - &a { id: bracket, weight: 1 lb, arm: 140 in }",
          "  - &b [*a, *a, *a, *a, *a, *a, *a, *a, *a, *a]",
          "  - &c [*b, *b, *b, *b, *b, *b, *b, *b, *b, *b]",
          "  - &d [*c, *c, *c, *c, *c, *c, *c, *c, *c, *c]",
          "  - *d",
        ].join("\n"),
      }),
      finds: ["'\\*d' brings this record above 10000 repeated keys and values"],
    },
    {
      title: "One alias",
      text: recordExample({
        sections:
          "added:\n  - { id: bracket-1, weight: &w 1 lb, arm: 140 in }\n  - { id: bracket-2, weight: *w, arm: 150 in }",
      }),
      finds: [],
    },
  ],
});
