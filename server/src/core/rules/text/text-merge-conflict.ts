import { recordExample, wireExample } from "../example-record";
import { defineRule } from "../rule";
import { omittedWords } from "../wording";

export const textMergeConflict = defineRule<{ marker: string; omitted?: number }>({
  id: "text-merge-conflict",
  severity: "error",
  area: "text",
  title: "A merge conflict is not resolved",
  why:
    "Between the markers stand two answers to one question, and the record would be checked with a mixture of " +
    "both. Somebody has to decide which one is true for this aircraft.",
  sources: [],
  say: ({ omitted }) => ({
    what: "A merge conflict is not resolved here.",
    todo: `Keep the side that is right, and take the marker lines out.${omittedWords(omitted)}`,
  }),
  examples: () => [
    {
      title: "Two revisions at once",
      text: recordExample({
        document: [
          "document:",
          "  number: HM-0412",
          `${"<".repeat(7)} mine`,
          "  revision: A",
          "=".repeat(7),
          "  revision: B",
          `${">".repeat(7)} theirs`,
          "  status: draft",
        ].join("\n"),
      }),
      finds: ["A merge conflict is not resolved here"],
    },
    { title: "One revision", text: wireExample(), finds: [] },
  ],
});
