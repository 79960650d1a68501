import type { LinkFacts } from "../../records/problem-facts";
import { airframeExample, recordExample } from "../example-record";
import { defineRule } from "../rule";
import { quote } from "../wording";

export const recordCircular = defineRule<LinkFacts>({
  id: "record-circular",
  severity: "error",
  area: "record",
  title: "A record names itself",
  why: "An install record can't be its own airframe or kit. What was meant is another file, and nothing of it is checked.",
  sources: [],
  say: ({ target, kind }) => ({
    what: `The ${kind} record ${quote(target)} is this record itself.`,
    todo: `Name the ${kind} record: its file name ends in .${kind}.yaml.`,
  }),
  examples: () => [
    {
      title: "Its own name as the airframe",
      text: recordExample({ airframe: "airframe: example.install.yaml" }),
      finds: ["The airframe record 'example.install.yaml' is this record itself"],
    },
    {
      title: "An airframe record",
      text: recordExample({ airframe: "airframe: brackenfell-0417.airframe.yaml" }),
      others: { "brackenfell-0417.airframe.yaml": airframeExample() },
      finds: [],
    },
  ],
});
