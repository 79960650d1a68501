import { runOf } from "../graph/electrical/running";
import type { Component, InstallRecord, KitRecord } from "../records/types";
import type { Place } from "../records/written";

/** A component of the kit that the record says to be in the aircraft, and where it first says so. */
interface Present {
  readonly id: string;
  readonly place: Place;
}

/**
 * Components that have a place in the aircraft, or else run in some condition, each once.
 *
 * @param isAsked whether it is wanted: of the others nobody looks where they are
 */
export function* placedOrRunning(
  install: Pick<InstallRecord, "placement" | "conditions">,
  kit: Pick<KitRecord, "components"> | undefined,
  isAsked: (component: Component, id: string) => boolean,
): Iterable<Present> {
  for (const component of kit?.components ?? []) {
    if (!component.id || !isAsked(component, component.id.value)) continue;
    const place = firstPlaceOf(component, component.id.value, install);
    if (place) yield { id: component.id.value, place };
  }
}

function firstPlaceOf(
  component: Component,
  id: string,
  { placement = [], conditions = [] }: Pick<InstallRecord, "placement" | "conditions">,
): Place | undefined {
  const placed = placement.find((one) => one.component?.value === id);
  if (placed) return placed.component?.place;
  for (const condition of conditions) {
    const run = runOf(component, condition);
    if (run) return run.key.place;
  }
  return undefined;
}
