import { statSync } from "node:fs";
import { resolve } from "node:path";
import { recordKindOf } from "../core/records/schema";
import { recordsIn } from "../files/find-records";

const isRecord = (name: string) => recordKindOf(name) !== undefined;

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
    if (isFolder) for (const file of recordsIn(absolute, isRecord)) files.add(file);
    else if (recordKindOf(absolute)) files.add(absolute);
    else
      return {
        mistake: `'${path}' is no record: its name must end in .airframe.yaml, .kit.yaml or .install.yaml`,
      };
  }
  if (files.size === 0) return { mistake: `no records in ${paths.map((path) => `'${path}'`).join(", ")}` };
  return { files: [...files] };
}
