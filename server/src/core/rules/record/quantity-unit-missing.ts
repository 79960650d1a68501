import { unitsOf } from "../../quantities";
import type { RecordFacts } from "../../records/problem-facts";
import { wireExample } from "../example-record";
import { defineRule, rewrite } from "../rule";
import { nameOf, quote, sentence } from "../wording";
import { unitChoice } from "./quantity-words";

export const quantityUnitMissing = defineRule<RecordFacts["quantity-unit-missing"]>({
  id: "quantity-unit-missing",
  severity: "error",
  area: "record",
  title: "A number has no unit",
  why:
    "A bare number is read in whatever unit its reader is used to: 14.5 is feet to one and metres to the next. " +
    "Each quantity carries its unit, so that nothing is assumed.",
  sources: [],
  say: ({ text, expected, example, ...where }) => ({
    what: `${sentence(nameOf(where))} is ${quote(text)}, without a unit.`,
    todo: `Write the unit behind the number, as in ${example}. ${unitChoice(expected)}`,
  }),
  *corrections({ facts: { text, expected, example }, place }) {
    const units: readonly string[] = unitsOf(expected);
    const usual = units.filter((unit) => example.endsWith(` ${unit}`));
    for (const unit of new Set([...usual, ...units])) {
      yield rewrite(`Write ${text} ${unit}`, place, `${text} ${unit}`, unit);
    }
  },
  isSafe: true,
  examples: () => [
    {
      title: "A length without its unit",
      text: wireExample({ length: "14.5" }),
      finds: ["'length' of wire P101A8 is '14.5', without a unit"],
    },
    { title: "A length in feet", text: wireExample({ length: "14.5 ft" }), finds: [] },
  ],
});
