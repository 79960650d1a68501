/** A long check on a terminal tells how far it is; elsewhere nothing of it stands in what is kept. */
import { existsSync } from "node:fs";
import { stripVTControlCharacters } from "node:util";
import { beforeAll, describe, expect, it } from "vitest";
import { run } from "../support/command-line";
import { programs } from "../support/programs";
import { Workspace } from "../support/workspace";

const count = 60;
const bar = /checking \[[#.]{30}\] (\d+) of 60 records/g;

/** Gives a program a terminal: of Debian's `bsdutils`, which every Debian has. */
const script = "/usr/bin/script";
const onDebian = existsSync("/etc/debian_version");

describe.runIf(onDebian)("a check of many records", () => {
  let workspace: Workspace;

  beforeAll(() => {
    const records = Array.from({ length: count }, (_, index) => [
      `record-${index}.install.yaml`,
      `document: { number: HM-${index}, revision: A, title: Record ${index}, status: draft }\n`,
    ]);
    workspace = new Workspace(Object.fromEntries(records));
  });

  const check = (before = "", after = "") =>
    `${before} "${process.execPath}" "${programs.commandLine}" check --brief . > found.txt ${after}`;
  const onTerminal = (command: string) => run(script, ["-qec", command, "/dev/null"], workspace.folder);

  it("shows a bar on a terminal, and takes it away at the end", async () => {
    const { stdout } = await onTerminal(check());
    const shown = [...stdout.matchAll(bar)].map(([, done]) => Number(done));
    expect(shown.length).toBeGreaterThan(0);
    expect(shown).toEqual(shown.toSorted((a, b) => a - b));
    expect(shown.every((done) => done >= 1 && done <= count)).toBe(true);
    // What stands on the terminal in the end: nothing behind the last return to the line's beginning.
    const last = stdout.trimEnd().split("\r").at(-1);
    expect(last && stripVTControlCharacters(last)).toBe("");
    expect(workspace.read("found.txt")).toContain(`${count} records checked`);
  });

  it("shows none in CI, though there is a terminal", async () => {
    const { stdout } = await onTerminal(check("CI=true"));
    expect(stdout).not.toMatch(bar);
    expect(workspace.read("found.txt")).toContain(`${count} records checked`);
  });

  it("shows none where the error stream is kept", async () => {
    await onTerminal(check("", "2> said.txt"));
    expect(workspace.read("said.txt")).toBe("");
  });
});
