import { relative, sep } from "node:path";
import { RecordShelf, type TextSource } from "../core/shelf";
import { isInside, readText, resolveByName, resolveInside, workspaceRootOf } from "../files/workspace-files";
import type { Repository, Revision } from "./git";

/** Records that are held at once besides the one in hand: airframes and kits, which many others name. */
const heldRecords = 32;

/** A shelf of records that reads each text once, and lets go of those that were not used for long. */
export class OpenRecords implements TextSource {
  readonly shelf: RecordShelf;
  /** In the order of their last use. */
  private readonly texts = new Map<string, string | undefined>();

  private constructor(
    readonly resolve: TextSource["resolve"],
    private readonly read: (file: string) => string | undefined,
  ) {
    this.shelf = new RecordShelf(this);
  }

  /** Records on disk, their links kept inside the workspace of the record that names them. */
  static onDisk(workingFolder: string): OpenRecords {
    return new OpenRecords(
      (from, path) => resolveInside(workspaceRootOf(from, workingFolder), from, path),
      readText,
    );
  }

  /** Records of a revision, under the paths that they have in the work tree. */
  static ofRevision(repository: Pick<Repository, "root" | "text">, { objects }: Revision): OpenRecords {
    return new OpenRecords(
      (from, path) => resolveByName(repository.root, from, path),
      (file) => {
        const object = objects.get(file);
        return object === undefined ? undefined : repository.text(object);
      },
    );
  }

  text(file: string): string | undefined {
    const text = this.texts.has(file) ? this.texts.get(file) : this.read(file);
    this.texts.delete(file);
    this.texts.set(file, text);
    return text;
  }

  /** Lets go of a record that is done with, and of what was not used for long. */
  release(file: string): void {
    this.drop(file);
    for (const oldest of this.texts.keys()) {
      if (this.texts.size <= heldRecords) break;
      this.drop(oldest);
    }
  }

  private drop(file: string): void {
    this.texts.delete(file);
    this.shelf.forget(file);
  }
}

/** The path as people name it: relative to the working folder where it lies inside, with forward slashes. */
export function displayPath(workingFolder: string): (file: string) => string {
  return (file) => {
    const way = relative(workingFolder, file);
    return (way.startsWith("..") ? file : way).split(sep).join("/");
  };
}

/** The path as a forge names it: relative to the repository around it, with forward slashes. */
export function repositoryPath(workingFolder: string): (file: string) => string {
  return (file) => {
    const root = workspaceRootOf(file, workingFolder);
    return isInside(root, file)
      ? relative(root, file).split(sep).join("/")
      : displayPath(workingFolder)(file);
  };
}
