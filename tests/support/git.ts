/** Git repositories for tests, with nothing of the machine's own settings in them. */
import { execFileSync } from "node:child_process";
import { environment } from "./programs";
import type { Workspace } from "./workspace";

const settings = {
  ...environment,
  GIT_CONFIG_GLOBAL: "/dev/null",
  GIT_CONFIG_SYSTEM: "/dev/null",
  GIT_AUTHOR_NAME: "Test",
  GIT_AUTHOR_EMAIL: "test@example.invalid",
  GIT_COMMITTER_NAME: "Test",
  GIT_COMMITTER_EMAIL: "test@example.invalid",
};

export class GitRepository {
  constructor(readonly workspace: Workspace) {
    this.git("init", "--quiet", "--initial-branch=main");
  }

  /** Commits everything that is there now; gives the commit's name. */
  commit(message: string): string {
    this.git("add", "--all");
    this.git("commit", "--quiet", "--allow-empty", `--message=${message}`);
    return this.git("rev-parse", "HEAD").trim();
  }

  git(...args: readonly string[]): string {
    return execFileSync("git", args, { cwd: this.workspace.folder, env: settings, encoding: "utf8" });
  }
}
