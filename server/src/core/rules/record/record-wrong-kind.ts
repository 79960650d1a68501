import type { RecordFacts } from "../../records/problem-facts";
import type { RecordKind } from "../../records/schema";
import { airframeExample, recordExample } from "../example-record";
import { defineRule } from "../rule";
import { quote, withArticle } from "../wording";

export const recordWrongKind = defineRule<RecordFacts["record-wrong-kind"]>({
  id: "record-wrong-kind",
  severity: "error",
  area: "record",
  title: "A path names a file of another kind",
  why:
    "Airframe, kit and install records hold different things, and the end of the file's name says which one it is. " +
    "A kit read as an airframe would give limits that are not there.",
  sources: [],
  say: ({ target, kind, found }) => ({
    what: `${quote(target)} is ${found ? named(found) : "no record"}, where ${named(kind)} belongs.`,
    todo: `Name ${named(kind)}: its file name ends in .${kind}.yaml.`,
  }),
  examples: () => [
    {
      title: "A kit for an airframe",
      text: recordExample({ airframe: "airframe: survey-rack.kit.yaml" }),
      finds: ["'survey-rack.kit.yaml' is a kit record, where an airframe record belongs"],
    },
    {
      title: "Some other file",
      text: recordExample({ airframe: "airframe: brackenfell-0417.pdf" }),
      finds: ["'brackenfell-0417.pdf' is no record, where an airframe record belongs"],
    },
    {
      title: "An airframe record",
      text: recordExample({ airframe: "airframe: brackenfell-0417.airframe.yaml" }),
      others: { "brackenfell-0417.airframe.yaml": airframeExample() },
      finds: [],
    },
  ],
});

function named(kind: RecordKind): string {
  return withArticle(`${kind} record`);
}
