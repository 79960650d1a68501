/** A check that is spread: over threads of one run, over the parts of a matrix, and put together again. */
import { describe, expect, it } from "vitest";
import { deviationExample } from "../../server/src/core/rules/deviations/deviation-example";
import { tailcone } from "../support/command-line";
import { demo, demoRecords, demoWorkspace, Workspace } from "../support/workspace";

const forms = ["json", "sarif", "junit", "github", "gitlab"] as const;

/** Records enough that more than one thread has work, faulty ones among them. */
function fleet(): Workspace {
  const records = demoRecords();
  const workspace = new Workspace({
    [demo.airframe]: records[demo.airframe]!,
    [demo.kit]: records[demo.kit]!,
  });
  for (let number = 1; number <= 8; number++) {
    const text = records[number % 5 === 0 ? demo.faulty : demo.clean]!;
    workspace.write(`record-${String(number).padStart(2, "0")}.install.yaml`, text);
  }
  return workspace;
}

describe("threads", () => {
  it("come to the same reports, in the same order", async () => {
    const workspace = fleet();
    for (const jobs of ["1", "2"]) {
      const wanted = forms.flatMap((form) => ["--report", `${form}:${jobs}.${form}`]);
      const { code, stderr } = await tailcone(["check", "--jobs", jobs, ...wanted, "."], workspace.folder);
      expect({ code, stderr }).toEqual({ code: 1, stderr: "" });
    }
    for (const form of forms) expect(workspace.read(`2.${form}`)).toBe(workspace.read(`1.${form}`));
  }, 600_000);
});

describe("parts", () => {
  it("merge into the report of the whole, in every form", async () => {
    const workspace = fleet();
    const whole = forms.flatMap((form) => ["--report", `${form}:whole.${form}`]);
    expect((await tailcone(["check", ...whole, "."], workspace.folder)).code).toBe(1);
    for (const part of ["1", "2", "3"]) {
      const args = ["check", "--part", `${part}/3`, "--report", `json:part-${part}.json`, "."];
      expect((await tailcone(args, workspace.folder)).stderr).toBe("");
    }
    const merged = forms.flatMap((form) => ["--report", `${form}:merged.${form}`]);
    const parts = ["part-1.json", "part-2.json", "part-3.json"];
    const { code, stderr } = await tailcone(["merge", ...parts, ...merged], workspace.folder);
    expect({ code, stderr }).toEqual({ code: 1, stderr: "" });
    for (const form of forms) expect(workspace.read(`merged.${form}`)).toBe(workspace.read(`whole.${form}`));
    const twice = await tailcone(["merge", "part-1.json", "part-1.json"], workspace.folder);
    expect(twice.code).toBe(2);
    expect(twice.stderr).toContain("in two of the reports");
  }, 600_000);

  it.each([["0/3"], ["4/3"], ["2"], ["a/b"]])("%s is none", async (part) => {
    const { code, stderr } = await tailcone(["check", "--part", part, "."], demoWorkspace().folder);
    expect(code).toBe(2);
    expect(stderr).toContain(part);
  });

  it.each([
    { of: "no report", text: "{}", says: "no JSON report" },
    { of: "no JSON", text: "{", says: "no JSON" },
  ])("$of can't be merged", async ({ text, says }) => {
    const { folder } = new Workspace({ "a.json": text });
    const { code, stderr } = await tailcone(["merge", "a.json"], folder);
    expect(code).toBe(2);
    expect(stderr).toContain(says);
  });
});

describe("an accepted deviation", () => {
  const accepted = deviationExample();

  it("does not fail, and is told in every view", async () => {
    const { folder } = new Workspace({ "a.install.yaml": accepted });
    const check = await tailcone(["check", "a.install.yaml"], folder);
    expect(check.code).toBe(0);
    expect(check.stdout).toContain("1 accepted deviation.");
    expect(check.stdout.replace(/\s+/g, " ")).toContain(
      "accepted until 2099-12-31 by stamp HM 7 (HM-0412-DEV-3 rev A): the rack runs from 22 V",
    );
    const worksheet = await tailcone(["worksheet", "a.install.yaml"], folder);
    expect(worksheet.stdout.replace(/\s+/g, " ")).toContain("It is accepted until 2099-12-31 by stamp HM 7");
    const json = await tailcone(["worksheet", "--report", "json", "a.install.yaml"], folder);
    expect(JSON.parse(json.stdout).deviations).toMatchObject([
      { rule: "wire-voltage-drop", subject: "component RACK", severity: "error", until: "2099-12-31" },
    ]);
  });

  it("is told where it came, and where it went", async () => {
    const without = accepted.slice(0, accepted.indexOf("deviations:"));
    const { folder } = new Workspace({ "a.install.yaml": accepted, "b.install.yaml": without });
    const came = await tailcone(
      ["compare", "b.install.yaml", "a.install.yaml", "--fail-on", "error"],
      folder,
    );
    expect(came.code).toBe(0);
    expect(came.stdout).toContain("1 finding now accepted");
    const went = await tailcone(
      ["compare", "a.install.yaml", "b.install.yaml", "--fail-on", "error"],
      folder,
    );
    expect(went.code).toBe(1);
    expect(went.stdout).toContain("1 new error");
  });

  it.each([
    { what: "expired", text: deviationExample({ until: "2024-03-31" }), rule: "deviation-expired" },
    { what: "exceeded", text: deviationExample({ "least-margin": "-10 %" }), rule: "deviation-exceeded" },
    {
      what: "misspelt",
      text: deviationExample({ rule: "wire-voltage-dorp" }),
      rule: "deviation-rule-unknown",
    },
    {
      what: "of another thing",
      text: deviationExample({ subject: "component RAK" }),
      rule: "deviation-unused",
    },
  ])("that is $what covers nothing", async ({ text, rule }) => {
    const { folder } = new Workspace({ "a.install.yaml": text });
    const { code, stdout } = await tailcone(["check", "--brief", "a.install.yaml"], folder);
    expect(code).toBe(1);
    expect(stdout).toContain("error [wire-voltage-drop]");
    expect(stdout).toContain(`[${rule}]`);
  });
});
