import { relative, sep } from "node:path";
import { RecordShelf } from "../core/shelf";
import { readText, resolveInside, workspaceRootOf } from "../files/workspace-files";

/** A shelf of records read from disk, their links kept inside the workspace of the record that names them. */
export function shelfOnDisk(workingFolder: string): RecordShelf {
  const texts = new Map<string, string | undefined>();
  return new RecordShelf({
    resolve: (from, path) => resolveInside(workspaceRootOf(from, workingFolder), from, path),
    text: (file) => {
      if (!texts.has(file)) texts.set(file, readText(file));
      return texts.get(file);
    },
  });
}

/** The path as people name it: relative to the working folder where it lies inside, with forward slashes. */
export function displayPath(workingFolder: string): (file: string) => string {
  return (file) => {
    const way = relative(workingFolder, file);
    return (way.startsWith("..") ? file : way).split(sep).join("/");
  };
}
