import { recordExample } from "../example-record";
import { defineRule } from "../rule";

export const textEncodingWrong = defineRule<Record<string, never>>({
  id: "text-encoding-wrong",
  severity: "error",
  area: "text",
  title: "A record is not saved as UTF-8",
  why:
    "A file holds bytes, and what letters they are is a matter of agreement: records agree on UTF-8. This one has " +
    "two bytes for each letter, as some programs of Windows save a text. Nothing in it is checked.",
  sources: [],
  say: () => ({
    what: "This text is not UTF-8, but UTF-16 by its first bytes; nothing in it is checked.",
    todo: "Save it as UTF-8.",
  }),
  examples: () => [{ title: "A record in UTF-8", text: recordExample(), finds: [] }],
});
