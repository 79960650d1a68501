import type { LinkFacts } from "../../records/problem-facts";
import { airframeExample, recordExample } from "../example-record";
import { defineRule } from "../rule";
import { quote } from "../wording";

export const recordOutsideWorkspace = defineRule<LinkFacts>({
  id: "record-outside-workspace",
  severity: "error",
  area: "record",
  title: "A record that is named lies outside the workspace",
  why:
    "A review covers what is in the repository. A record outside it can change without anybody seeing it, and is " +
    "not there on the next machine.",
  sources: [],
  say: ({ target, kind }) => ({
    what: `The ${kind} record ${quote(target)} lies outside the workspace.`,
    todo: `Put the ${kind} record inside the workspace, and name it by a path that starts at this file's folder.`,
  }),
  examples: () => [
    {
      title: "A path that leads out of the folder",
      text: recordExample({ airframe: "airframe: ../../brackenfell-0417.airframe.yaml" }),
      finds: ["The airframe record '../../brackenfell-0417.airframe.yaml' lies outside the workspace"],
    },
    {
      title: "A record beside this one",
      text: recordExample({ airframe: "airframe: brackenfell-0417.airframe.yaml" }),
      others: { "brackenfell-0417.airframe.yaml": airframeExample() },
      finds: [],
    },
  ],
});
