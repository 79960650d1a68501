/** What could be written at a place of a record; everything follows from the schema and the linked records. */
import type { Judgement } from "../../check";
import { Names } from "../../records/record";
import type { Completion } from "./completion";
import { keyCompletions } from "./keys";
import { spotAt } from "./spot";
import { type Choices, valueCompletions } from "./values";

export type { Completion } from "./completion";
export { bestFirst, passing, type Trial, tryValue } from "./trials";

/** Completions at an offset, in order; `paths` gives the paths of other records, relative to this one. */
export function completionsAt(
  { record, project }: Judgement,
  offset: number,
  paths: Choices["paths"] = () => [],
): Completion[] {
  const spot = spotAt(record, offset);
  if (!spot) return [];
  const names = project?.names ?? new Names([record]);
  if (spot.kind === "key") return keyCompletions(spot, (kinds) => names.all(kinds));
  return valueCompletions(spot, { names, paths });
}
