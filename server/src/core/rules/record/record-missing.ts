import type { LinkFacts } from "../../records/problem-facts";
import { airframeExample, recordExample } from "../example-record";
import { defineRule } from "../rule";
import { quote } from "../wording";

export const recordMissing = defineRule<LinkFacts>({
  id: "record-missing",
  severity: "error",
  area: "record",
  title: "A record that is named does not exist",
  why:
    "Without its airframe and its kit an install record has no limits, no loads and no arms to check against. All " +
    "that needs them is left out.",
  sources: [],
  say: ({ target, kind }) => ({
    what: `There is no ${kind} record ${quote(target)}.`,
    todo: `Correct the path, which starts at this file's folder, or add the ${kind} record there.`,
  }),
  examples: () => [
    {
      title: "A path with a slip in it",
      text: recordExample({ airframe: "airframe: brackenfell-0471.airframe.yaml" }),
      others: { "brackenfell-0417.airframe.yaml": airframeExample() },
      finds: ["There is no airframe record 'brackenfell-0471.airframe.yaml'"],
    },
    {
      title: "The path of a record",
      text: recordExample({ airframe: "airframe: brackenfell-0417.airframe.yaml" }),
      others: { "brackenfell-0417.airframe.yaml": airframeExample() },
      finds: [],
    },
  ],
});
