import { type Assessment, holds } from "../../findings/finding";
import { bracketsOf } from "../../graph/derivations";
import { ofEach } from "../../graph/recall";
import type { BracketResult } from "../../graph/structure/brackets";
import { bendSource } from "../../methods/sheet-bends";
import { formatApart, type UnitSymbol } from "../../quantities";
import { defineRule } from "../rule";
import { bracketExample } from "./bracket-example";

export const bracketLegTooShort = defineRule<{
  bracket: string;
  is: number;
  least: number;
  unit: UnitSymbol;
}>({
  id: "bracket-leg-too-short",
  severity: "error",
  area: "structure",
  title: "A bracket's leg is shorter than its bends take up",
  why:
    "From its tangent to where the outsides would meet, each bend takes its setback of the leg. A shorter leg ends in " +
    "the bend, or two bends run into each other.",
  sources: [bendSource],
  say: ({ bracket, is, least, unit }) => {
    const [leg, taken] = formatApart(is, least);
    return {
      what: `A leg of ${bracket} is ${leg} ${unit} long; its bends take up ${taken} ${unit}.`,
      todo: "Make the leg longer, or bend it round a smaller radius that its sheet allows.",
    };
  },
  check: ofEach((project) => bracketsOf(project).brackets, legs),
  examples: () => [
    {
      title: "A lip of a quarter inch",
      text: bracketExample({ legs: "[0.25 in, 2 in]" }),
      finds: ["^A leg of BK-1 is 0.25 in long; its bends take up 0.254 in"],
    },
    { title: "One of three eighths", text: bracketExample({ legs: "[0.375 in, 2 in]" }), finds: [] },
  ],
});

function* legs({ bracket, id, legs: found }: BracketResult): Iterable<Assessment> {
  for (const [index, { length, least }] of found.entries()) {
    const place = bracket.legs?.[index]?.place;
    if (!least || !place) continue;
    yield {
      rule: "bracket-leg-too-short",
      subject: { kind: "bracket", id },
      place,
      value: length,
      limit: least,
      sense: "at-least",
      holds: holds(length.value, "at-least", least.value),
      facts: { bracket: id, is: length.value, least: least.value, unit: length.unit as UnitSymbol },
      related: [],
    };
  }
}
