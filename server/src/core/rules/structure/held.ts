/** What the rules of reinforcements have in common: a distance or a count of one opening against its limit. */
import { type Assessment, type Facts, holds } from "../../findings/finding";
import { structureOf } from "../../graph/derivations";
import type { ReinforcementResult } from "../../graph/structure/reinforcement";
import type { Value, ValueUnit } from "../../graph/value";
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
  if (!recorded) return;
  const text = lengthText(
    limit.value,
    limit.unit,
    recorded.value.unit,
    sense === "at-most" ? roundDown : roundUp,
  );
  if (text) yield rewrite(title(text), recorded.place, text);
}

/** A length as it may be written beside others in millimetres, or else in inches; undefined for no length. */
export function lengthText(
  value: number,
  unit: ValueUnit,
  beside: string | undefined,
  round: typeof roundUp,
): string | undefined {
  if (!isUnitOf("length", unit)) return undefined;
  const written: UnitSymbol<"length"> = beside === "mm" ? "mm" : "in";
  return `${round(convert(value, unit, written, "length"), written === "mm" ? 0.1 : 0.01)} ${written}`;
}

/** The pitch that just keeps the limit. Where places are recorded, it is for the drawing to say where each goes. */
export function otherPitch(assessment: Assessment, project: Project): Iterable<Remedy> {
  const { lines, pitch } = reinforcementOf(assessment, project)?.fasteners ?? {};
  const recorded = lines?.length ? undefined : pitch;
  return lengthThatKeeps(assessment, recorded, (text) => `Space the fasteners ${text} apart`);
}

/** What was derived of the reinforcement that an assessment is about. */
export function resultOf({ subject }: Assessment, project: Project): ReinforcementResult | undefined {
  for (const result of reinforcementsOf(project)) if (result.opening.id === subject.id) return result;
  return undefined;
}

/** The reinforcement that an assessment is about. */
export function reinforcementOf({ subject }: Assessment, { install }: Project) {
  return install.cutouts?.find(({ id }) => id?.value === subject.id)?.reinforcement;
}
