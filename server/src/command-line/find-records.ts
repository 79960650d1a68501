import { readdirSync, statSync } from "node:fs";
import { join, resolve } from "node:path";
import { recordKindOf } from "../core/records/schema";

/** Folders that hold no records of one's own. */
const skipped = new Set(["node_modules", "dist"]);

/** Absolute paths of the records that the arguments name, in order, each once; or what is wrong with them. */
export function findRecords(
  paths: readonly string[],
  workingFolder: string,
): { readonly files: readonly string[] } | { readonly mistake: string } {
  const files = new Set<string>();
  for (const path of paths) {
    if (path === "") return { mistake: "an empty path names nothing" };
    const absolute = resolve(workingFolder, path);
    let isFolder: boolean;
    try {
      isFolder = statSync(absolute).isDirectory();
    } catch {
      return { mistake: `there is no file or folder '${path}'` };
    }
    if (isFolder) for (const file of recordsIn(absolute)) files.add(file);
    else if (recordKindOf(absolute)) files.add(absolute);
    else
      return {
        mistake: `'${path}' is no record: its name must end in .airframe.yaml, .kit.yaml or .install.yaml`,
      };
  }
  if (files.size === 0) return { mistake: `no records in ${paths.map((path) => `'${path}'`).join(", ")}` };
  return { files: [...files] };
}

function* recordsIn(folder: string): Iterable<string> {
  const entries = readdirSync(folder, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1));
  for (const entry of entries) {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) {
      if (!skipped.has(entry.name) && !entry.name.startsWith(".")) yield* recordsIn(path);
    } else if (entry.isFile() && recordKindOf(entry.name)) {
      yield path;
    }
  }
}
