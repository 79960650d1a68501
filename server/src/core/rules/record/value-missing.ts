import type { RecordFacts } from "../../records/problem-facts";
import { wireExample } from "../example-record";
import { defineRule } from "../rule";
import { saidOfBlank } from "./blank-words";

export const valueMissing = defineRule<RecordFacts["value-missing"]>({
  id: "value-missing",
  severity: "error",
  area: "record",
  title: "A key has nothing behind it",
  why:
    "A line that was begun and not finished looks finished on paper. Nothing that needs the value is checked " +
    "until it is there.",
  sources: [],
  say: saidOfBlank,
  examples: () => [
    {
      title: "A half-typed line",
      text: wireExample({ gauge: "" }),
      finds: ["'gauge' of wire P101A8 has no value"],
    },
    {
      title: "A dash with nothing behind it",
      text: `${wireExample()}junctions:\n  - { id: TB1 }\n  -\n`,
      finds: ["Entry 2 in 'junctions' has no value"],
    },
    { title: "A finished line", text: wireExample({ gauge: "8 AWG" }), finds: [] },
  ],
});
