import { recordExample } from "../example-record";
import { defineRule } from "../rule";
import { omittedWords } from "../wording";

export const textTabIndent = defineRule<{ tabs: number; omitted?: number }>({
  id: "text-tab-indent",
  severity: "error",
  area: "text",
  title: "A line is indented with tabs",
  why:
    "YAML does not allow tabs for indentation, as their width differs from editor to editor. A line that seems to " +
    "belong to one wire could belong to another.",
  sources: [],
  say: ({ tabs, omitted }) => ({
    what: `This line is indented with ${tabs === 1 ? "a tab" : `${tabs} tabs`}.`,
    todo: `Indent with spaces, two for each step.${omittedWords(omitted)}`,
  }),
  examples: [
    {
      title: "A tab before a key",
      text: recordExample({ document: "document:\n\tnumber: HM-0412\n  revision: A\n  status: draft" }),
      finds: ["This line is indented with a tab"],
    },
    {
      title: "Two spaces before each key",
      text: recordExample({ document: "document:\n  number: HM-0412\n  revision: A\n  status: draft" }),
      finds: [],
    },
  ],
});
