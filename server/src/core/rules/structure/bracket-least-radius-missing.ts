import type { Problem } from "../../findings/finding";
import { bracketsOf } from "../../graph/derivations";
import { ofEach } from "../../graph/recall";
import type { BracketResult } from "../../graph/structure/brackets";
import { defineRule } from "../rule";
import { bracketExample } from "./bracket-example";

export const bracketLeastRadiusMissing = defineRule<{ bracket: string }>({
  id: "bracket-least-radius-missing",
  severity: "information",
  area: "structure",
  title: "Nobody says how tightly a bracket's sheet may be bent",
  why:
    "The least radius depends on alloy, temper and thickness. The circular's table of it was not read, so none is " +
    "assumed; the repair data of the airframe or the maker of the sheet give it.",
  sources: [],
  say: ({ bracket }) => ({
    what: `The bends of ${bracket} are held against no least radius.`,
    todo: "Add 'least-radius', with the document that gives it as 'data'.",
  }),
  check: ofEach((project) => bracketsOf(project).brackets, missing),
  examples: () => [
    {
      title: "Left out",
      text: bracketExample({ "least-radius": "", data: "" }),
      finds: ["^The bends of BK-1 are held against no least radius"],
    },
    { title: "From the repair data", text: bracketExample(), finds: [] },
  ],
});

function* missing({ bracket, id }: BracketResult): Iterable<Problem> {
  if (bracket.leastRadius || !bracket.bends?.length) return;
  yield {
    rule: "bracket-least-radius-missing",
    subject: { kind: "bracket", id },
    place: (bracket.id ?? bracket).place,
    facts: { bracket: id },
  };
}
