import type { Component, InstallRecord, KitRecord } from "../records/types";
import type { Place } from "../records/written";

/** A component of the kit that the record says to be in the aircraft, and where it first says so. */
interface Present {
  readonly component: Component;
  readonly id: string;
  readonly place: Place;
}

/** Components that have a place in the aircraft, or else run in some condition, each once. */
export function placedOrRunning(
  { placement, conditions }: Pick<InstallRecord, "placement" | "conditions">,
  kit: Pick<KitRecord, "components"> | undefined,
): Present[] {
  const named = [
    ...(placement ?? []).flatMap(({ component }) => component ?? []),
    ...(conditions ?? []).flatMap(({ loads }) => loads?.map(({ key }) => key) ?? []),
  ];
  const places = new Map<string, Place>();
  for (const { value, place } of named) if (!places.has(value)) places.set(value, place);
  return (kit?.components ?? []).flatMap((component) => {
    const place = component.id && places.get(component.id.value);
    return component.id && place ? [{ component, id: component.id.value, place }] : [];
  });
}
