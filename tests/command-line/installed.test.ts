/** The program where users have it: called from elsewhere, through a link, installed from the package. */
import { spawn } from "node:child_process";
import { copyFileSync, mkdirSync, readdirSync, readFileSync, symlinkSync } from "node:fs";
import { dirname, join } from "node:path";
import { Script } from "node:vm";
import { beforeAll, describe, expect, it } from "vitest";
import { run, tailcone, tailconeOnDemo } from "../support/command-line";
import { environment, programs, root } from "../support/programs";
import { demo, demoRecords, demoWorkspace, Workspace } from "../support/workspace";

const npm = (args: readonly string[], cwd: string, cache: string) =>
  run("npm", [...args, "--offline", "--no-audit", "--no-fund", "--loglevel=error", `--cache=${cache}`], cwd);

const parts = ["tailcone.js", "checker.js", "checker.cache"] as const;

function besideProgram(name: string): string {
  return join(dirname(programs.commandLine), name);
}

describe("the code that was compiled beforehand", () => {
  const compiled = readFileSync(besideProgram("checker.cache"));

  it("is taken by the Node that made it", () => {
    const source = readFileSync(besideProgram("checker.js"), "utf8");
    expect(new Script(source, { cachedData: compiled }).cachedDataRejected).toBe(false);
  });

  // V8 begins it with its own mark and the hash of its version.
  const ofAnotherVersion = Buffer.from(compiled);
  ofAnotherVersion.writeUInt32LE(~compiled.readUInt32LE(4) >>> 0, 4);

  it.each([
    ["of another version of Node", ofAnotherVersion],
    ["that is cut off", compiled.subarray(0, compiled.length >> 1)],
    ["that is empty", Buffer.alloc(0)],
    ["that is something else", Buffer.from("checker")],
    ["that is not there", undefined],
  ])("%s is no hindrance", async (_, cache) => {
    const workspace = demoWorkspace();
    mkdirSync(workspace.path("../lib"));
    for (const name of parts.slice(0, 2)) copyFileSync(besideProgram(name), workspace.path(`../lib/${name}`));
    if (cache) workspace.write("../lib/checker.cache", cache);
    const program = workspace.path("../lib/tailcone.js");
    const args = ["check", "--brief", demo.faulty];
    const answer = await run(process.execPath, [program, ...args], workspace.folder);
    expect(answer).toEqual(await tailconeOnDemo(...args));
    expect(answer.code).toBe(1);
  });
});

describe("called from elsewhere", () => {
  it("checks what lies in another folder", async () => {
    const workspace = demoWorkspace();
    const elsewhere = new Workspace();
    for (const [record, code] of [
      [demo.clean, 0],
      [demo.faulty, 1],
    ] as const) {
      const args = ["check", "--brief", workspace.path(record)];
      expect((await tailcone(args, elsewhere.folder)).code).toBe(code);
    }
    expect((await tailcone(["worksheet", workspace.path(demo.clean)], elsewhere.folder)).code).toBe(0);
  });

  it("works through a link, without its sources or its packages around it", async () => {
    const workspace = demoWorkspace();
    mkdirSync(workspace.path("../lib"));
    mkdirSync(workspace.path("../bin"));
    for (const name of parts) copyFileSync(besideProgram(name), workspace.path(`../lib/${name}`));
    symlinkSync("../lib/tailcone.js", workspace.path("../bin/tailcone"));
    const { code, stdout, stderr } = await run(
      process.execPath,
      [workspace.path("../bin/tailcone"), "check", demo.clean],
      workspace.folder,
    );
    expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
    expect(stdout).toMatch(/^1 record checked/);
  });
});

it("a reader that stops early is no fault", async () => {
  const workspace = demoWorkspace();
  const child = spawn(process.execPath, [programs.commandLine, "check", "--brief", "."], {
    cwd: workspace.folder,
    env: environment,
    stdio: ["ignore", "pipe", "pipe"],
  });
  child.stdout.destroy();
  let stderr = "";
  child.stderr.on("data", (chunk: Buffer) => {
    stderr += chunk.toString();
  });
  const code = await new Promise((resolve) => child.on("close", resolve));
  expect({ code, stderr }).toEqual({ code: 1, stderr: "" });
});

describe("the package", () => {
  const shelf = new Workspace();
  const app = new Workspace({
    "package.json": JSON.stringify({ name: "shop-records", private: true }),
    ...demoRecords(),
  });

  beforeAll(async () => {
    // The build has been made; making it again here would pull it away from the other tests.
    const packed = await npm(
      ["pack", root, "--ignore-scripts", `--pack-destination=${shelf.folder}`],
      shelf.folder,
      shelf.path("cache"),
    );
    expect(packed).toMatchObject({ code: 0 });
    const tarball = readdirSync(shelf.folder).find((name) => name.endsWith(".tgz"))!;
    const installed = await npm(["install", shelf.path(tarball)], app.folder, shelf.path("cache"));
    expect(installed).toMatchObject({ code: 0 });
  });

  it("holds what is needed to run, and nothing else", () => {
    const installed = app.path("node_modules/tailcone");
    const files = readdirSync(installed, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name).slice(installed.length + 1));
    expect(files.sort()).toEqual([
      "LICENSE",
      "README.md",
      "dist/checker.cache",
      "dist/checker.js",
      "dist/server.js",
      "dist/tailcone.js",
      "package.json",
      "schemas/airframe.schema.json",
      "schemas/common.schema.json",
      "schemas/install.schema.json",
      "schemas/kit.schema.json",
      "server/docs/quantities.md",
      "server/docs/reviewing.md",
      "server/docs/rules.md",
    ]);
    const readme = readFileSync(join(installed, "README.md"), "utf8");
    const links = [...readme.matchAll(/\]\(([^)#]+)\)/g)].map(([, path]) => path);
    expect(links.filter((path) => !files.includes(path!))).toEqual([]);
    const { dependencies = {} } = JSON.parse(readFileSync(join(installed, "package.json"), "utf8")) as {
      dependencies?: object;
    };
    expect(dependencies).toEqual({});
  });

  it("checks the demo by its own command", async () => {
    const command = app.path("node_modules/.bin/tailcone");
    const clean = await run(command, ["check", demo.clean], app.folder);
    expect({ code: clean.code, stderr: clean.stderr }).toEqual({ code: 0, stderr: "" });
    const faulty = await run(command, ["check", "--brief", demo.faulty], app.folder);
    expect(faulty).toEqual(await tailconeOnDemo("check", "--brief", demo.faulty));
    expect(faulty.code).toBe(1);
    expect((await run(command, ["worksheet", demo.clean], app.folder)).code).toBe(0);
    expect((await run(command, ["explain", "wire-voltage-drop"], app.folder)).code).toBe(0);
  });

  it("checks the demo as node dist/tailcone.js", async () => {
    const program = app.path("node_modules/tailcone/dist/tailcone.js");
    const { code } = await run(process.execPath, [program, "check", "--brief", "."], app.folder);
    expect(code).toBe(1);
  });
});
