import type { RecordFacts } from "../../records/problem-facts";
import { recordExample, wireExample } from "../example-record";
import { defineRule } from "../rule";
import { saidOfBlank } from "./blank-words";

const inWork = "document: { number: HM-0412, revision: A, status: in-work }";

export const valueStillBlank = defineRule<RecordFacts["value-still-blank"]>({
  id: "value-still-blank",
  severity: "warning",
  area: "record",
  title: "A record in work has a key with nothing behind it yet",
  why:
    "A record whose status is in-work says of itself that it is not finished, so its blanks warn, and what is wrong " +
    "with the rest comes before them. With any other status the same blank is an error. Nothing that needs the value " +
    "is checked until it is there.",
  sources: [],
  say: saidOfBlank,
  examples: () => [
    {
      title: "A wire of a record in work",
      text: wireExample({ gauge: "" }).replace("status: draft", "status: in-work"),
      finds: ["'gauge' of wire P101A8 has no value"],
    },
    { title: "The same in a draft is an error", text: wireExample({ gauge: "" }), finds: [] },
    { title: "Nothing is blank", text: recordExample({ document: inWork }), finds: [] },
  ],
});
