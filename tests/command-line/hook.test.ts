/** The hook as it is published, run by a commit: by pre-commit where it is installed, and as git's own hook. */
import { spawnSync } from "node:child_process";
import { chmodSync, readFileSync } from "node:fs";
import { beforeAll, describe, expect, it } from "vitest";
import { parse } from "yaml";
import { run } from "../support/command-line";
import { GitRepository } from "../support/git";
import { environment, programs, root } from "../support/programs";
import { demo, demoRecords, replaceOnce, Workspace } from "../support/workspace";

const [hook] = parse(readFileSync(`${root}.pre-commit-hooks.yaml`, "utf8"));
const records = demoRecords();
const thin = replaceOnce(
  records[demo.clean]!,
  "gauge: 8 AWG\n    length: 14.5 ft",
  "gauge: 12 AWG\n    length: 14.5 ft",
);
const hasPreCommit = spawnSync("pre-commit", ["--version"], { env: environment }).status === 0;
const patience = 300_000;

/** `tailcone`, on the path of whoever commits. */
let shelf: Workspace;

beforeAll(() => {
  shelf = new Workspace({
    tailcone: `#!/bin/sh\nexec '${process.execPath}' '${programs.commandLine}' "$@"\n`,
  });
  chmodSync(shelf.path("tailcone"), 0o755);
});

/** A repository of sound records, committed before it had a hook. */
function repository(): Workspace {
  const { [demo.airframe]: airframe, [demo.kit]: kit, [demo.clean]: install } = records;
  const workspace = new Workspace({ [demo.airframe]: airframe!, [demo.kit]: kit!, [demo.clean]: install! });
  new GitRepository(workspace).commit("Base");
  return workspace;
}

function inFolder({ folder }: Workspace, ...command: readonly string[]) {
  const variables = {
    PATH: `${shelf.folder}:${environment.PATH}`,
    PRE_COMMIT_HOME: shelf.path("pre-commit-home"),
    GIT_CONFIG_GLOBAL: "/dev/null",
    GIT_AUTHOR_NAME: "Test",
    GIT_AUTHOR_EMAIL: "test@example.invalid",
    GIT_COMMITTER_NAME: "Test",
    GIT_COMMITTER_EMAIL: "test@example.invalid",
  };
  return run(
    "env",
    [...Object.entries(variables).map(([name, value]) => `${name}=${value}`), ...command],
    folder,
  );
}

async function commit(workspace: Workspace) {
  const { code, stdout, stderr } = await inFolder(workspace, "git", "commit", "--all", "--message=Change");
  return { code, told: stdout + stderr };
}

const ways = [
  {
    way: "git's own hook",
    isThere: true,
    install: async (workspace: Workspace) => {
      workspace.write(".git/hooks/pre-commit", `#!/bin/sh\nexec ${hook.entry}\n`);
      chmodSync(workspace.path(".git/hooks/pre-commit"), 0o755);
    },
  },
  {
    way: "pre-commit",
    isThere: hasPreCommit,
    // As it is published, but for the place that the program comes from: nothing is installed here.
    install: async (workspace: Workspace) => {
      const local = { repo: "local", hooks: [{ ...hook, language: "system" }] };
      workspace.write(".pre-commit-config.yaml", JSON.stringify({ repos: [local] }));
      const checks = [
        await inFolder(workspace, "git", "add", "."),
        await inFolder(workspace, "pre-commit", "install"),
      ];
      expect(checks.map(({ code }) => code)).toEqual([0, 0]);
    },
  },
] as const;

describe.each(ways)("$way", ({ isThere, install }) => {
  it.skipIf(!isThere)(
    "lets a sound record pass, and refuses a faulty one",
    async () => {
      const workspace = repository();
      await install(workspace);
      workspace.write(demo.clean, replaceOnce(records[demo.clean]!, "revision: B", "revision: C"));
      expect((await commit(workspace)).code).toBe(0);
      workspace.write(demo.clean, thin);
      const refused = await commit(workspace);
      expect(refused.code).toBe(1);
      expect(refused.told).toContain("wire-over-ampacity");
      const { stdout } = await inFolder(workspace, "git", "log", "--format=%s");
      expect(stdout).toBe("Change\nBase\n");
    },
    patience,
  );

  it.skipIf(!isThere)(
    "refuses a kit that breaks an install which the commit does not hold",
    async () => {
      const workspace = repository();
      await install(workspace);
      workspace.write(demo.kit, replaceOnce(records[demo.kit]!, "power: 1100 W", "power: 2600 W"));
      const refused = await commit(workspace);
      expect(refused.code).toBe(1);
      expect(refused.told).toContain(demo.clean);
    },
    patience,
  );
});

it("installs from the repository: npm names the tarball and prints nothing else, scripts or not", async () => {
  const workspace = new Workspace({
    "package.json": JSON.stringify({
      name: "packed",
      version: "0.0.1",
      scripts: { prepack: "echo building" },
    }),
    ".npmrc": readFileSync(`${root}.npmrc`, "utf8"),
  });
  const { stdout } = await run("npm", ["pack", `--cache=${workspace.path("../cache")}`], workspace.folder);
  expect(stdout).toBe("packed-0.0.1.tgz\n");
});
