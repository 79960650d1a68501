import { type Assessment, holds } from "../../findings/finding";
import { bracketsOf } from "../../graph/derivations";
import { ofEach } from "../../graph/recall";
import type { BracketResult } from "../../graph/structure/brackets";
import { derive, written } from "../../graph/value";
import { formatApart, type UnitSymbol } from "../../quantities";
import { defineRule, rewrite } from "../rule";
import { bracketExample } from "./bracket-example";

export const bracketBendTooTight = defineRule<{
  bracket: string;
  is: number;
  least: number;
  unit: UnitSymbol;
}>({
  id: "bracket-bend-too-tight",
  severity: "error",
  area: "structure",
  title: "A bracket is bent round a smaller radius than its sheet allows",
  why: "Sheet that is bent too tightly cracks along the bend, at once or in service. The least radius is of the record.",
  sources: [],
  say: ({ bracket, is, least, unit }) => {
    const [radius, allowed] = formatApart(is, least);
    return {
      what: `A bend of ${bracket} has a radius of ${radius} ${unit}; its sheet allows no less than ${allowed} ${unit}.`,
      todo: "Bend it round a larger radius, and lay the blank out again.",
    };
  },
  check: ofEach((project) => bracketsOf(project).brackets, bends),
  *remedies({ place, subject }, { install }) {
    const least = install.brackets?.find(({ id }) => id?.value === subject.id)?.leastRadius?.value;
    if (!least) return;
    const text = `${least.written} ${least.unit}`;
    yield rewrite(`Bend ${subject.id} round ${text}`, place, text);
  },
  examples: () => [
    {
      title: "Round an eighth where three sixteenths are asked for",
      text: bracketExample({ bends: "[{ radius: 0.125 in, angle: 90 deg }]" }),
      finds: ["^A bend of BK-1 has a radius of 0.125 in; its sheet allows no less than 0.19 in"],
    },
    { title: "Round what is allowed", text: bracketExample(), finds: [] },
  ],
});

function* bends({ bracket, id }: BracketResult): Iterable<Assessment> {
  const { leastRadius, data } = bracket;
  for (const { radius } of bracket.bends ?? []) {
    if (!radius || !leastRadius) continue;
    const unit = ["in", "ft", "mil"].includes(radius.value.unit) ? "in" : "mm";
    const common = { subject: { kind: "bracket", id }, unit, formula: "r" } as const;
    const value = derive({
      ...common,
      quantity: "bracket-bend-radius",
      operands: { r: written("inside radius", radius, unit) },
      compute: ({ r }) => r,
    });
    const limit = derive({
      ...common,
      quantity: "least-bracket-bend-radius",
      operands: { r: written("least radius", leastRadius, unit) },
      compute: ({ r }) => r,
      sources: data ? [{ document: data.value, standing: "record" }] : [],
    });
    if (!value || !limit) continue;
    yield {
      rule: "bracket-bend-too-tight",
      subject: value.subject,
      place: radius.place,
      value,
      limit,
      sense: "at-least",
      holds: holds(value.value, "at-least", limit.value),
      facts: { bracket: id, is: value.value, least: limit.value, unit },
      related: [],
    };
  }
}
