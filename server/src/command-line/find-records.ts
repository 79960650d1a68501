import { statSync } from "node:fs";
import { resolve } from "node:path";
import { recordKindOf } from "../core/records/schema";
import * as folders from "../files/find-records";
import { isReadable } from "../files/workspace-files";
import { Mistake } from "./arguments";

const isRecord = (name: string) => recordKindOf(name) !== undefined;

/**
 * Absolute paths of the records that the arguments name, in order, each once.
 *
 * @throws {Mistake} where one of them names none, or one that can't be read: a check that is begun comes to its end
 */
export function findRecords(paths: readonly string[], workingFolder: string): readonly string[] {
  const files = new Set<string>();
  for (const path of paths) {
    const absolute = resolve(workingFolder, path);
    if (isFolder(path, absolute)) for (const file of recordsIn(absolute)) files.add(file);
    else if (recordKindOf(absolute)) files.add(absolute);
    else {
      throw new Mistake(
        `'${path}' is no record: its name must end in .airframe.yaml, .kit.yaml or .install.yaml`,
      );
    }
  }
  if (files.size === 0) throw new Mistake(`no records in ${paths.map((path) => `'${path}'`).join(", ")}`);
  for (const file of files) if (!isReadable(file)) throw new Mistake(`can't read '${file}'`);
  return [...files];
}

/** @throws {Mistake} where there is neither a file nor a folder */
export function isFolder(path: string, absolute: string): boolean {
  if (path === "") throw new Mistake("an empty path names nothing");
  try {
    return statSync(absolute).isDirectory();
  } catch {
    throw new Mistake(`there is no file or folder '${path}'`);
  }
}

/** Records of a folder and of the folders in it, in the order of their names. */
export function recordsIn(folder: string): Iterable<string> {
  return folders.recordsIn(folder, isRecord);
}
