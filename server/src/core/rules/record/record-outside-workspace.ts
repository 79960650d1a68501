import type { LinkFacts } from "../../records/problem-facts";
import { airframeExample, recordExample } from "../example-record";
import { defineRule } from "../rule";
import { quote, shorten } from "../wording";

export const recordOutsideWorkspace = defineRule<LinkFacts>({
  id: "record-outside-workspace",
  severity: "error",
  area: "record",
  title: "A record that is named lies outside the workspace, or is named by a whole path",
  why:
    "A review covers what is in the repository. A record outside it can change without anybody seeing it, and is " +
    "not there on the next machine.",
  sources: [],
  say: ({ target, kind }) =>
    startsElsewhere.test(target)
      ? {
          what: `The ${kind} record is named by a whole path, which holds on one machine alone.`,
          todo: `Write the path from this file's folder, such as ../records/${ending(target)}.`,
        }
      : {
          what: `The ${kind} record ${quote(target)} lies outside the workspace.`,
          todo: `Put the ${kind} record inside the workspace, and name it by a path that starts at this file's folder.`,
        },
  examples: () => [
    {
      title: "A path that leads out of the folder",
      text: recordExample({ airframe: "airframe: ../../brackenfell-0417.airframe.yaml" }),
      finds: ["The airframe record '../../brackenfell-0417.airframe.yaml' lies outside the workspace"],
    },
    {
      title: "A path that starts at the top of a disk",
      text: recordExample({ airframe: "airframe: /home/shop/records/brackenfell-0417.airframe.yaml" }),
      finds: ["The airframe record is named by a whole path"],
    },
    {
      title: "A record beside this one",
      text: recordExample({ airframe: "airframe: brackenfell-0417.airframe.yaml" }),
      others: { "brackenfell-0417.airframe.yaml": airframeExample() },
      finds: [],
    },
  ],
});

/** A path from the top of a disk, or an address: wherever it leads, no other machine has it there. */
const startsElsewhere = /^(?:[\\/]|[a-z][a-z0-9+.-]*:)/i;

/** The name of the file itself. */
function ending(path: string): string {
  return shorten(path.split(/[\\/]/).at(-1) ?? "");
}
