import { limits } from "../../limits";
import { wireExample } from "../example-record";
import { defineRule } from "../rule";
import { omittedWords } from "../wording";

export const textTooDeep = defineRule<{ limit: number; omitted?: number }>({
  id: "text-too-deep",
  severity: "error",
  area: "text",
  title: "Lists and groups of keys stand too deep inside each other",
  why:
    "No record needs more than ten levels. Text that nests deeper is damaged, or made to bring a program down; the " +
    "entry that it stands in is not read, and so not checked.",
  sources: [],
  say: ({ limit, omitted }) => ({
    what: `This is nested deeper than the limit of ${limit} levels; the entry around it is not checked.`,
    todo: `Close brackets that were left open, or write the entry anew.${omittedWords(omitted)}`,
  }),
  examples: () => [
    {
      title: "Brackets without end",
      text: wireExample({ bundle: "[".repeat(limits.nestingDepth) + "]".repeat(limits.nestingDepth) }),
      finds: [`deeper than the limit of ${limits.nestingDepth} levels`],
    },
    { title: "A record of common depth", text: wireExample(), finds: [] },
  ],
});
