import type { RecordFacts } from "../../records/problem-facts";
import { recordExample } from "../example-record";
import { defineRule } from "../rule";
import { nameOf, quote, sentence } from "../wording";

export const keyOutOfPlace = defineRule<RecordFacts["key-out-of-place"]>({
  id: "key-out-of-place",
  severity: "error",
  area: "record",
  title: "A figure has a dimension that its shape does not have",
  why:
    "A circle with a length is perhaps a slot, or a slot that became a circle. Which of the two gets cut into the " +
    "panel must not be a guess.",
  sources: [],
  say: ({ key, shape, ...where }) => ({
    what: `${sentence(nameOf(where))} is a ${shape}, which has no ${quote(key)}.`,
    todo: `Take ${quote(key)} out, or write the shape that it belongs to.`,
  }),
  examples: () => [
    {
      title: "A circle with a length",
      text: cutout("{ shape: circle, diameter: 3 in, length: 4 in }"),
      finds: ["'opening' of cutout C1 is a circle, which has no 'length'"],
    },
    { title: "A slot with a length", text: cutout("{ shape: slot, width: 1 in, length: 4 in }"), finds: [] },
  ],
});

function cutout(opening: string): string {
  return recordExample({ sections: `cutouts:\n  - id: C1\n    panel: AFT-FLOOR\n    opening: ${opening}` });
}
