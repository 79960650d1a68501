import { statSync } from "node:fs";
import { dirname } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import type { TextDocument } from "vscode-languageserver-textdocument";
import { limits } from "../core/limits";
import { recordKindOf } from "../core/records/schema";
import type { TextSource } from "../core/shelf";
import { recordsIn } from "../files/find-records";
import { isInside, readText, resolveInside } from "../files/workspace-files";

/**
 * The texts that the server works on: what is open in the editor, else what is on disk. A record is known by
 * its path, or by its URI where it has no path, so that two spellings of one URI are one record.
 */
export class Documents implements TextSource {
  private readonly open = new Map<string, TextDocument>();
  private readonly onDisk = new Map<string, { readonly stamp: string; readonly text: string | undefined }>();
  private folders: readonly string[] = [];
  private listed: readonly string[] | undefined;

  setFolders(uris: readonly string[]): void {
    this.folders = uris.map(idOf);
    this.listed = undefined;
  }

  opened(document: TextDocument): string {
    const id = idOf(document.uri);
    this.open.set(id, document);
    return id;
  }

  closed(document: TextDocument): string {
    const id = idOf(document.uri);
    this.open.delete(id);
    return id;
  }

  get(id: string): TextDocument | undefined {
    return this.open.get(id);
  }

  openIds(): string[] {
    return [...this.open.keys()];
  }

  /** Records of the workspace's folders, open or not, and all that are open; up to a limit. */
  records(): readonly string[] {
    this.listed ??= this.folders
      .filter((folder) => !isUri(folder))
      .flatMap((folder) => [...recordsIn(folder, (name) => recordKindOf(name) !== undefined, true)])
      .slice(0, limits.workspaceRecords);
    return [...new Set([...this.open.keys(), ...this.listed])];
  }

  /** Files came or went: the workspace is looked through again when somebody asks. */
  filesChanged(): void {
    this.listed = undefined;
  }

  uriOf(id: string): string {
    return this.open.get(id)?.uri ?? (isUri(id) ? id : pathToFileURL(id).href);
  }

  resolve(from: string, path: string): string | undefined {
    if (isUri(from)) return undefined;
    const root = this.folders.find((folder) => !isUri(folder) && isInside(folder, from)) ?? dirname(from);
    return resolveInside(root, from, path);
  }

  text(id: string): string | undefined {
    return this.open.get(id)?.getText() ?? (isUri(id) ? undefined : this.diskText(id));
  }

  /** Read again only when the file is another one: its time or its size has changed. */
  private diskText(path: string): string | undefined {
    let stamp = "none";
    try {
      const { mtimeMs, size } = statSync(path);
      stamp = `${mtimeMs} ${size}`;
    } catch {
      // no such file: that is an answer too
    }
    const known = this.onDisk.get(path);
    if (known?.stamp === stamp) return known.text;
    const text = stamp === "none" ? undefined : readText(path);
    this.onDisk.set(path, { stamp, text });
    return text;
  }
}

/** Path of a file URI, or the URI itself. */
export function idOf(uri: string): string {
  try {
    return uri.startsWith("file:") ? fileURLToPath(uri) : uri;
  } catch {
    return uri;
  }
}

function isUri(id: string): boolean {
  return /^[a-z][a-z0-9+.-]+:/i.test(id);
}
