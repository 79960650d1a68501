/**
 * The records on disk, for the command line and for the language server: paths, the workspace's border, and
 * reading. Nothing outside the border is ever read, whatever a record names and wherever a link leads.
 */
import { closeSync, existsSync, fstatSync, openSync, readFileSync, realpathSync } from "node:fs";
import { dirname, isAbsolute, join, relative, resolve, sep } from "node:path";
import { limits } from "../core/limits";

/** Absolute path of the file that `written`, in the file `from`, names; undefined where that leaves `root`. */
export function resolveInside(root: string, from: string, written: string): string | undefined {
  const path = resolveByName(root, from, written);
  return path !== undefined && isInside(realPath(root), realPath(path)) ? path : undefined;
}

/** The same by names alone, for files that are not on disk. */
export function resolveByName(root: string, from: string, written: string): string | undefined {
  if (isAbsolute(written) || /^[a-z][a-z0-9+.-]*:/i.test(written) || written.includes("\0")) return undefined;
  const path = resolve(dirname(from), ...written.split("/"));
  return isInside(root, path) ? path : undefined;
}

/** Text of a file, or undefined when there is none that can be read as one. */
export function readText(path: string): string | undefined {
  // No editor counts the byte order mark.
  return withFile(path, (file) => readFileSync(file, "utf8").replace(/^\uFEFF/, ""));
}

/** Whether `readText` would give a text. */
export function isReadable(path: string): boolean {
  return withFile(path, () => true) ?? false;
}

function withFile<T>(path: string, use: (file: number) => T): T | undefined {
  let file: number | undefined;
  try {
    file = openSync(path, "r");
    const stat = fstatSync(file);
    // Four bytes hold any character: a larger file is above the limit of text for certain.
    return stat.isFile() && stat.size <= 4 * limits.recordLength ? use(file) : undefined;
  } catch {
    return undefined;
  } finally {
    if (file !== undefined) closeSync(file);
  }
}

/** The folder that a record's links may not leave: the repository around it, or else the working folder. */
export function workspaceRootOf(file: string, workingFolder: string): string {
  for (let folder = dirname(file); ; folder = dirname(folder)) {
    if (existsSync(join(folder, ".git"))) return folder;
    if (folder === dirname(folder)) break;
  }
  return isInside(workingFolder, file) ? workingFolder : dirname(file);
}

export function isInside(root: string, path: string): boolean {
  const way = relative(root, path);
  return way === "" || (way !== ".." && !way.startsWith(`..${sep}`) && !isAbsolute(way));
}

/** The path with links followed, as far as it exists. */
function realPath(path: string): string {
  try {
    return realpathSync(path);
  } catch {
    const parent = dirname(path);
    return parent === path ? path : join(realPath(parent), relative(parent, path));
  }
}
