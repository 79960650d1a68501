/**
 * The records of a revision, read from git's own store: no checkout, no shell, and nothing of the repository is
 * executed. What a user writes reaches git only as a revision behind `--end-of-options`; from there on only
 * object names are used.
 */
import { join, relative, sep } from "node:path";
import { limits } from "../core/limits";
import { recordKindOf } from "../core/records/schema";
import { isInside } from "../files/workspace-files";
import { Mistake } from "./arguments";
import { childProcess } from "./builtins";

export interface Revision {
  /** Full name of the commit. */
  readonly commit: string;
  /** As the user wrote it, with the short name of the commit. */
  readonly title: string;
  /** Absolute paths that the revision's records have in the work tree, with the names of their texts. */
  readonly objects: ReadonlyMap<string, string>;
}

export class Repository {
  private constructor(
    /** Absolute path of the work tree. */
    readonly root: string,
  ) {}

  /** The repository around a folder. @throws {Mistake} where there is none */
  static around(folder: string): Repository {
    const found = git(folder, ["rev-parse", "--show-toplevel"]);
    if (found === undefined)
      throw new Mistake(`'${folder}' is in no git repository, or git is not installed`);
    return new Repository(
      found
        .toString("utf8")
        .replace(/\r?\n$/, "")
        .split("/")
        .join(sep),
    );
  }

  /** @throws {Mistake} where there is no such commit */
  revision(written: string): Revision {
    const commit = this.commitOf(written);
    const listed = this.demand(["ls-tree", "-r", "-z", "--full-tree", commit], written);
    const objects = new Map<string, string>();
    for (const line of listed.toString("utf8").split("\0")) {
      const [, mode, name, path] = /^(\d+) blob ([0-9a-f]+)\t(.+)$/s.exec(line) ?? [];
      // A link is no record: what it names may lie outside the repository.
      if (path && mode?.startsWith("100") && recordKindOf(path)) objects.set(this.absolute(path), name!);
    }
    return { commit, title: titleOf(written, commit), objects };
  }

  /** Where two revisions parted. @throws {Mistake} */
  mergeBase(a: string, b: string): string {
    const found = git(this.root, ["merge-base", this.commitOf(a), this.commitOf(b)]);
    if (found === undefined) throw new Mistake(`'${a}' and '${b}' have no common revision`);
    return found.toString("utf8").trim();
  }

  /** Text of a record, or undefined where it is too large to be one. */
  text(object: string): string | undefined {
    const bytes = git(this.root, ["cat-file", "blob", object]);
    if (bytes === undefined || bytes.length > 4 * limits.recordLength) return undefined;
    return bytes.toString("utf8").replace(/^\uFEFF/, "");
  }

  /** Absolute paths of all files that differ between a revision and the work tree, new ones too. */
  changedSince(written: string): Set<string> {
    const commit = this.commitOf(written);
    const changed = this.demand(
      ["diff", "--no-ext-diff", "--name-only", "--no-renames", "-z", commit, "--"],
      written,
    );
    const fresh = this.demand(["ls-files", "--others", "--exclude-standard", "--full-name", "-z"], written);
    const names = `${changed.toString("utf8")}\0${fresh.toString("utf8")}`.split("\0");
    return new Set(names.filter((name) => name !== "").map((name) => this.absolute(name)));
  }

  private absolute(path: string): string {
    return join(this.root, ...path.split("/"));
  }

  private commitOf(written: string): string {
    const found = git(this.root, [
      "rev-parse",
      "--verify",
      "--quiet",
      "--end-of-options",
      `${written}^{commit}`,
    ]);
    if (found === undefined || written === "") throw new Mistake(`git knows no revision '${written}'`);
    return found.toString("utf8").trim();
  }

  private demand(args: readonly string[], written: string): Buffer {
    const found = git(this.root, args);
    if (found === undefined) throw new Mistake(`git can't read revision '${written}'`);
    return found;
  }
}

/** Path of a file of the repository, as git names it. */
export function nameInRepository(root: string, file: string): string {
  return isInside(root, file) ? relative(root, file).split(sep).join("/") : file.split(sep).join("/");
}

function titleOf(written: string, commit: string): string {
  const short = commit.slice(0, 10);
  return commit.startsWith(written) ? short : `${written} (${short})`;
}

/** What git prints, or undefined where it fails. A repository's settings must not make it start programs. */
function git(folder: string, args: readonly string[]): Buffer | undefined {
  const quiet = ["-c", "core.fsmonitor=false", "-c", "core.quotePath=false", "--no-pager"];
  const { status, stdout } = childProcess().spawnSync("git", [...quiet, ...args], {
    cwd: folder,
    stdio: ["ignore", "pipe", "ignore"],
    maxBuffer: 1024 * 1024 * 1024,
    env: { ...process.env, GIT_OPTIONAL_LOCKS: "0", GIT_TERMINAL_PROMPT: "0" },
    windowsHide: true,
  });
  return status === 0 ? stdout : undefined;
}
