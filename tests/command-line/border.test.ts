/** Nothing outside the workspace is read, whatever a record names and wherever a link leads. */
import { mkdirSync, symlinkSync } from "node:fs";
import { pathToFileURL } from "node:url";
import { describe, expect, it } from "vitest";
import { tailconeHere } from "../support/command-here";
import { findingsOf, type Report, report, tailcone } from "../support/command-line";
import { demo, demoRecords, demoWorkspace, replaceOnce, type Workspace } from "../support/workspace";

/** Stands in nothing but the file outside: its ids, its values, its comments and its faults. */
const secret = "QZX-7731";

const secretKit = [
  `# ${secret}`,
  `kit: { number: ${secret}, revision: C, colour: ${secret} }`,
  `components: [{ id: ${secret}, weight: ${secret}, draws: [{ mode: ${secret}, current: 6 A }] }]`,
  `devices: [{ id: ${secret}-B, kind: ${secret}, rating: 15 A }]`,
  "",
].join("\n");

/** The demo with a kit outside it, and a record that names what `written` says as its kit. */
function workspaceNaming(written: string, prepare: (workspace: Workspace) => void = () => {}): Workspace {
  const text = replaceOnce(demoRecords()[demo.clean]!, demo.kit, JSON.stringify(written));
  const workspace = demoWorkspace({ [demo.clean]: text });
  workspace.write("../outside/secret.kit.yaml", secretKit);
  prepare(workspace);
  return workspace;
}

/** Rules of the findings, after a look at everything that is printed: nothing of the secret is in it. */
async function rulesFound(workspace: Workspace): Promise<string[]> {
  const outcomes = [await tailcone(["check", "--report", "json", demo.clean], workspace.folder)];
  for (const args of [["check"], ["worksheet", "--report", "json"], ["worksheet"]]) {
    outcomes.push(await tailconeHere([...args, demo.clean], workspace.folder));
  }
  expect(outcomes.map(({ code }) => code)).toEqual([1, 1, 0, 0]);
  for (const { stdout, stderr } of outcomes) expect(stdout + stderr).not.toContain(secret);
  return findingsOf(JSON.parse(outcomes[0]!.stdout) as Report).map(({ rule }) => rule);
}

const linkTo = (from: string, to: string) => (workspace: Workspace) => {
  mkdirSync(workspace.path("parts"), { recursive: true });
  symlinkSync(workspace.path(to), workspace.path(from));
};

describe("a record outside the workspace", () => {
  it.each([
    { how: "by a path that leads up", name: "../outside/secret.kit.yaml" },
    { how: "by a path that goes in and out", name: "parts/../../outside/secret.kit.yaml" },
    { how: "by a path with dots and slashes in between", name: ".//.././/outside/./secret.kit.yaml" },
    {
      how: "by a link to the file",
      name: "parts/linked.kit.yaml",
      prepare: linkTo("parts/linked.kit.yaml", "../outside/secret.kit.yaml"),
    },
    {
      how: "by a link to its folder",
      name: "parts/out/secret.kit.yaml",
      prepare: linkTo("parts/out", "../outside"),
    },
    {
      how: "by a link to the folder around",
      name: "parts/up/outside/secret.kit.yaml",
      prepare: linkTo("parts/up", ".."),
    },
  ])("$how", async ({ name, prepare }) => {
    expect(await rulesFound(workspaceNaming(name, prepare))).toContain("record-outside-workspace");
  });

  // The path of a file that is there: only then is it the border that keeps it out.
  const there = workspaceNaming("x.kit.yaml").path("../outside/secret.kit.yaml");

  it.each([
    { how: "by its absolute path", name: there },
    { how: "by its URL", name: pathToFileURL(there).href },
    { how: "by its URL in capitals", name: pathToFileURL(there).href.replace("file:", "FILE:") },
    { how: "by a URL of the web", name: "https://records.invalid/secret.kit.yaml" },
  ])("$how", async ({ name }) => {
    expect(await rulesFound(workspaceNaming(name))).toContain("record-outside-workspace");
  });

  it.each([
    { what: "a path of another system", name: "..\\outside\\secret.kit.yaml" },
    { what: "an escaped path", name: "%2e%2e/outside/secret.kit.yaml" },
    { what: "a home folder", name: "~/secret.kit.yaml" },
    { what: "a variable", name: "$HOME/secret.kit.yaml" },
    { what: "a path cut by a NUL", name: `${demo.kit}\0../outside/secret.kit.yaml` },
  ])("is not reached by $what", async ({ name }) => {
    expect(await rulesFound(workspaceNaming(name))).not.toEqual([]);
  });

  it("is not found by searching a folder through a link", async () => {
    const workspace = demoWorkspace();
    workspace.write("../outside/secret.kit.yaml", secretKit);
    symlinkSync(workspace.path("../outside"), workspace.path("linked"));
    symlinkSync(workspace.path("../outside/secret.kit.yaml"), workspace.path("linked.kit.yaml"));
    const { stdout } = await tailcone(["check", "."], workspace.folder);
    expect(stdout).not.toContain(secret);
  });
});

describe("inside the workspace", () => {
  it("a link may lead to another file of it", async () => {
    const workspace = workspaceNaming("parts/linked.kit.yaml", linkTo("parts/linked.kit.yaml", demo.kit));
    expect((await report([demo.clean], workspace.folder)).code).toBe(0);
  });

  it("a workspace that is itself reached by a link is the same workspace", async () => {
    const workspace = demoWorkspace();
    symlinkSync(workspace.folder, workspace.path("../alias"));
    expect((await report([demo.clean], workspace.path("../alias"))).code).toBe(0);
    expect((await report([`../alias/${demo.clean}`], workspace.folder)).code).toBe(0);
  });

  it("a repository is one workspace, wherever in it the tool is called", async () => {
    const records = demoRecords();
    const text = replaceOnce(records[demo.clean]!, demo.kit, `../shared/${demo.kit}`);
    const workspace = demoWorkspace({
      [`fleet/${demo.clean}`]: text,
      [`fleet/${demo.airframe}`]: records[demo.airframe]!,
      [`shared/${demo.kit}`]: records[demo.kit]!,
    });
    const outside = findingsOf(await report([demo.clean], workspace.path("fleet")));
    expect(outside.map(({ rule }) => rule)).toContain("record-outside-workspace");
    mkdirSync(workspace.path(".git"));
    expect((await report([demo.clean], workspace.path("fleet"))).code).toBe(0);
  });
});

it("a folder in the place of a record is no record", async () => {
  const workspace = demoWorkspace();
  mkdirSync(workspace.path("folder.kit.yaml"));
  workspace.write(demo.clean, replaceOnce(workspace.read(demo.clean), demo.kit, "folder.kit.yaml"));
  const { code, files } = await report([demo.clean], workspace.folder);
  expect(code).toBe(1);
  expect(files[0]!.findings.map(({ rule }) => rule)).toContain("record-missing");
});

it("a record that names itself ends", async () => {
  const workspace = demoWorkspace();
  workspace.write(demo.clean, replaceOnce(workspace.read(demo.clean), demo.kit, `./${demo.clean}`));
  const found = findingsOf(await report([demo.clean], workspace.folder));
  expect(found.map(({ rule }) => rule)).toContain("record-circular");
});
