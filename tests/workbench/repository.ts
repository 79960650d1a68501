import { execFileSync } from "node:child_process";
import { cpSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

export interface DemoRepository {
  readonly workspace: string;
  remove(): void;
}

/** The demo as the one commit of a repository. */
export function demoRepository(): DemoRepository {
  const folder = mkdtempSync(join(tmpdir(), "repository-"));
  const workspace = join(folder, "demo");
  cpSync(fileURLToPath(new URL("../../client/demo", import.meta.url)), workspace, { recursive: true });
  const author = ["-c", "user.name=Demo", "-c", "user.email=demo@example.invalid"];
  for (const args of [
    ["init", "-q"],
    ["add", "."],
    [...author, "commit", "-q", "-m", "Demo"],
  ]) {
    execFileSync("git", args, { cwd: workspace });
  }
  return { workspace, remove: () => rmSync(folder, { recursive: true, force: true }) };
}
