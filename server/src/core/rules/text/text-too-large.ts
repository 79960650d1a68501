import { recordExample } from "../example-record";
import { defineRule } from "../rule";

export const textTooLarge = defineRule<{ length: number; limit: number }>({
  id: "text-too-large",
  severity: "error",
  area: "text",
  title: "A record is longer than the checks read",
  why:
    "A record is a page or two of text. One of this length is a file of another kind, or the work of a machine, " +
    "and reading it would hold up everything else. Nothing in it is checked.",
  sources: [],
  say: ({ length, limit }) => ({
    what: `This text has ${length} characters, above the limit of ${limit}; nothing in it is checked.`,
    todo: "Check whether it is the right file; if it is, write a record for each airframe and each kit.",
  }),
  examples: () => [{ title: "A record of common length", text: recordExample(), finds: [] }],
});
