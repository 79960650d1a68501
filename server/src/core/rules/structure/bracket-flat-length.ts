import { type Assessment, holds } from "../../findings/finding";
import type { BracketResult } from "../../graph/brackets";
import { bracketsOf } from "../../graph/derivations";
import { ofEach } from "../../graph/recall";
import { derive, derived, tabled, toleranceOf, written } from "../../graph/value";
import { bendSource } from "../../methods/sheet-bends";
import { formatApart, type UnitSymbol } from "../../quantities";
import type { Source } from "../../source";
import { covered } from "../../tables/lookup";
import { defineRule } from "../rule";
import { bracketExample } from "./bracket-example";

/** Where the drawing gives no tolerance. */
const habit: Source = {
  document: "Layout of sheet parts",
  standing: "common-practice",
  note: "1/32 in where a drawing gives no tolerance",
};
const habitual = { in: 1 / 32, mm: 25.4 / 32 } as const;

export const bracketFlatLength = defineRule<{ bracket: string; is: number; flat: number; unit: UnitSymbol }>({
  id: "bracket-flat-length",
  severity: "error",
  area: "structure",
  title: "A bracket's blank is not as long as its legs and bends make it",
  why:
    "The blank is the outside lengths of the legs, less twice the setback of each bend, with the sheet that the bend " +
    "takes up. A blank that is off gives a part whose holes are off, and short edge distances.",
  sources: [bendSource, habit],
  say: ({ bracket, is, flat, unit }) => {
    const [drawn, made] = formatApart(is, flat);
    return {
      what: `The blank of ${bracket} is drawn ${drawn} ${unit} long; its legs and bends make ${made} ${unit}.`,
      todo: "Lay it out again, or write the tolerance that the drawing allows behind its length.",
    };
  },
  check: ofEach((project) => bracketsOf(project).brackets, blank),
  examples: [
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

function* blank({ bracket, id, flat }: BracketResult): Iterable<Assessment> {
  if (!flat || !bracket.flat) return;
  const unit = flat.unit as "in" | "mm";
  const subject = flat.subject;
  const value = derive({
    subject,
    quantity: "flat-length-difference",
    unit,
    formula: "abs(b - L)",
    operands: { b: written("blank as drawn", bracket.flat, unit), L: derived("flat length", flat) },
    compute: ({ b, L }) => Math.abs(b - L),
  });
  const own = toleranceOf("tolerance of the blank", bracket.flat, unit);
  const limit = derive({
    subject,
    quantity: "flat-length-tolerance",
    unit,
    formula: "t",
    operands: { t: own ?? tabled("usual tolerance", covered(habitual[unit], habit), unit, []) },
    compute: ({ t }) => t,
    sources: own ? [] : [habit],
  });
  if (!value || !limit) return;
  yield {
    rule: "bracket-flat-length",
    subject,
    place: bracket.flat.place,
    value,
    limit,
    sense: "at-most",
    holds: holds(value.value, "at-most", limit.value),
    facts: { bracket: id, is: value.inputs[0]!.value, flat: flat.value, unit },
    related: [],
  };
}
