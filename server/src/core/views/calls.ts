/** What feeds a value and what uses it: the value graph, walked from one value to the next. */
import type { Judgement } from "../check";
import { valuesOf } from "../graph/derivations";
import { type Input, placesBehind, showMeasure, type Value } from "../graph/value";
import type { Node } from "../reading";
import type { Place } from "../records/written";
import { nameOf } from "./calculation";

/** A value, or a number that was written, as a step of the walk. */
export interface Step {
  readonly name: string;
  readonly detail: string;
  /** Where it stands in a record: where it was written, or the first of what it rests on. */
  readonly place: Place;
  /** Tells the value again, in a later check too; undefined for a written number. */
  readonly key: string | undefined;
}

/** Values that a walk starts from: those that take what is written at the node. */
export function stepsAt(node: Node, { project, record }: Judgement): Step[] {
  if (!project) return [];
  return valuesOf(project)
    .filter((value) => value.inputs.some(({ places }) => places.some((place) => place.node === node)))
    .map((value) => stepOf(value, { file: record.file, node }));
}

/** What a value is computed from. */
export function feeding(key: string, judgement: Judgement): Step[] {
  const value = valueOfKey(key, judgement);
  return (value?.inputs ?? [])
    .flatMap((input) => {
      if (input.derivedFrom) return stepOf(input.derivedFrom, firstPlace(input.derivedFrom)) ?? [];
      return writtenStep(input) ?? [];
    })
    .filter((step) => step !== undefined);
}

/** What is computed from a value. */
export function using(key: string, judgement: Judgement): Step[] {
  const value = valueOfKey(key, judgement);
  if (!value || !judgement.project) return [];
  return valuesOf(judgement.project)
    .filter(({ inputs }) => inputs.some(({ derivedFrom }) => derivedFrom === value))
    .map((user) => stepOf(user, firstPlace(user)))
    .filter((step) => step !== undefined);
}

function valueOfKey(key: string, { project }: Judgement): Value | undefined {
  return project && valuesOf(project).find((value) => keyOf(value) === key);
}

function keyOf({ quantity, subject, condition }: Value): string {
  return [quantity, subject.kind, subject.id, condition ?? ""].join("\n");
}

function stepOf(value: Value, place: Place): Step;
function stepOf(value: Value, place: Place | undefined): Step | undefined;
function stepOf(value: Value, place: Place | undefined): Step | undefined {
  const { subject, condition } = value;
  return (
    place && {
      name: `${nameOf(value)} ${showMeasure(value.value, value.unit)}`,
      detail: condition === undefined ? subject.id : `${subject.id}, ${condition}`,
      place,
      key: keyOf(value),
    }
  );
}

function writtenStep({ name, value, unit, places, source }: Input): Step | undefined {
  const [place] = places;
  return (
    place && {
      name: `${name} ${showMeasure(value, unit)}`,
      detail: source ? source.document : "as written",
      place,
      key: undefined,
    }
  );
}

function firstPlace(value: Value): Place | undefined {
  const [first] = placesBehind(value);
  return first;
}
