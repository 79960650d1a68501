/** Every derived number of a project, as data; the names are those of graph/quantity-names. */
import type { Judgement } from "../check";
import { type Acceptance, type Assessment, type Finding, marginOf } from "../findings/finding";
import { valuesOf } from "../graph/derivations";
import { type Input, subjectWords, type Value } from "../graph/value";
import { citeSource } from "../source";
import { formulaOf, notesOf, sourcesOf } from "./calculation";
import { pagesOf } from "./pages";
import { PlaceNames } from "./place-names";

export interface WorksheetValue {
  readonly subject: string;
  readonly quantity: string;
  readonly condition: string | null;
  readonly value: number;
  readonly unit: string;
  readonly formula: string;
  readonly inputs: readonly WorksheetInput[];
  readonly source: readonly string[];
  readonly notes: readonly string[];
}

export interface WorksheetInput {
  readonly symbol: string;
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  /** Where it was written, as `path:line:column` from 1; empty for derived and assumed numbers. */
  readonly written: readonly string[];
  readonly source: string | null;
}

export interface WorksheetMargin {
  readonly rule: string;
  readonly subject: string;
  readonly quantity: string;
  readonly condition: string | null;
  readonly value: number;
  readonly limit: number;
  readonly unit: string;
  readonly sense: Assessment["sense"];
  readonly holds: boolean;
  /** Share of the limit that is left. */
  readonly margin: number | null;
}

/** Values, margins and pages of a judged install record; empty for other records. `pathOf` names files for people. */
export function worksheetOf(judgement: Judgement, pathOf: (file: string) => string) {
  const { project, assessments, findings } = judgement;
  const places = new PlaceNames(project?.files ?? [], pathOf);
  return {
    values: project ? valuesOf(project).map((value) => toWorksheetValue(value, places)) : [],
    margins: assessments.map(toMargin),
    pages: project ? pagesOf(project) : [],
    deviations: findings.flatMap(toDeviation),
  };
}

/** A finding that the record accepts, with who accepted it and until when. */
export interface WorksheetDeviation extends Omit<Acceptance, "place"> {
  readonly rule: string;
  readonly subject: string;
  readonly finding: string;
}

function toDeviation({ rule, subject, what, accepted }: Finding): WorksheetDeviation[] {
  if (!accepted) return [];
  const { place: _, ...acceptance } = accepted;
  return [{ rule, subject, finding: what, ...acceptance }];
}

function toWorksheetValue(value: Value, places: PlaceNames): WorksheetValue {
  return {
    subject: subjectWords(value.subject),
    quantity: value.quantity,
    condition: value.condition ?? null,
    value: value.value,
    unit: value.unit,
    formula: formulaOf(value),
    inputs: value.inputs.map((input) => toInput(input, places)),
    source: sourcesOf([value]).map(citeSource),
    notes: notesOf([value]),
  };
}

function toInput(input: Input, places: PlaceNames): WorksheetInput {
  return {
    symbol: input.symbol,
    name: input.name,
    value: input.value,
    unit: input.unit,
    written: input.places.map((place) => places.nameOf(place)),
    source: input.source ? citeSource(input.source) : null,
  };
}

function toMargin(assessment: Assessment): WorksheetMargin {
  const { rule, value, limit, sense } = assessment;
  return {
    rule,
    subject: subjectWords(assessment.subject),
    quantity: value.quantity,
    condition: value.condition ?? null,
    value: value.value,
    limit: limit.value,
    unit: value.unit,
    sense,
    holds: assessment.holds,
    margin: marginOf(assessment) ?? null,
  };
}
