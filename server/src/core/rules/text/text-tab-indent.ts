import { recordExample } from "../example-record";
import { defineRule } from "../rule";
import { omittedWords } from "../wording";

export const textTabIndent = defineRule<{ tabs: number; column?: number; omitted?: number }>({
  id: "text-tab-indent",
  severity: "error",
  area: "text",
  title: "A line is indented with tabs",
  why:
    "YAML does not allow tabs for indentation, as their width differs from editor to editor. A line that seems to " +
    "belong to one wire could belong to another. It is read where the lines around it let it stand, so that the " +
    "rest of the record is checked; other programs refuse the file.",
  sources: [],
  say: ({ tabs, column, omitted }) => ({
    what: `This line is indented with ${tabs === 1 ? "a tab" : `${tabs} tabs`}${read(column)}.`,
    todo:
      (column === undefined
        ? "Indent with spaces, two for each step."
        : `Start the line with ${spaces(column)} and no tab; with another number only where it belongs elsewhere.`) +
      omittedWords(omitted),
  }),
  *layouts({ place, facts: { tabs, column } }) {
    if (column === undefined) return;
    const title = `Put ${spaces(column)} in place of the ${tabs === 1 ? "tab" : "tabs"}`;
    yield { title, changes: [{ place, spaces: column }] };
  },
  isSafe: true,
  examples: () => [
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

function read(column: number | undefined): string {
  if (column === undefined) return "";
  return column === 0
    ? ", and is read as if it were not"
    : `, and is read as if ${spaces(column)} stood there`;
}

function spaces(count: number): string {
  return count === 0 ? "no space" : count === 1 ? "one space" : `${count} spaces`;
}
