import type { RecordFacts } from "../../records/problem-facts";
import { wireExample } from "../example-record";
import { defineRule } from "../rule";
import { nameOf, quote, sentence } from "../wording";

export const quantityNotUnderstood = defineRule<RecordFacts["quantity-not-understood"]>({
  id: "quantity-not-understood",
  severity: "error",
  area: "record",
  title: "A quantity is followed by words",
  why:
    "What stands behind a quantity may change it: '14.5 ft each way' is 29 ft of wire. The value is not used " +
    "while part of it is not understood.",
  sources: [],
  say: ({ text, wrong, understood, meant, ...where }) => ({
    what: `${sentence(nameOf(where))} is ${quote(text)}; ${quote(wrong)} is not understood.`,
    todo: meant
      ? `Write one number with one unit: ${meant}.`
      : `Write the quantity alone, as in ${understood}, and the rest as a comment behind '#'.`,
  }),
  examples: () => [
    {
      title: "A remark behind the length",
      text: wireExample({ length: "14.5 ft each way" }),
      finds: ["'length' of wire P101A8 is '14.5 ft each way'; 'each way' is not understood"],
    },
    { title: "The remark as a comment", text: wireExample({ length: "14.5 ft # one way" }), finds: [] },
  ],
});
