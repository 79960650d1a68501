import { describe, expect, it } from "vitest";
import { quantityNames } from "../../server/src/core/graph/quantity-names";
import { tailconeHere } from "../support/command-here";
import { type Outcome, tailcone, tailconeOnDemo } from "../support/command-line";
import { exampleFolders } from "../support/examples";
import { demo, demoRecords, demoWorkspace, replaceOnce, Workspace } from "../support/workspace";

interface Worksheet {
  readonly version: string;
  readonly record: string;
  readonly values: readonly {
    readonly subject: string;
    readonly quantity: string;
    readonly condition: string | null;
    readonly value: number;
    readonly unit: string;
    readonly formula: string;
    readonly inputs: readonly {
      readonly symbol: string;
      readonly name: string;
      readonly value: number;
      readonly unit: string;
      readonly written: readonly string[];
    }[];
    readonly source: readonly string[];
  }[];
  readonly margins: readonly {
    readonly rule: string;
    readonly value: number;
    readonly limit: number;
    readonly holds: boolean;
  }[];
}

function sheetOf({ code, stdout, stderr }: Outcome): Worksheet {
  expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
  return JSON.parse(stdout) as Worksheet;
}

const inJson = (record: string) => ["worksheet", "--report", "json", record];

const worksheetOfDemo = async (record: string) => sheetOf(await tailconeOnDemo(...inJson(record)));

describe("worksheet --report json", () => {
  it("has every field of the contract, for every value", async () => {
    const sheet = await worksheetOfDemo(demo.clean);
    expect(sheet.version).toMatch(/^\d+\.\d+\.\d+/);
    expect(sheet.record).toBe(demo.clean);
    expect(sheet.values.length).toBeGreaterThan(100);
    for (const value of sheet.values) {
      expect(value).toMatchObject({
        subject: expect.stringMatching(/^[a-z-]+( \S.*)?$/),
        quantity: expect.stringMatching(/^[a-z-]+$/),
        value: expect.any(Number),
        unit: expect.stringMatching(/^\S/),
        formula: expect.stringMatching(/^\S/),
        inputs: expect.any(Array),
        source: expect.any(Array),
      });
      expect(value.condition === null || typeof value.condition === "string").toBe(true);
      expect(quantityNames).toHaveProperty(value.quantity);
      expect(value.inputs.length).toBeGreaterThan(0);
      for (const input of value.inputs) {
        expect(input).toMatchObject({
          symbol: expect.stringMatching(/^\S/),
          name: expect.stringMatching(/^\S/),
          value: expect.any(Number),
          unit: expect.stringMatching(/^\S/),
          written: expect.any(Array),
        });
      }
    }
  });

  it("names each value once", async () => {
    const { values } = await worksheetOfDemo(demo.clean);
    const names = values.map(({ subject, quantity, condition, formula }) =>
      [subject, quantity, condition, formula].join(" | "),
    );
    expect(names.filter((name, index) => names.indexOf(name) !== index)).toEqual([]);
  });

  it("works out the wire of the demo by its published formula, from what the records say", async () => {
    const { values } = await worksheetOfDemo(demo.clean);
    const wire = values.find(
      ({ subject, quantity, condition }) =>
        subject === "wire P101A10" && quantity === "wire-drop" && condition === "survey",
    )!;
    expect(wire.formula).toBe("I × R");
    const [current, resistance] = ["I", "R"].map(
      (symbol) => wire.inputs.find((one) => one.symbol === symbol)!,
    );
    // What the kit says that the rack draws while it surveys.
    expect([current!.value, current!.unit]).toEqual([24, "A"]);
    expect(wire.value).toBeCloseTo(24 * resistance!.value, 12);
    expect(wire.source.join()).toContain("AC 43.13-1B");
  });

  it("says where each written number stands, in whichever record", async () => {
    const { values } = await worksheetOfDemo(demo.clean);
    const written = values.flatMap(({ inputs }) =>
      inputs.flatMap((input) => input.written.map((at) => ({ at, input }))),
    );
    expect(new Set(written.map(({ at }) => at.split(":")[0]))).toEqual(
      new Set([demo.clean, demo.kit, demo.airframe]),
    );
    const power = written.find(({ input }) => input.name === "power in mode run")!;
    const [path, line, column] = power.at.split(":");
    const text = demoRecords()
      [path!]!.split("\n")
      [Number(line) - 1]!.slice(Number(column) - 1);
    expect(text).toMatch(/^1100 W/);
  });

  it("holds each value against its limit as check does", async () => {
    const sheet = await worksheetOfDemo(demo.faulty);
    expect(sheet.margins.some(({ holds }) => holds)).toBe(true);
    expect(sheet.margins.some(({ holds }) => !holds)).toBe(true);
    const { stdout } = await tailconeOnDemo("check", "--brief", demo.faulty);
    for (const { rule } of sheet.margins.filter(({ holds }) => !holds)) expect(stdout).toContain(`[${rule}]`);
  });

  it("changes with the record, and only where it must", async () => {
    const before = await worksheetOfDemo(demo.clean);
    const text = replaceOnce(
      demoRecords()[demo.clean]!,
      "component: RACK\n    arm: 121.0 in",
      "component: RACK\n    arm: 122.0 in",
    );
    const after = sheetOf(await tailcone(inJson(demo.clean), demoWorkspace({ [demo.clean]: text }).folder));
    expect(after.values.length).toBe(before.values.length);
    const moved = after.values.filter((value, index) => value.value !== before.values[index]!.value);
    expect(new Set(moved.map(({ quantity }) => quantity))).toEqual(
      new Set([
        "clearance",
        "service-distance",
        "item-moment",
        "item-cg-effect",
        "empty-moment",
        "empty-cg",
        "empty-cg-mac",
        "empty-cg-foremost",
        "empty-cg-aftmost",
        "cumulative-cg-change",
        "cg-change",
        "cg-change-mac",
        "loading-moment",
        "loading-cg",
        "burn-forward-cg",
        "burn-aft-cg",
        "tolerance-forward-cg",
        "tolerance-aft-cg",
        "adverse-forward-cg",
        "adverse-aft-cg",
        "loading-condition-cg",
        "extreme-forward-cg",
        "extreme-aft-cg",
        "extreme-forward-cg-tolerance",
        "extreme-aft-cg-tolerance",
      ]),
    );
    const rack = moved.filter(({ quantity }) => quantity === "item-moment");
    expect(rack.map(({ subject, value }) => [subject, value])).toEqual([["component RACK", 31.2 * 122]]);
  });

  it("can be made of any record that a rule's example shows, faulty as it is", async () => {
    const files: Record<string, string> = {};
    const records = exampleFolders.filter(({ record }) => /\.install\.ya?ml$/.test(record));
    for (const { folder, files: texts } of records) {
      for (const [name, text] of Object.entries(texts)) files[`${folder}/${name}`] = text;
    }
    const workspace = new Workspace(files);
    const sheets: Worksheet[] = [];
    for (const [index, { folder, record }] of records.entries()) {
      // In this process, as starting one takes longer than the worksheet; a few as users make them.
      const make = index % 100 === 0 ? tailcone : tailconeHere;
      sheets.push(sheetOf(await make(inJson(`${folder}/${record}`), workspace.folder)));
    }
    expect(sheets.filter(({ values }) => values.length > 0).length).toBeGreaterThan(sheets.length / 3);
  }, 600_000);
});

