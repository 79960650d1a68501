import { recordExample, wireExample } from "../example-record";
import { defineRule } from "../rule";
import { omittedWords, shorten } from "../wording";

export const textNotYaml = defineRule<{ code: string; detail: string; missing?: string; omitted?: number }>({
  id: "text-not-yaml",
  severity: "error",
  area: "text",
  title: "The text is not YAML",
  why:
    "Where the text can't be read, nothing is known of what was meant: a wire that is lost to an open bracket is " +
    "missing from every sum. What can be read around it is still checked.",
  sources: [],
  say: ({ code, detail, missing = "", omitted }) => ({
    what: `This can't be read as YAML: ${shorten(detail)}.`,
    todo:
      (remedies[code]?.(missing) ??
        "Check colons, quotes, brackets and indentation here and on the line above.") + omittedWords(omitted),
  }),
  examples: () => [
    {
      title: "A bracket that is not closed",
      text: wireExample({ bundle: "[B1" }),
      finds: ["\\[ is not closed"],
    },
    {
      title: "A quote that is not closed, and takes the bracket along",
      text: recordExample({ sections: 'wires:\n  - { id: "P101A8, from: MAIN }' }),
      finds: ['the " that opens here is not closed'],
    },
    {
      title: "A dash for a revision that there is none of, which YAML takes for the beginning of a list",
      text: recordExample({ document: "document: { number: HM-0412, revision: -, status: draft }" }),
      finds: ["a dash where no list can begin"],
    },
    {
      title: "The dash in quotes",
      text: recordExample({ document: "document: { number: HM-0412, revision: '-', status: draft }" }),
      finds: [],
    },
    { title: "A line that can be read", text: wireExample(), finds: [] },
  ],
});

/** By the code of the parser that the reading hands on, with the quote or bracket that is missing. */
const remedies: Readonly<Record<string, (missing: string) => string>> = {
  MISSING_CHAR: () => "Add the colon behind the key.",
  QUOTE_NOT_CLOSED: (quote) =>
    `Type ${quote} where the value ends, on this line, before a remark or a bracket that closes; or take this one out.`,
  BRACKET_NOT_CLOSED: (bracket) =>
    `Type ${bracket} behind the last of what belongs inside; where that goes on below, indent it deeper than the key.`,
  TEXT_AFTER_QUOTE: (quote) =>
    `Where the value ends there, put a comma or a line break behind it; where it goes on, write ${escapes[quote]} ` +
    "for a quote inside it; or else an earlier quote on this line is not closed.",
  UNEXPECTED_TOKEN: () =>
    "Take out what is too much; where it belongs to the value, put the whole value in quotes.",
  LONE_DASH: () =>
    "Where the dash is the value, put it in quotes: '-'. Where a list begins, write it in brackets, or start a line for each of its entries.",
  MULTILINE_IMPLICIT_KEY: () => "Write the key and its colon on one line.",
  BLOCK_AS_IMPLICIT_KEY: () => "Start a line for each key; put a value that has ': ' in it in quotes.",
  BAD_INDENT: () => "Indent what belongs together alike, with spaces, two for each step.",
  BAD_SCALAR_START: () => "Put the value in quotes: this sign can't start one.",
  BAD_DQ_ESCAPE: () => "Use single quotes, in which a backslash is only a backslash.",
  UNKNOWN_ALIAS: () => "Write the value out in place of the alias.",
  CONTROL_CHARACTER: () => "Take it out: it is a sign that nobody sees, often pasted in from elsewhere.",
};

/** How a quote is written inside of its own kind. */
const escapes: Readonly<Record<string, string>> = { "'": "''", '"': '\\"' };
