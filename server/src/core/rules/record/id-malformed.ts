import type { RecordFacts } from "../../records/problem-facts";
import { wireExample } from "../example-record";
import { defineRule } from "../rule";
import { nameOf, quote, sentence } from "../wording";

export const idMalformed = defineRule<RecordFacts["id-malformed"]>({
  id: "id-malformed",
  severity: "error",
  area: "record",
  title: "A name has signs that names don't have",
  why:
    "Ids stand on wire markers, in tables and in other records. A blank or a slash in one of them reads as two " +
    "names somewhere, and a leading digit reads as a quantity.",
  sources: [],
  say: ({ found, example = "P101A8", ...where }) => ({
    what: `${sentence(nameOf(where))} is ${quote(found)}, which ${fault(found)}.`,
    todo: `Use a letter first, then letters, digits, '.', '_' and '-', such as ${mended(found) ?? example}.`,
  }),
  examples: [
    {
      title: "A blank in a wire's name",
      text: wireExample({ id: "P101 A8" }),
      finds: ["'id' of wire P101 A8 is 'P101 A8', which has a blank in it"],
    },
    {
      title: "A digit in front",
      text: wireExample({ id: "101-P8" }),
      finds: ["'id' of wire 101-P8 is '101-P8', which does not start with a letter"],
    },
    { title: "Letters, digits and a dash", text: wireExample({ id: "P101-A8" }), finds: [] },
  ],
});

function fault(found: string): string {
  const sign = /[^A-Za-z0-9._-]/u.exec(found)?.[0];
  if (sign !== undefined) return `has ${/\s/.test(sign) ? "a blank" : quote(sign)} in it`;
  return "does not start with a letter";
}

/** The same name without what is wrong with it, if anything is left. */
function mended(found: string): string | undefined {
  const name = found.replace(/[^A-Za-z0-9._-]+/gu, "-").replace(/^[^A-Za-z]+|-+$/g, "");
  return name === "" ? undefined : name;
}
