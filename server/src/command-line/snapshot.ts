/** One side of a comparison: the records of a folder, of a file or of a revision, by name. */
import { dirname, relative, resolve, sep } from "node:path";
import { recordKindOf } from "../core/records/schema";
import type { RecordShelf } from "../core/shelf";
import { isInside } from "../files/workspace-files";
import { Mistake } from "./arguments";
import { findRecords, isFolder, recordsIn } from "./find-records";
import { nameInRepository, type Repository, type Revision } from "./git";
import { OpenRecords } from "./records-on-disk";

export interface Snapshot {
  readonly title: string;
  readonly shelf: RecordShelf;
  /** Files by the names under which the two sides are matched. */
  readonly files: ReadonlyMap<string, string>;
  /** Name of a file that a record of this side names. */
  nameOf(file: string): string;
}

/** A folder with all its records. @throws {Mistake} */
export function folderSnapshot(path: string, workingFolder: string): Snapshot {
  const folder = resolve(workingFolder, path);
  if (!isFolder(path, folder))
    throw new Mistake(`compare takes two files or two folders; '${path}' is a file`);
  return onDisk(path, workingFolder, [...recordsIn(folder)], namesUnder(folder));
}

/** One record; what it names is found beside it. @throws {Mistake} */
export function fileSnapshot(path: string, workingFolder: string, name: string): Snapshot {
  const file = resolve(workingFolder, path);
  if (isFolder(path, file))
    throw new Mistake(`compare takes two files or two folders; '${path}' is a folder`);
  if (!recordKindOf(file)) {
    throw new Mistake(
      `'${path}' is no record: its name must end in .airframe.yaml, .kit.yaml or .install.yaml`,
    );
  }
  const nameOf = namesUnder(dirname(file));
  return onDisk(path, workingFolder, [file], (one) => (one === file ? name : nameOf(one)));
}

/** The records of the work tree at these paths. @throws {Mistake} */
export function workTreeSnapshot(
  repository: Repository,
  paths: readonly string[],
  workingFolder: string,
): Snapshot {
  const files = paths.flatMap((path) => {
    const absolute = resolve(workingFolder, path);
    return isFolder(path, absolute) ? [...recordsIn(absolute)] : findRecords([path], workingFolder);
  });
  return onDisk("work tree", workingFolder, files, (file) => nameInRepository(repository.root, file));
}

/** The records of a revision at these paths. @throws {Mistake} */
export function revisionSnapshot(
  repository: Pick<Repository, "root" | "text">,
  revision: Revision,
  paths: readonly string[],
  workingFolder: string,
): Snapshot {
  const nameOf = (file: string) => nameInRepository(repository.root, file);
  const places = paths.map((path) => resolve(workingFolder, path));
  const files = [...revision.objects.keys()].filter((file) => places.some((place) => isInside(place, file)));
  return {
    title: revision.title,
    shelf: OpenRecords.ofRevision(repository, revision).shelf,
    files: new Map(files.map((file) => [nameOf(file), file])),
    nameOf,
  };
}

function onDisk(
  title: string,
  workingFolder: string,
  files: readonly string[],
  nameOf: (file: string) => string,
): Snapshot {
  const { shelf } = OpenRecords.onDisk(workingFolder);
  for (const file of files) if (!shelf.load(file)) throw new Mistake(`can't read '${file}'`);
  return { title, shelf, files: new Map(files.map((file) => [nameOf(file), file])), nameOf };
}

function namesUnder(folder: string): (file: string) => string {
  return (file) => relative(folder, file).split(sep).join("/");
}
