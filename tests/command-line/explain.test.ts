import { describe, expect, it } from "vitest";
import { recordSchemas } from "../../server/src/core/records/schema";
import { rules } from "../../server/src/core/rules";
import { ruleAreas } from "../../server/src/core/rules/areas";
import { citeSource } from "../../server/src/core/source";
import { tailconeHere } from "../support/command-here";
import { tailcone } from "../support/command-line";
import { Workspace } from "../support/workspace";

const { folder } = new Workspace();

function oneLine(text: string): string {
  return text.replace(/\s+/g, " ").trim();
}

describe("explain", () => {
  it.each(rules.map((rule) => ({ id: rule.id, rule })))("$id", async ({ id, rule }) => {
    const { stdout, stderr, code } = await tailconeHere(["explain", id], folder);
    expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
    const words = oneLine(stdout);
    expect(stdout).toMatch(new RegExp(`^${id} \\(${rule.severity}\\)\\n`));
    expect(words).toContain(rule.title);
    expect(words).toContain(oneLine(rule.why));
    for (const source of rule.sources) expect(words).toContain(oneLine(citeSource(source)));
    const shown = stdout
      .split(/^ {4}-> /m)
      .slice(1)
      .map((text) => oneLine(text.split("\n\n")[0]!));
    for (const { title, finds } of rule.examples()) {
      expect(words).toContain(oneLine(title));
      for (const found of finds) expect(shown.some((what) => new RegExp(found, "u").test(what))).toBe(true);
    }
    expect(stdout.split("\n").filter((line) => line.length > 80)).toEqual([]);
  });

  it.each(Object.keys(ruleAreas))(
    "is printed by the program as it is made here, for a rule of %s",
    async (area) => {
      const { id } = rules.find((rule) => rule.area === area)!;
      expect(await tailcone(["explain", id], folder)).toEqual(await tailconeHere(["explain", id], folder));
    },
  );

  it("shows of an example what counts, with what it stands under, and marks what is left out", async () => {
    const { stdout } = await tailcone(["explain", "wire-voltage-drop"], folder);
    expect(stdout.replace(/\n {6}(?=\S)/g, " ")).toContain(
      [
        "  ...",
        "  conditions:",
        "    - { id: cruise, duration: 90 s, altitude: 10000 ft, ambient: 40 degC, loads: { RACK: survey } }",
        "  ...",
        "",
        "    -> no finding",
      ].join("\n"),
    );
  });

  it("shows the line of each finding", async () => {
    const { stdout } = await tailcone(["explain", "reference-unknown"], folder);
    for (const block of stdout.split("\nExample").slice(1)) {
      const named = /-> .* names '([^']+)'/.exec(oneLine(block))?.[1];
      if (named) expect(block.split("\n    -> ")[0]).toContain(named);
    }
  });

  it("lists the areas, and of each its rules", async () => {
    const { stdout, code } = await tailcone(["explain"], folder);
    expect(code).toBe(0);
    const areas = [...stdout.matchAll(/^([a-z]+) +(\d+) {2}/gm)].map(([, area, count]) => [
      area!,
      Number(count),
    ]);
    expect(areas.reduce((sum, [, count]) => sum + Number(count), 0)).toBe(rules.length);
    for (const [area] of areas) {
      const list = await tailconeHere(["explain", String(area)], folder);
      const listed = list.stdout.split("\n").filter((line) => /^\S/.test(line));
      const ofArea = rules.filter((rule) => rule.area === area);
      expect(listed).toEqual(ofArea.map(({ id, severity }) => `${id} (${severity})`));
      expect(list.stdout.split("\n").filter((line) => line.length > 80)).toEqual([]);
    }
  });

  it("lists the keys of a place, as the schema has them", async () => {
    const { stdout, code } = await tailcone(["explain", "keys", "install.wires"], folder);
    expect(code).toBe(0);
    const keys = stdout.split("\n").flatMap((line) => /^([\w-]+)/.exec(line)?.[1] ?? []);
    expect(keys).toEqual(Object.keys(recordSchemas.install.properties!.wires!.items!.properties!));
    expect(stdout).toContain("gauge (needed): 8 AWG\n    Wire gauge.\n");
    const whole = await tailcone(["explain", "keys", "kit"], folder);
    expect(whole.stdout).toContain("components (needed)");
    const leaf = await tailcone(["explain", "keys", "install.wires.gauge"], folder);
    expect(leaf.stdout).toBe("Such as 8 AWG. Wire gauge.\n");
    const slip = await tailcone(["explain", "keys", "install.wire"], folder);
    expect({ code: slip.code, stdout: slip.stdout }).toEqual({ code: 2, stdout: "" });
    expect(slip.stderr).toContain("no key under install 'wire'; did you mean 'wires'?");
    expect((await tailcone(["explain", "keys"], folder)).stderr).toContain("install.wires");
  });

  it.each([
    { slip: "wire-voltage-dorp", meant: "wire-voltage-drop" },
    { slip: "key-unkown", meant: "key-unknown" },
    { slip: "CG-AFT-OF-LIMIT", meant: "cg-aft-of-limit" },
    { slip: "wire-volt", meant: "wire-voltage-drop" },
    { slip: "corner-rad", meant: "cutout-corner-radius" },
  ])("suggests $meant for $slip", async ({ slip, meant }) => {
    const { stdout, stderr, code } = await tailcone(["explain", slip], folder);
    expect({ code, stdout }).toEqual({ code: 2, stdout: "" });
    expect(stderr).toContain(`'${slip}'`);
    expect(stderr).toContain(`did you mean '${meant}'?`);
  });

  it.each(["xyzzy", "", "toString", "__proto__"])("suggests nothing for %j", async (word) => {
    const { stdout, stderr, code } = await tailcone(["explain", word], folder);
    expect({ code, stdout }).toEqual({ code: 2, stdout: "" });
    expect(stderr).not.toContain("did you mean");
  });
});
