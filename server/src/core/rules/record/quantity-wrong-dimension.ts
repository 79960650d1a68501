import { dimensions } from "../../quantities";
import type { RecordFacts } from "../../records/problem-facts";
import { wireExample } from "../example-record";
import { defineRule } from "../rule";
import { nameOf, quote, sentence } from "../wording";
import { unitChoice } from "./quantity-words";

export const quantityWrongDimension = defineRule<RecordFacts["quantity-wrong-dimension"]>({
  id: "quantity-wrong-dimension",
  severity: "error",
  area: "record",
  title: "A unit measures something else than its key",
  why:
    "A length in pounds is a value in the wrong line, or a line with the wrong unit. Which of the two can be seen " +
    "only by looking at the part, so nothing is computed from it.",
  sources: [],
  say: ({ text, unit, found, expected, example, ...where }) => ({
    what:
      `${sentence(nameOf(where))} is ${quote(text)}; ${unit} is a unit of ${dimensions[found].name}, ` +
      `not of ${dimensions[expected].name}.`,
    todo: `Write the ${dimensions[expected].name}, as in ${example}. ${unitChoice(expected)}`,
  }),
  examples: () => [
    {
      title: "A length in pounds",
      text: wireExample({ length: "14.5 lb" }),
      finds: ["'length' of wire P101A8 is '14.5 lb'; lb is a unit of weight, not of length"],
    },
    { title: "A length in feet", text: wireExample({ length: "14.5 ft" }), finds: [] },
  ],
});
