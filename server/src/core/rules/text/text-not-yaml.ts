import { wireExample } from "../example-record";
import { defineRule } from "../rule";
import { omittedWords, shorten } from "../wording";

export const textNotYaml = defineRule<{ code: string; detail: string; omitted?: number }>({
  id: "text-not-yaml",
  severity: "error",
  area: "text",
  title: "The text is not YAML",
  why:
    "Where the text can't be read, nothing is known of what was meant: a wire that is lost to an open bracket is " +
    "missing from every sum. What can be read around it is still checked.",
  sources: [],
  say: ({ code, detail, omitted }) => ({
    what: `This can't be read as YAML: ${shorten(detail)}.`,
    todo:
      (remedies[code] ?? "Check colons, quotes, brackets and indentation here and on the line above.") +
      omittedWords(omitted),
  }),
  examples: [
    {
      title: "A bracket that is not closed",
      text: wireExample({ bundle: "[B1" }),
      finds: ["\\[ is not closed"],
    },
    { title: "A line that can be read", text: wireExample(), finds: [] },
  ],
});
const remedies: Readonly<Record<string, string>> = {};
