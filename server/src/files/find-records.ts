/** Records of a folder and of the folders in it. */
import { readdirSync } from "node:fs";
import { join } from "node:path";

/** Folders that hold no records of one's own. */
const skipped = new Set(["node_modules", "dist"]);

/** Absolute paths of the files whose names `isRecord` takes, in order. Links are not followed. A folder that can't be read throws, or with `isLenient` holds none. */
export function* recordsIn(
  folder: string,
  isRecord: (name: string) => boolean,
  isLenient = false,
): Iterable<string> {
  const entries = readFolder(folder, isLenient).sort((a, b) => (a.name < b.name ? -1 : 1));
  for (const entry of entries) {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) {
      if (!skipped.has(entry.name) && !entry.name.startsWith("."))
        yield* recordsIn(path, isRecord, isLenient);
    } else if (entry.isFile() && isRecord(entry.name)) {
      yield path;
    }
  }
}

function readFolder(folder: string, isLenient: boolean) {
  try {
    return readdirSync(folder, { withFileTypes: true });
  } catch (error) {
    if (!isLenient) throw error;
    return [];
  }
}
