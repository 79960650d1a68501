import type { Written } from "../records/written";

/** Things of a record by their ids, those without one left out. Of two with one id the first counts, everywhere. */
export function byIdOf<T extends { readonly id?: Written<string> | undefined }>(
  things: readonly T[] | undefined,
): ReadonlyMap<string, T> {
  const found = new Map<string, T>();
  for (const thing of things ?? []) {
    if (thing.id && !found.has(thing.id.value)) found.set(thing.id.value, thing);
  }
  return found;
}
