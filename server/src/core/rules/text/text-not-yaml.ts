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

/** By the code of the parser that the reading hands on. */
const remedies: Readonly<Record<string, string>> = {
  MISSING_CHAR: "Add the colon behind the key, or the bracket or quote that closes what was opened.",
  UNEXPECTED_TOKEN:
    "Take out what is too much; where it belongs to the value, put the whole value in quotes.",
  MULTILINE_IMPLICIT_KEY: "Write the key and its colon on one line.",
  BLOCK_AS_IMPLICIT_KEY: "Start a line for each key; put a value that has ': ' in it in quotes.",
  BAD_INDENT: "Indent what belongs together alike, with spaces, two for each step.",
  BAD_SCALAR_START: "Put the value in quotes: this sign can't start one.",
  BAD_DQ_ESCAPE: "Use single quotes, in which a backslash is only a backslash.",
  UNKNOWN_ALIAS: "Write the value out in place of the alias.",
  CONTROL_CHARACTER: "Take it out: it is a sign that nobody sees, often pasted in from elsewhere.",
};
