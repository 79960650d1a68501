/** The workflows that the page on reviewing has: each command of theirs, run in a clone of a repository of records. */
import { chmodSync, readFileSync } from "node:fs";
import { beforeAll, expect, it } from "vitest";
import { parse } from "yaml";
import { run } from "../support/command-line";
import { GitRepository } from "../support/git";
import { environment, programs, root } from "../support/programs";
import { demo, demoRecords, replaceOnce, Workspace } from "../support/workspace";

const page = readFileSync(`${root}server/docs/reviewing.md`, "utf8");
const blocks = [...page.matchAll(/```yaml\n# (\S+)\n(.*?)```/gs)].map(([, name, text]) => ({
  name: name!,
  parsed: parse(text!),
}));
const workflow = (name: string) => blocks.find((block) => block.name === name)!.parsed;

let workspace: Workspace;
let base: string;
let shelf: Workspace;

beforeAll(() => {
  const records = demoRecords();
  workspace = new Workspace({
    [demo.airframe]: records[demo.airframe]!,
    [demo.kit]: records[demo.kit]!,
    [demo.clean]: records[demo.clean]!,
    "old.install.yaml": records[demo.faulty]!,
  });
  const repository = new GitRepository(workspace);
  base = repository.commit("Base");
  repository.git("update-ref", "refs/remotes/origin/main", base);
  workspace.write(
    demo.clean,
    replaceOnce(
      records[demo.clean]!,
      "gauge: 8 AWG\n    length: 14.5 ft",
      "gauge: 12 AWG\n    length: 14.5 ft",
    ),
  );
  repository.commit("Head");
  // What `npx --no-install tailcone` finds where it is installed.
  shelf = new Workspace({
    npx: `#!/bin/sh\nshift 2\nexec '${process.execPath}' '${programs.commandLine}' "$@"\n`,
  });
  chmodSync(shelf.path("npx"), 0o755);
});

function shell(command: string, variables: Readonly<Record<string, string>>) {
  const set = Object.entries({ ...variables, PATH: `${shelf.folder}:${environment.PATH}` });
  const args = [...set.map(([name, value]) => `${name}=${value}`), "sh", "-c", command];
  return run("env", args, workspace.folder);
}

it("GitHub's: the old faults pass, the new one is annotated and fails, the summary shows what it does", async () => {
  const steps: { run?: string }[] = workflow(".github/workflows/records.yaml").jobs.tailcone.steps;
  const [install, check, compare, ...more] = steps.flatMap((step) => step.run ?? []);
  expect([install, more]).toEqual(["npm ci", []]);
  const variables = { GITHUB_BASE_REF: "main", GITHUB_STEP_SUMMARY: workspace.path("summary.md") };
  const checked = await shell(check!, variables);
  expect(checked.code).toBe(1);
  const errors = checked.stdout.split("\n").filter((line) => line.startsWith("::error"));
  expect(errors.length).toBeGreaterThan(0);
  for (const line of errors) expect(line).toContain(`file=${demo.clean}`);
  expect(JSON.parse(workspace.read("tailcone.sarif")).version).toBe("2.1.0");
  expect(await shell(compare!, variables)).toMatchObject({ code: 0, stderr: "" });
  expect(workspace.read("summary.md")).toContain("| `wires[P102A8].gauge` | `8 AWG` | `12 AWG` |");
}, 600_000);

it("GitLab's: the same, with its own reports", async () => {
  const { script, artifacts } = workflow(".gitlab-ci.yml").tailcone;
  const [install, check, compare, ...more] = script as string[];
  expect([install, more]).toEqual(["npm ci", []]);
  const variables = { CI_MERGE_REQUEST_DIFF_BASE_SHA: base };
  const checked = await shell(check!, variables);
  expect(checked.code).toBe(1);
  expect(checked.stdout).toMatch(/known before, not shown/);
  for (const report of Object.values(artifacts.reports) as string[]) {
    expect(workspace.read(report)).toContain("wire-voltage-drop");
  }
  expect(await shell(compare!, variables)).toMatchObject({ code: 0, stderr: "" });
  for (const path of artifacts.paths) expect(workspace.read(path)).toContain("<!doctype html>");
}, 600_000);

it("the hook is of the name that the page has, and looks for itself what differs", () => {
  const [hook] = parse(readFileSync(`${root}.pre-commit-hooks.yaml`, "utf8"));
  expect(workflow(".pre-commit-config.yaml").repos[0].hooks).toEqual([{ id: hook.id }]);
  expect(hook).toMatchObject({ language: "node", pass_filenames: false, require_serial: true });
  expect(hook.entry).toBe("tailcone check --changed-since HEAD");
});