describe("worksheet", () => {
  it("shows sections, numbers, sources and the caution", async () => {
    const { stdout, code } = await tailconeOnDemo("worksheet", demo.clean);
    expect(code).toBe(0);
    for (const title of ["WIRES", "LOADINGS", "CUTOUTS", "SOURCES", "NOTES"])
      expect(stdout).toMatch(new RegExp(`^${title}`, "m"));
    const words = stdout.replace(/\s+/g, " ");
    expect(words).toContain("No findings.");
    expect(words).toContain("it supports, and does not replace, approved data, the maker's instructions");
    expect(words.replace("does not replace, approved data", "")).not.toMatch(/approved/i);
    for (const name of Object.values(demo)) {
      if (name !== demo.faulty) expect(stdout).toContain(name);
    }
  });

  it("says that there are findings, and shows what fails", async () => {
    const { stdout, code } = await tailconeOnDemo("worksheet", demo.faulty);
    expect(code).toBe(0);
    expect(stdout.replace(/\s+/g, " ")).toMatch(/\d+ findings: see 'tailcone check survey-rack-0417-faulty/);
    expect(stdout).toMatch(/\bfails$/im);
  });
});

describe("pages of the worksheet", () => {
  it("are broken where they would be too wide, and never cut", async () => {
    const { stdout: text } = await tailconeOnDemo("worksheet", demo.clean);
    const pages = text.slice(text.indexOf("EQUIPMENT LIST, REVISED"), text.indexOf("SOURCES\n"));
    expect(pages).toMatch(/left-seat 250, right-seat 250,\n {10,}operator-seat 200, main-tanks 504,\n/);
    expect(pages).toMatch(/ B9-2214-1 belts of the .*\n {10,}bench\n/);
    expect(pages).not.toContain("…");
  });

  it("say what the empty weight includes only where the record says it", async () => {
    const airframe = demoRecords()[demo.airframe]!;
    const recorded = await tailconeOnDemo("worksheet", demo.clean);
    expect(recorded.stdout).toContain("The empty weight includes: unusable fuel, full oil.");
    const without = replaceOnce(airframe, "  includes: unusable fuel, full oil\n", "");
    const blank = await tailcone(
      ["worksheet", demo.clean],
      demoWorkspace({ [demo.airframe]: without }).folder,
    );
    expect(blank.stdout).toContain("The empty weight includes: ____ (not recorded).");
    expect(blank.stdout).not.toContain("full oil");
  });

  it("have no statement to sign while the new empty weight is not known", async () => {
    const airframe = replaceOnce(demoRecords()[demo.airframe]!, "weight: 38.5 lb", "weight: 38.5 in");
    const { stdout } = await tailcone(
      ["worksheet", demo.clean],
      demoWorkspace({ [demo.airframe]: airframe }).folder,
    );
    expect(stdout).toContain(
      "EMPTY WEIGHT STATEMENT, REVISED\nNo statement: the new empty weight is not known (see the findings).",
    );
    expect(stdout).not.toContain("Signature");
  });

  it("are the same in both reports, each under a name of its own", async () => {
    const { stdout: text } = await tailconeOnDemo("worksheet", demo.clean);
    const { stdout: json } = await tailconeOnDemo(...inJson(demo.clean));
    const { pages } = JSON.parse(json) as {
      pages: { id: string; title: string; head: string[]; rows: unknown[][] }[];
    };
    expect(new Set(pages.map(({ id }) => id)).size).toBe(pages.length);
    const titles = text.split("\n").filter((line) => line !== "" && line === line.toUpperCase());
    for (const { title, head, rows } of pages) {
      expect(titles).toContain(title.toUpperCase());
      expect(rows.length).toBeGreaterThan(0);
      for (const row of rows) expect(row.length).toBeLessThanOrEqual(head.length);
    }
  });
});
