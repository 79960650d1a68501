import { describe, expect, it } from "vitest";
import { rules } from "../../server/src/core/rules";
import { citeSource } from "../../server/src/core/source";
import { tailcone } from "../support/command-line";
import { Workspace } from "../support/workspace";

const { folder } = new Workspace();

function oneLine(text: string): string {
  return text.replace(/\s+/g, " ").trim();
}

describe("explain", () => {
  it.concurrent.each(rules.map((rule) => ({ id: rule.id, rule })))("$id", async ({ id, rule }) => {
    const { stdout, stderr, code } = await tailcone(["explain", id], folder);
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
    // The first example whole, of the others what differs from it; and what is found in each.
    for (const [index, { title, text, finds }] of rule.examples.entries()) {
      expect(words).toContain(oneLine(title));
      if (index === 0) expect(words).toContain(oneLine(text));
      for (const line of text.split("\n")) expect(words).toContain(oneLine(line));
      for (const found of finds) expect(shown.some((what) => new RegExp(found, "u").test(what))).toBe(true);
    }
    const prose = stdout.split("\nExample")[0]!;
    expect(prose.split("\n").filter((line) => line.length > 80)).toEqual([]);
  });

  it("lists every rule", async () => {
    const { stdout, code } = await tailcone(["explain"], folder);
    expect(code).toBe(0);
    const listed = stdout.split("\n").filter((line) => /^\S/.test(line));
    expect(listed).toEqual(rules.map(({ id, severity }) => `${id} (${severity})`));
    expect(stdout.split("\n").filter((line) => line.length > 80)).toEqual([]);
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
