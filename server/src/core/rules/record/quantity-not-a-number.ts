import type { RecordFacts } from "../../records/problem-facts";
import { wireExample } from "../example-record";
import { defineRule } from "../rule";
import { listWords, nameOf, quote, sentence } from "../wording";

type NotANumber = RecordFacts["quantity-not-a-number"];

export const quantityNotANumber = defineRule<NotANumber>({
  id: "quantity-not-a-number",
  severity: "error",
  area: "record",
  title: "A quantity does not start with a number that can be read in one way",
  why:
    "To one reader 1,250 is one and a quarter, to the next twelve hundred and fifty. A number is taken only " +
    "where it can be read in one way, with a point for the decimals and nothing between the thousands.",
  sources: [],
  say: (facts) => ({
    what: `${sentence(nameOf(facts))} is ${quote(facts.text)}, ${faults[facts.reason](facts)}.`,
    todo: remedy(facts),
  }),
  examples: () => [
    {
      title: "A comma that may be either",
      text: wireExample({ length: "1,250 mm" }),
      finds: ["'length' of wire P101A8 is '1,250 mm', where ',' may part thousands or decimals"],
    },
    {
      title: "A decimal comma",
      text: wireExample({ length: "14,5 ft" }),
      finds: ["'length' of wire P101A8 is '14,5 ft', with a comma in the number"],
    },
    {
      title: "Words in place of a number",
      text: wireExample({ length: "as required" }),
      finds: ["'length' of wire P101A8 is 'as required', which does not start with a number"],
    },
    { title: "A fraction", text: wireExample({ length: "14 1/2 ft" }), finds: [] },
  ],
});

const faults: Readonly<Record<NotANumber["reason"], (facts: NotANumber) => string>> = {
  empty: () => "which says nothing",
  "no-number": () => "which does not start with a number",
  "decimal-comma": () => "with a comma in the number",
  "thousands-comma": ({ suggestions }) =>
    suggestions.length > 1 ? "where ',' may part thousands or decimals" : "with a comma in the number",
  "thousands-space": () => "with a blank in the number",
  malformed: ({ wrong }) => `where ${quote(wrong)} is no single number`,
};

function remedy({ suggestions, example }: NotANumber): string {
  if (suggestions.length === 0) return `Write a number and its unit, as in ${example}.`;
  return suggestions.length === 1
    ? `Write ${suggestions[0]}.`
    : `Write the one that you mean: ${listWords(suggestions, "or")}.`;
}
