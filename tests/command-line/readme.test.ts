/** The records that the README shows are sound, and a fault in them is told in the words that stand there. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { parseQuantity } from "../../server/src/core/quantities";
import { tailconeHere } from "../support/command-here";
import { root } from "../support/programs";
import { replaceOnce, Workspace } from "../support/workspace";

const readme = readFileSync(join(root, "README.md"), "utf8");

/** What stands between fences of one language. */
function blocksOf(language: string): string[] {
  return [...readme.matchAll(new RegExp(`^\`\`\`${language}\\n(.*?)^\`\`\``, "gms"))].map(
    ([, text]) => text!,
  );
}

const records = Object.fromEntries(blocksOf("yaml").map((text) => [/^# (\S+)/.exec(text)?.[1] ?? "", text]));
const install = "qcm-5-0418.install.yaml";

it("shows a record of each kind", () => {
  expect(Object.keys(records)).toEqual(["b9-0418.airframe.yaml", "qcm-5.kit.yaml", install]);
});

it("they are sound", async () => {
  const { code, stdout } = await tailconeHere(["check", "--brief"], new Workspace(records).folder);
  expect(code).toBe(0);
  expect(stdout).toMatch(/^3 records checked: 0 errors, 0 warnings, [1-9]\d* information\./m);
});

it("a wire too thin is told as it stands there, and a gauge was tried that mends it", async () => {
  const thin = replaceOnce(records[install]!, "to: CAMERA, gauge: 14 AWG", "to: CAMERA, gauge: 16 AWG");
  const { folder } = new Workspace({ ...records, [install]: thin });
  const { stdout } = await tailconeHere(["check", "--brief"], folder);
  const told = stdout.split("\n").filter((line) => / (?:error|warning) \[/.test(line));
  expect(told).toEqual(blocksOf("text").map((text) => text.trim()));
  expect((await tailconeHere(["check"], folder)).stdout).toMatch(/^ {2}tried {2}\S.* 14 AWG/m);
});

it("takes the spellings of units that it names", () => {
  const told = /usual spellings \((.*?)\)/.exec(readme)![1]!;
  const spellings = [...told.matchAll(/`(.*?)`/g)].map(([, spelling]) => spelling!);
  const dimensions = ["length", "torque", "velocity", "temperature", "ratio"] as const;
  expect(spellings).toHaveLength(dimensions.length);
  for (const [at, dimension] of dimensions.entries())
    expect(parseQuantity(spellings[at]!, { dimension })).toHaveProperty("quantity");
});

it("every keys page that it names is there", async () => {
  for (const [, place] of readme.matchAll(/explain keys ([a-z.-]+)/g))
    expect((await tailconeHere(["explain", "keys", place!], root)).code).toBe(0);
});
