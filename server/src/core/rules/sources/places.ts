import type { Condition } from "../../records/types";
import type { Place } from "../../records/written";

/** Where a finding about a whole condition goes: its name, or all of it while it has none. */
export function conditionPlace({ id, place }: Condition): Place {
  return id?.place ?? place;
}

/** Where a condition lets a component run, or the condition as a whole. */
export function runPlace(condition: Condition, component: string): Place {
  const pair = condition.loads?.find(({ key }) => key.value === component);
  return pair?.key.place ?? conditionPlace(condition);
}
