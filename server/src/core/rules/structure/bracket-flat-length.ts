import { type Assessment, holds } from "../../findings/finding";
import { bracketsOf } from "../../graph/derivations";
import { ofEach } from "../../graph/recall";
import type { BracketResult } from "../../graph/structure/brackets";
import { bendSource } from "../../methods/sheet-bends";
import { formatApart, inUnit, type UnitSymbol } from "../../quantities";
import { blankTolerance } from "../../tables/blank-tolerance";
import { defineRule } from "../rule";
import { bracketExample } from "./bracket-example";

export const bracketFlatLength = defineRule<{ bracket: string; is: number; flat: number; unit: UnitSymbol }>({
  id: "bracket-flat-length",
  severity: "error",
  area: "structure",
  title: "A bracket's blank is not as long as its legs and bends make it",
  why:
    "The blank is the outside lengths of the legs, less twice the setback of each bend, with the sheet that the bend " +
    "takes up. A blank that is off gives a part whose holes are off, and short edge distances.",
  sources: [bendSource, blankTolerance.source],
  say: ({ bracket, is, flat, unit }) => {
    const [drawn, made] = formatApart(is, flat);
    return {
      what: `The blank of ${bracket} is drawn ${drawn} ${unit} long; its legs and bends make ${made} ${unit}.`,
      todo: "Lay it out again, or write the tolerance that the drawing allows behind its length.",
    };
  },
  check: ofEach((project) => bracketsOf(project).brackets, blank),
  examples: () => [
    {
      title: "Legs added up, nothing taken off for the bend",
      text: bracketExample({ flat: "3.5 in" }),
      finds: ["^The blank of BK-1 is drawn 3.5 in long; its legs and bends make 3.335 in"],
    },
    { title: "Laid out by the bend allowance", text: bracketExample({ flat: "3.335 in" }), finds: [] },
    {
      title: "Off by a twentieth, which its drawing allows",
      text: bracketExample({ flat: "3.38 ± 0.05 in" }),
      finds: [],
    },
    { title: "A blank that is left to the shop", text: bracketExample(), finds: [] },
  ],
});

function* blank({ bracket, id, flat, off }: BracketResult): Iterable<Assessment> {
  if (!flat || !bracket.flat || !off) return;
  const { value, limit } = off;
  const unit = flat.unit as "in" | "mm";
  yield {
    rule: "bracket-flat-length",
    subject: value.subject,
    place: bracket.flat.place,
    value,
    limit,
    sense: "at-most",
    holds: holds(value.value, "at-most", limit.value),
    facts: { bracket: id, is: inUnit(bracket.flat.value, unit), flat: flat.value, unit },
    related: [],
  };
}
