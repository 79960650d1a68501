/** Where findings go that are about a key, a link, or what stands in a linked record. */
import type { Related } from "../findings/finding";
import { entryOf } from "../graph/entries";
import type { Project } from "../project";
import type { Place } from "../records/written";

/** A key of a record's top level, where it is written. */
export function keyPlace(record: { readonly place: Place }, key: string): Place | undefined {
  const entry = entryOf(record, key);
  return entry && { file: record.place.file, node: entry.key };
}

/** Where the install record draws in another record: the path, or the key above what is written inline. */
export function linkPlace({ install }: Project, key: "airframe" | "kit"): Place {
  const link = install[key];
  return (link && "path" in link ? link.path.place : keyPlace(install, key)) ?? install.place;
}

/**
 * Where a finding of the install record goes that is about a place in the airframe record: there, if the
 * airframe is written inline, and else to the link, with the place beside it.
 */
export function placeInAirframe(
  project: Project,
  place: Place,
  words: string,
): { readonly place: Place; readonly related: readonly Related[] } {
  if (place.file === project.file.file) return { place, related: [] };
  return { place: linkPlace(project, "airframe"), related: [{ place, words }] };
}
