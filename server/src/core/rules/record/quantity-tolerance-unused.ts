import type { RecordFacts } from "../../records/problem-facts";
import { wireExample } from "../example-record";
import { defineRule } from "../rule";
import { balanceExample } from "../weights/balance-example";
import { nameOf, quote, sentence } from "../wording";

export const quantityToleranceUnused = defineRule<RecordFacts["quantity-tolerance-unused"]>({
  id: "quantity-tolerance-unused",
  severity: "error",
  area: "record",
  title: "A tolerance stands where nothing is computed from one",
  why:
    "The weights and arms of the empty aircraft and of what is added and removed may have a tolerance, and the worst " +
    "case of it is carried through to the weight and CG of every loading. Elsewhere one value counts. A tolerance that nobody looks at " +
    "would only seem to be covered, so the value is not used.",
  sources: [],
  say: ({ text, wrong, bare, ...where }) => ({
    what: `${sentence(nameOf(where))} is ${quote(text)}; the tolerance ${quote(wrong)} is not computed with here.`,
    todo: `Write the one value that is on the safe side, as in ${bare}, and the tolerance as a comment behind '#'.`,
  }),
  examples: () => [
    {
      title: "A length with a tolerance",
      text: wireExample({ length: "14.5 ± 0.2 ft" }),
      finds: [
        "'length' of wire P101A8 is '14.5 ± 0.2 ft'; the tolerance '± 0.2 ft' is not computed with here",
      ],
    },
    {
      title: "The longest that it may be",
      text: wireExample({ length: "14.7 ft # 14.5 ± 0.2" }),
      finds: [],
    },
    {
      title: "A weight with a tolerance, which is computed with",
      text: balanceExample({ rack: "31.2 ± 0.5 lb" }),
      finds: [],
    },
  ],
});
