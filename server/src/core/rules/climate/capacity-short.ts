/** What the two rules of capacity have in common: cooling and heating differ in words alone. */
import { type Assessment, holds } from "../../findings/finding";
import type { CaseResult } from "../../graph/climate";
import { climateOf } from "../../graph/derivations";
import type { Project } from "../../project";
import { formatApart, formatMeasure, inUnit } from "../../quantities";
import { type Message, type Remedy, rewrite } from "../rule";

export type CapacityFacts = {
  readonly space: string;
  readonly condition: string;
  readonly load: number;
  readonly capacity: number;
  /** In degC. */
  readonly setPoint: number;
  readonly steady?: number | undefined;
};

export function* capacityShort(
  rule: string,
  does: CaseResult["does"],
  project: Project,
): Iterable<Assessment> {
  for (const one of climateOf(project).cases) {
    const { load, capacity, climateCase, entry, steady } = one;
    if (one.does !== does || !load || !capacity || !climateCase.condition || !entry.setPoint) continue;
    const facts: CapacityFacts = {
      space: one.space,
      condition: one.condition,
      load: load.value,
      capacity: capacity.value,
      setPoint: inUnit(entry.setPoint.value, "degC"),
      steady: steady?.value,
    };
    yield {
      rule,
      subject: { kind: "space", id: one.space },
      place: climateCase.condition.place,
      value: load,
      limit: capacity,
      sense: "at-most",
      holds: holds(load.value, "at-most", capacity.value),
      facts,
      related: [{ place: entry.setPoint.place, words: "the set point" }],
    };
  }
}

export function sayShort(facts: CapacityFacts, verb: string): Pick<Message, "what"> {
  const [asked, given] = formatApart(facts.load, facts.capacity);
  const settles =
    facts.steady === undefined
      ? ""
      : ` ${formatMeasure(facts.setPoint, "degC")} is never reached: it settles at ${formatMeasure(facts.steady, "degC", 3)}.`;
  return {
    what: `${facts.space} in ${facts.condition}: ${asked} W to ${verb}, the kit has ${given} W.${settles}`,
  };
}

/** Shades are the one change that a record can make by itself. */
export function* fittedShades({ subject, value }: Assessment, project: Project): Iterable<Remedy> {
  const found = climateOf(project).cases.find(
    ({ space, condition }) => space === subject.id && condition === value.condition,
  );
  const shades = found?.climateCase.shades;
  if (shades?.value !== "stowed" || !found?.entry.shades?.length) return;
  yield rewrite(`Fit the shades of ${subject.id} in ${value.condition}`, shades.place, "fitted");
}
