/** 0 clean, 1 findings at or above the threshold, 2 the tool could not do its work. */
import { chmodSync, existsSync, mkdirSync, truncateSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { commands, optionsOf } from "../../server/src/command-line/arguments";
import { limits } from "../../server/src/core/limits";
import { tailconeHere } from "../support/command-here";
import { run, tailcone } from "../support/command-line";
import { programs } from "../support/programs";
import { demo, demoWorkspace, Workspace } from "../support/workspace";

describe("check", () => {
  it("gives 0 for a record without findings", async () => {
    const { code, stdout, stderr } = await tailcone(["check", demo.clean], demoWorkspace().folder);
    expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
    expect(stdout).toMatch(/^1 record checked: 0 errors, 0 warnings, 0 information\./);
  });

  it("gives 1 for a record with errors", async () => {
    const { code, stdout, stderr } = await tailcone(["check", demo.faulty], demoWorkspace().folder);
    expect({ code, stderr }).toEqual({ code: 1, stderr: "" });
    expect(stdout).toMatch(/^1 record checked: \d+ errors, \d+ warnings, \d+ information\./m);
  });

  it("checks every record of a folder and of the folders in it, and those of the working folder by default", async () => {
    const { folder } = new Workspace({ "a/fleet/x.kit.yaml": "", "a/y.airframe.yml": "", "notes.yaml": "" });
    for (const paths of [[], ["."], ["a"], ["a", "."]]) {
      const { code, stdout } = await tailcone(["check", "--brief", ...paths], folder);
      expect(code).toBe(1);
      expect(stdout).toMatch(/^2 records checked:/m);
    }
  });

  it("leaves out what is installed, built or hidden", async () => {
    const { folder } = new Workspace({
      "x.kit.yaml": "",
      "node_modules/p/y.kit.yaml": "",
      "dist/y.kit.yaml": "",
      ".old/y.kit.yaml": "",
    });
    const { stdout } = await tailcone(["check", "--brief"], folder);
    expect(stdout).toMatch(/^1 record checked:/m);
  });
});

describe("what can't be done gives 2, words on the error stream, and no report", () => {
  it.each([
    {
      what: "a file that is not there",
      args: ["check", "nowhere.install.yaml"],
      says: "nowhere.install.yaml",
    },
    { what: "one of many that is not there", args: ["check", demo.clean, "nowhere"], says: "nowhere" },
    { what: "a file that is no record", args: ["check", "notes.txt"], says: "notes.txt" },
    { what: "a YAML file that is no record", args: ["check", "notes.yaml"], says: ".install.yaml" },
    { what: "a folder without records", args: ["check", "empty"], says: "empty" },
    {
      what: "a folder named like a record",
      args: ["check", "folder.install.yaml"],
      says: "folder.install.yaml",
    },
    { what: "a text far above the limit", args: ["check", "huge.kit.yaml"], says: "huge.kit.yaml" },
    {
      what: "an option that is none",
      args: ["check", "--colour", demo.clean],
      says: "no option '--colour'\nTry 'tailcone help check'.",
    },
    { what: "a slip of an option", args: ["check", "--bref"], says: "did you mean '--brief'?" },
    { what: "an option of every object", args: ["check", "--constructor"], says: "no option" },
    { what: "a switch with a value", args: ["check", "--brief=yes"], says: "--brief takes no value" },
    { what: "an option in place of a value", args: ["check", "--only", "--brief"], says: "--only lacks" },
    {
      what: "a number of threads below one",
      args: ["check", "--jobs", "-1"],
      says: "--jobs takes a number from 1 up, not '-1'",
    },
    {
      what: "a share without its sign",
      args: ["check", "--margin-floor", "10"],
      says: "'10' lacks its % sign",
    },
    { what: "help of a command that is none", args: ["help", "chek"], says: "'check'" },
    { what: "a short option that is none", args: ["check", "-q", demo.clean], says: "-q" },
    { what: "a report of another form", args: ["check", "--report", "xml", demo.clean], says: "text, json" },
    { what: "an option without its value", args: ["check", demo.clean, "--report"], says: "--report" },
    { what: "an unknown threshold", args: ["check", "--fail-on", "fatal", demo.clean], says: "fatal" },
    {
      what: "the severity of no rule",
      args: ["check", "--severity", "key-unknwon=off", demo.clean],
      says: "key-unknown",
    },
    {
      what: "a severity that is none",
      args: ["check", "--severity", "key-unknown=loud", demo.clean],
      says: "loud",
    },
    {
      what: "a severity without a level",
      args: ["check", "--severity", "key-unknown", demo.clean],
      says: "key-unknown",
    },
    {
      what: "a severity with more behind it",
      args: ["check", "--severity", "key-unknown=off=error", demo.clean],
      says: "key-unknown",
    },
    { what: "two rules to explain", args: ["explain", "key-unknown", "key-missing"], says: "explain" },
    {
      what: "an option of another command",
      args: ["worksheet", "--fail-on", "warning", demo.clean],
      says: "--fail-on",
    },
    { what: "a command that is none", args: ["chek", demo.clean], says: "'check'" },
    { what: "a worksheet of nothing", args: ["worksheet"], says: "install record" },
    {
      what: "a worksheet of two records",
      args: ["worksheet", demo.clean, demo.faulty],
      says: "one install record",
    },
    { what: "a worksheet of a kit", args: ["worksheet", demo.kit], says: demo.kit },
    {
      what: "a worksheet of no file",
      args: ["worksheet", "nowhere.install.yaml"],
      says: "no file or folder 'nowhere.install.yaml'",
    },
    { what: "a worksheet of what is not there", args: ["worksheet", "nofile"], says: "no file or folder" },
    {
      what: "a worksheet of a folder",
      args: ["worksheet", "folder.install.yaml"],
      says: "folder.install.yaml",
    },
  ])("$what", async ({ args, says }) => {
    const workspace = demoWorkspace({ "notes.txt": "", "notes.yaml": "", "huge.kit.yaml": "" });
    mkdirSync(workspace.path("empty"));
    mkdirSync(workspace.path("folder.install.yaml"));
    truncateSync(workspace.path("huge.kit.yaml"), 4 * limits.recordLength + 1);
    const { code, stdout, stderr } = await tailcone(args, workspace.folder);
    expect({ code, stdout }).toEqual({ code: 2, stdout: "" });
    expect(stderr).toContain(says);
    expect(stderr).not.toMatch(/fault of the tool|mean ''| {4}at /);
  });

  // The superuser may read everything.
  it.skipIf(process.getuid?.() === 0)("a file that may not be read", async () => {
    const workspace = demoWorkspace();
    chmodSync(workspace.path(demo.clean), 0);
    const { code, stdout, stderr } = await tailcone(["check", demo.clean], workspace.folder);
    expect({ code, stdout }).toEqual({ code: 2, stdout: "" });
    expect(stderr).toContain(demo.clean);
  });
});

describe("thresholds and severities", () => {
  const slip = [
    "kit: { number: QSR-60, revision: C }",
    "components: [{ id: RACK, weight: 31.2 lb, colour: grey }]",
    "devices: []",
    "",
  ].join("\n");
  const codeOf = async (...args: string[]) => {
    const { code } = await tailcone(
      ["check", "--brief", ...args],
      new Workspace({ "x.kit.yaml": slip }).folder,
    );
    return code;
  };

  it.each([
    { args: [], code: 1 },
    { args: ["--severity", "key-unknown=warning"], code: 0 },
    { args: ["--severity", "key-unknown=warning", "--fail-on", "warning"], code: 1 },
    { args: ["--severity", "key-unknown=information", "--fail-on", "warning"], code: 0 },
    { args: ["--severity", "key-unknown=information", "--fail-on", "information"], code: 1 },
    { args: ["--severity", "key-unknown=off", "--fail-on", "information"], code: 0 },
    { args: ["--severity", "key-unknown=off", "--severity", "key-unknown=error"], code: 1 },
    { args: ["--severity=key-unknown=off"], code: 0 },
    { args: ["--severity", "key-missing=off"], code: 1 },
  ])("$args gives $code", async ({ args, code }) => {
    expect(await codeOf(...args)).toBe(code);
  });
});

describe("help is no failure", () => {
  const helped = async (...args: string[]) => {
    const { code, stdout, stderr } = await tailconeHere(args, demoWorkspace().folder);
    expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
    expect(stdout.split("\n").filter((line) => line.length > 80)).toEqual([]);
    return stdout;
  };

  it.each([{ args: [] }, { args: ["--help"] }, { args: ["-h"] }, { args: ["help"] }])(
    "$args tells the commands",
    async ({ args }) => {
      const page = await helped(...args);
      for (const command of commands) expect(page).toContain(`  tailcone ${command} `);
    },
  );

  it.each(commands)("of %s it tells its own calls and options, and no others", async (command) => {
    const page = await helped("help", command);
    const others = commands.filter((one) => one !== command);
    expect(others.filter((other) => page.includes(`tailcone ${other} `))).toEqual([]);
    const told = [...page.matchAll(/^ {2}--([a-z-]+)/gm)].map(([, option]) => option);
    expect(told).toEqual([...optionsOf[command], "help"]);
    expect(await helped(command, "--help")).toBe(page);
  });
});

describe("output that can't be written gives 2, and a message in place of a trace", () => {
  // A device that is always full, where the system has one.
  it.skipIf(!existsSync("/dev/full"))("to the terminal", async () => {
    const command = `'${process.execPath}' '${programs.commandLine}' check --brief . > /dev/full`;
    const { code, stderr } = await run("sh", ["-c", command], demoWorkspace().folder);
    expect(code).toBe(2);
    expect(stderr).toMatch(/^tailcone: can't write the output: .*\n$/);
  });

  it.skipIf(!existsSync("/dev/full"))("to a file", async () => {
    const args = ["check", "--brief", "--report", "json:/dev/full", "."];
    const { code, stdout, stderr } = await tailconeHere(args, demoWorkspace().folder);
    expect({ code, stdout }).toEqual({ code: 2, stdout: "" });
    expect(stderr).toMatch(/^tailcone: can't write the report '\/dev\/full': .*\nTry .*\n$/);
  });
});

it("--version prints the version of the package", async () => {
  const { version } = (await import("../../package.json")).default;
  expect(await tailcone(["--version"], demoWorkspace().folder)).toEqual({
    code: 0,
    stdout: `${version}\n`,
    stderr: "",
  });
});
