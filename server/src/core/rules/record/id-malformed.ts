import type { RecordFacts } from "../../records/problem-facts";
import type { Whereabouts } from "../../records/whereabouts";
import { wireExample } from "../example-record";
import { defineRule } from "../rule";
import { keyOf, kindName, nameOf, quote, shorten, withArticle } from "../wording";

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
    what: `${quote(found)} can't be ${use(where)}: it ${fault(found)}.`,
    todo: `Use a letter first, then letters, digits, '.', '_' and '-', such as ${mended(found) ?? example}.`,
  }),
  examples: () => [
    {
      title: "A blank in a wire's name",
      text: wireExample({ id: "P101 A8" }),
      finds: ["'P101 A8' can't be the id of a wire: it has a blank in it"],
    },
    {
      title: "A digit in front",
      text: wireExample({ id: "101-P8" }),
      finds: ["'101-P8' can't be the id of a wire: it does not start with a letter"],
    },
    { title: "Letters, digits and a dash", text: wireExample({ id: "P101-A8" }), finds: [] },
  ],
});

/** What the name would be: of the thing itself, or of something else that it is told to. */
function use(where: Whereabouts): string {
  const isOwnId = where.ownerKind && where.path.length === 1 && keyOf(where) === "id";
  return isOwnId ? `the id of ${withArticle(kindName(where.ownerKind))}` : nameOf(where);
}

function fault(found: string): string {
  const sign = /[^A-Za-z0-9._-]/u.exec(found)?.[0];
  if (sign !== undefined) return `has ${/\s/.test(sign) ? "a blank" : quote(sign)} in it`;
  return "does not start with a letter";
}

/** The same name with '-' in place of what can't be in it; none where a letter in front is lacking. */
function mended(found: string): string | undefined {
  const name = found.replace(/[^A-Za-z0-9._-]+/gu, "-").replace(/^-|-$/g, "");
  return /^[A-Za-z]/.test(name) ? shorten(name) : undefined;
}
