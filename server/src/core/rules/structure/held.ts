/** What the rules of reinforcements have in common: a distance or a count of one opening against its limit. */
import { type Assessment, type Facts, holds } from "../../findings/finding";
import { structureOf } from "../../graph/derivations";
import type { ReinforcementResult } from "../../graph/structure/reinforcement";
import type { Value } from "../../graph/value";
import type { Project } from "../../project";
import type { Quantity } from "../../quantities";
import { convert, formatApart, isUnitOf, roundDown, roundUp, type UnitSymbol } from "../../quantities";
import type { Place, Written } from "../../records/written";
import { type Remedy, rewrite } from "../rule";

/** A value and its limit, with what a sentence about them needs. */
export interface HeldFacts extends Facts {
  readonly cutout: string;
  readonly is: number;
  readonly limit: number;
  readonly unit: string;
}

/** Every reinforcement of a project. */
export function* reinforcementsOf(project: Project): Iterable<ReinforcementResult> {
  for (const { reinforced } of structureOf(project).openings) if (reinforced) yield reinforced;
}

/** Holds a value of an opening against its limit; nothing while either is not known. */
export function* hold(
  rule: string,
  cutout: string,
  place: Place,
  value: Value | undefined,
  limit: Value | undefined,
  sense: Assessment["sense"],
  more: Facts = {},
  related: Assessment["related"] = [],
): Iterable<Assessment> {
  if (!value || !limit) return;
  yield {
    rule,
    subject: { kind: "cutout", id: cutout },
    place,
    value,
    limit,
    sense,
    holds: holds(value.value, sense, limit.value),
    facts: { cutout, is: value.value, limit: limit.value, unit: limit.unit, ...more },
    related,
  };
}

/** Both numbers with so many digits that they differ, each with its unit. */
export function both({ is, limit, unit }: HeldFacts): readonly [string, string] {
  const [a, b] = formatApart(is, limit);
  return unit === "1" ? [a, b] : [`${a} ${unit}`, `${b} ${unit}`];
}

/** The length that just keeps the limit, in the unit that the record has, rounded the safe way. */
export function* lengthThatKeeps(
  { limit, sense }: Assessment,
  recorded: Written<Quantity<"length">> | undefined,
  title: (length: string) => string,
): Iterable<Remedy> {
  if (!recorded || !isUnitOf("length", limit.unit)) return;
  const unit: UnitSymbol<"length"> = recorded.value.unit === "mm" ? "mm" : "in";
  const wanted = convert(limit.value, limit.unit, unit, "length");
  const step = unit === "mm" ? 0.1 : 0.01;
  const text = `${(sense === "at-most" ? roundDown : roundUp)(wanted, step)} ${unit}`;
  yield rewrite(title(text), recorded.place, text);
}

/** The pitch that just keeps the limit. Where places are recorded, it is for the drawing to say where each goes. */
export function otherPitch(assessment: Assessment, project: Project): Iterable<Remedy> {
  const { lines, pitch } = reinforcementOf(assessment, project)?.fasteners ?? {};
  const recorded = lines?.length ? undefined : pitch;
  return lengthThatKeeps(assessment, recorded, (text) => `Space the fasteners ${text} apart`);
}

/** The reinforcement that an assessment is about. */
export function reinforcementOf({ subject }: Assessment, { install }: Project) {
  return install.cutouts?.find(({ id }) => id?.value === subject.id)?.reinforcement;
}
