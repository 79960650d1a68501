import { Repository } from "./git";
import { OpenRecords } from "./records-on-disk";

/**
 * Of the records found, those that differ from a revision, and those that name one that does: a changed kit
 * re-checks its installations. @throws {Mistake} where there is no such revision
 */
export function reachedSince(
  revision: string,
  files: readonly string[],
  workingFolder: string,
): readonly string[] {
  const changed = Repository.around(workingFolder).changedSince(revision);
  const records = OpenRecords.onDisk(workingFolder);
  return files.filter((file) => {
    if (changed.has(file)) return true;
    const typed = records.shelf.load(file)?.typing.typed;
    records.release(file);
    if (typed?.kind !== "install") return false;
    return [typed.record.airframe, typed.record.kit].some((link) => {
      const named = link && "path" in link ? records.resolve(file, link.path.value) : undefined;
      return named !== undefined && changed.has(named);
    });
  });
}
