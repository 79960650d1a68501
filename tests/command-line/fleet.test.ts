/** `check` on a folder of installs ends with all of them side by side. */
import { expect, it } from "vitest";
import { tailconeHere } from "../support/command-here";
import { tailcone } from "../support/command-line";
import { demo, demoWorkspace } from "../support/workspace";

it("lists the installs with errors, warnings and least margins, within 80 columns", async () => {
  const workspace = demoWorkspace();
  const { stdout } = await tailcone(["check", "."], workspace.folder);
  const table = stdout.slice(stdout.lastIndexOf("\ninstall ")).trim().split("\n");
  expect(table.filter((line) => line.length > 80)).toEqual([]);
  const cellsOf = (name: string) =>
    table
      .find((line) => line.startsWith(`${name} `))
      ?.split(/\s{2,}/)
      .map((cell) => cell.trim());
  const [, errors, warnings, electrical, balance] = cellsOf("survey-rack-0417") ?? [];
  expect([errors, warnings]).toEqual(["0", "0"]);
  expect(electrical).toMatch(/^\d+ %$/);
  // The same from the worksheet: what is left to the nearer side of the envelope, as a share of its width.
  const printed = await tailcone(["worksheet", demo.clean, "--report", "json"], workspace.folder);
  const { values, margins } = JSON.parse(printed.stdout) as {
    values: { quantity: string; value: number }[];
    margins: { quantity: string; margin: number }[];
  };
  const of = (quantity: string) =>
    values.filter((one) => one.quantity === quantity).map(({ value }) => value);
  const [cgs, forwards, afts] = [of("loading-cg"), of("forward-limit"), of("aft-limit")];
  expect(cgs).toHaveLength(3);
  const shares = cgs.map(
    (cg, at) => Math.min(cg - forwards[at]!, afts[at]! - cg) / (afts[at]! - forwards[at]!),
  );
  // And the worst of all permitted loadings, which is nearer to the limit than any that is recorded.
  const extreme = margins.filter(({ quantity }) => /^extreme-(forward|aft)-cg$/.test(quantity));
  const least = Math.min(...extreme.map(({ margin }) => margin));
  expect(least).toBeLessThan(Math.min(...shares));
  expect(balance).toBe(`${Math.floor(least * 100)} %`);
  expect(Number(cellsOf("survey-rack-0417-faulty")?.[1])).toBeGreaterThan(5);
});

it("a record with blanks shows no margin, whichever rules are asked for", async () => {
  const { folder } = demoWorkspace();
  const whole = await tailconeHere(["check", "."], folder);
  const some = await tailconeHere(["check", "--only", "fault-current-too-small", "."], folder);
  for (const { stdout } of [whole, some])
    expect(stdout).toMatch(/^survey-rack-0417-unfinished +\d+ +\d+ +- +-$/m);
  const json = ["check", "--report", "json", "--only", "fault-current-too-small", "."];
  const { files } = JSON.parse((await tailconeHere(json, folder)).stdout) as {
    files: { path: string; least: unknown }[];
  };
  const unfinished = files.find(({ path }) => path.includes("unfinished"));
  expect(unfinished?.least).toEqual({ electrical: null, cg: null });
});

it("a single record has no table", async () => {
  const workspace = demoWorkspace();
  const { stdout } = await tailcone(["check", "survey-rack-0417.install.yaml"], workspace.folder);
  expect(stdout).not.toContain("\ninstall ");
});
