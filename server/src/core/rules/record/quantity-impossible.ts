import { dimensions, formatMeasure } from "../../quantities";
import type { RecordFacts } from "../../records/problem-facts";
import { wireExample } from "../example-record";
import { defineRule } from "../rule";
import { nameOf, quote, sentence } from "../wording";

type Impossible = RecordFacts["quantity-impossible"];

export const quantityImpossible = defineRule<Impossible>({
  id: "quantity-impossible",
  severity: "error",
  area: "record",
  title: "A quantity can't be true",
  why:
    "A wire of no length, a negative weight or a gauge that nobody draws is a slip. Computed with, it would make " +
    "everything around it look better or worse than it is.",
  sources: [],
  say: (facts) => ({
    what: `${sentence(nameOf(facts))} is ${quote(facts.text)}, which ${fault(facts)}.`,
    todo: `Correct the value, as in ${facts.example}.`,
  }),
  examples: () => [
    {
      title: "A negative length",
      text: wireExample({ length: "-3 ft" }),
      finds: ["'length' of wire P101A8 is '-3 ft', which is not more than 0 ft"],
    },
    {
      title: "A gauge that does not exist",
      text: wireExample({ gauge: "42 AWG" }),
      finds: ["'gauge' of wire P101A8 is '42 AWG', which is no wire gauge"],
    },
    {
      title: "Colder than possible",
      text: wireExample({ rating: "-300 degC" }),
      finds: ["'rating' of wire P101A8 is '-300 degC', which is below absolute zero"],
    },
    {
      title: "A length and a gauge that exist",
      text: wireExample({ length: "3 ft", gauge: "4/0 AWG" }),
      finds: [],
    },
  ],
});

function fault({ reason, unit, bound, expected }: Impossible): string {
  const limit = bound === undefined ? "" : formatMeasure(bound, unit, 6);
  switch (reason) {
    case "not-finite":
      return "is no number that can be computed with";
    case "too-large":
      return `is larger than any ${dimensions[expected].name} in an aircraft`;
    case "too-small":
      return `is smaller than any ${dimensions[expected].name} in an aircraft, and not zero`;
    case "negative":
      return `is below ${limit}`;
    case "not-positive":
      return `is not more than ${limit}`;
    case "below-absolute-zero":
      return `is below absolute zero (${limit})`;
    case "not-a-gauge":
      return "is no wire gauge: they run from 30 AWG to 4/0 AWG";
  }
}
