import { beforeAll, describe, expect, it } from "vitest";
import type { MarkupContent } from "vscode-languageserver";
import installSchema from "../../schemas/install.schema.json";
import { showMeasure, type ValueUnit } from "../../server/src/core/graph/value";
import { tailcone } from "../support/command-line";
import { Editor } from "../support/editor";
import { demo, planted, plantedWorkspace, type Workspace } from "../support/workspace";

interface Numbers {
  readonly subject: string;
  readonly quantity: string;
  readonly condition: string | null;
  readonly value: number;
  readonly unit: ValueUnit;
}

interface Worksheet {
  readonly values: readonly (Numbers & {
    readonly inputs: readonly (Numbers & { readonly symbol: string; readonly name: string })[];
  })[];
  readonly margins: readonly (Numbers & {
    readonly rule: string;
    readonly limit: number;
    readonly margin: number;
  })[];
}

let workspace: Workspace;
let editor: Editor;
let install: string;
let worksheet: Worksheet;

beforeAll(async () => {
  workspace = plantedWorkspace();
  editor = await Editor.start({ folders: [workspace.uri("")], isShared: true });
  install = workspace.uri(demo.clean);
  editor.open(install, workspace.read(demo.clean));
  await editor.diagnostics(install);
  const { stdout } = await tailcone(["worksheet", "--report", "json", demo.clean], workspace.folder);
  worksheet = JSON.parse(stdout) as Worksheet;
});

/** Text of the hover one character into a text that stands in the document once; null without a hover. */
async function hoverAt(uri: string, text: string, within = text): Promise<string | null> {
  const place = editor.placeOf(uri, text);
  const hover = await editor.hover(uri, { ...place, character: place.character + text.indexOf(within) });
  return hover && (hover.contents as MarkupContent).value;
}

/** Markdown as it is read: without the signs that keep a character from being markup. */
function plain(markdown: string): string {
  return markdown.replace(/\\([^\w\s])/g, "$1");
}

function worked(subject: string, quantity: string, condition: string): Worksheet["values"][number] {
  return worksheet.values.find(
    (one) => one.subject === subject && one.quantity === quantity && one.condition === condition,
  )!;
}

/** Cells of each row of the table of results, the head and its rule left out. */
function rowsOf(markdown: string): string[][] {
  const rows = markdown.match(/^\|.*\|$/gm) ?? [];
  return rows.slice(2).map((row) =>
    row
      .split(/(?<!\\)\|/)
      .slice(1, -1)
      .map((cell) => plain(cell.trim())),
  );
}

describe("on a key", () => {
  it("tells what it means, with an example, and then what is known of its value", async () => {
    const key = "gauge: 8 AWG\n    length: 14.5 ft";
    const shown = (await hoverAt(install, key))!;
    const { description, examples } = installSchema.$defs.wire.properties.gauge;
    expect(shown.startsWith(`**gauge**: ${description}\n\nExample: \`${examples[0]}\``)).toBe(true);
    expect(shown).toContain((await hoverAt(install, key, "8 AWG"))!);
    const place = editor.placeOf(install, key);
    expect((await editor.hover(install, place))?.range).toEqual({
      start: { ...place, character: place.character - 1 },
      end: { ...place, character: place.character + 4 },
    });
  });

  it("tells what a section is for", async () => {
    expect(await hoverAt(install, "conditions:")).toBe(
      `**conditions**: ${installSchema.properties.conditions.description}`,
    );
  });

  it("that is a name shows it as text, whatever is in it", async () => {
    const draft = workspace.uri("key-markup.install.yaml");
    editor.open(draft, "conditions:\n  - { id: A, loads: { '[x](command:y)': run } }\n");
    expect(await hoverAt(draft, "[x](command:y)")).toContain("**\\[x\\](command:y)**: ");
  });

  it("that the schemas don't know tells nothing", async () => {
    const draft = workspace.uri("unknown-key.install.yaml");
    editor.open(draft, "document:\n  nonsense: 4\n");
    expect(await hoverAt(draft, "nonsense")).toBeNull();
  });
});

describe("on the gauge of a wire", () => {
  const gauge = "8 AWG\n    length: 14.5 ft";

  it("shows each value with its limit and its margin, the least first", async () => {
    const rows = rowsOf((await hoverAt(install, gauge, "8 AWG"))!);
    const { value, limit, unit, margin } = worksheet.margins.find(
      ({ rule, subject }) => rule === "wire-voltage-drop" && subject === "component CHILLER",
    )!;
    expect(rows).toContainEqual(
      expect.arrayContaining([
        expect.stringMatching(/^path drop, CHILLER/),
        showMeasure(value, unit),
        `≤ ${showMeasure(limit, unit)}`,
        `${Math.floor(margin * 100 + 1e-9)} %`,
      ]),
    );
    // A gauge is thicker the lower its number is: a sign would read the wrong way round.
    expect(rows).toContainEqual(["wire gauge, P102A8", "8 AWG", "22 AWG", "thinnest gauge", ""]);
    const margins = rows
      .map((row) => row.at(-1)!)
      .filter((margin) => margin !== "")
      .map(Number.parseFloat);
    expect(margins.length).toBeGreaterThan(2);
    expect(margins).toEqual(margins.toSorted((a, b) => a - b));
  });

  it("shows the formula, the numbers in it, the inputs and the published source", async () => {
    const shown = plain((await hoverAt(install, gauge, "8 AWG"))!);
    const drop = worked("component CHILLER", "path-drop", "survey");
    const terms = drop.inputs.map(({ value, unit }) => showMeasure(value, unit));
    expect(terms).toHaveLength(3); // two wires and a contactor
    expect(shown).toContain("\n  = Σ(V)\n");
    expect(shown).toContain(`\n  = ${terms.join(" + ")}\n`);
    expect(shown).toContain(`\n  = ${showMeasure(drop.value, drop.unit)}\n`);
    for (const { symbol, name, value, unit } of worked("wire P102A8", "wire-drop", "survey").inputs) {
      expect(shown).toMatch(new RegExp(`^ +${symbol} +${showMeasure(value, unit)} +${name}`, "m"));
    }
    for (const part of ["FAA AC 43.13-1B", "9/8/98, Change 1 of 9/27/01", "Table 11-9"]) {
      expect(shown.split(/^Sources?\b/m)[1]).toContain(part);
    }
  });

  it("marks the whole value and nothing else", async () => {
    const place = editor.placeOf(install, gauge);
    const hover = await editor.hover(install, place);
    expect(hover?.range).toEqual({
      start: { ...place, character: place.character - 1 },
      end: { ...place, character: place.character + 4 },
    });
  });

  it("marks what fails", async () => {
    const uri = workspace.uri(planted);
    editor.open(uri, workspace.read(planted));
    const rows = rowsOf((await hoverAt(uri, "12 AWG\n    length: 14.5 ft", "12 AWG"))!);
    const drop = rows.find(([name]) => name!.includes("path drop, CHILLER"))!;
    expect(drop[0]).toMatch(/^\*\*\S+\*\* /);
    expect(drop.at(-1)).toMatch(/^-\d+ %$/);
    expect(rows.some(([name]) => !name!.startsWith("**"))).toBe(true);
  });

  it("tells the results first, then what was tried, then how it was calculated", async () => {
    const uri = workspace.uri(planted);
    editor.open(uri, workspace.read(planted));
    const shown = (await hoverAt(uri, "12 AWG\n    length: 14.5 ft", "12 AWG"))!;
    const places = ["**fails:**", "**Tried:**", "```text"].map((part) => shown.indexOf(part));
    expect(places).not.toContain(-1);
    expect(places).toEqual(places.toSorted((a, b) => a - b));
    expect(shown.startsWith("|")).toBe(true);
  });

  it("follows the text as it is typed", async () => {
    const draft = workspace.uri("draft.install.yaml");
    editor.open(draft, workspace.read(demo.clean));
    const arm = "arm: 121.0 in";
    const now = arm.replace("121.0", "125.0");
    editor.change(draft, [arm, now]);
    const shown = plain((await hoverAt(draft, now, "125.0 in"))!);
    // The rack weighs 31.2 lb.
    expect(shown).toContain("31.2 lb × 125 in");
    expect(shown).toContain(showMeasure(31.2 * 125, "lb in"));
  });
});

it("on the name of a component, marks each condition in which it gets too little", async () => {
  const draft = workspace.uri("thin.install.yaml");
  const thin = (awg: number) => `to: RACK\n    gauge: ${awg} AWG`;
  editor.open(draft, workspace.read(demo.clean));
  const marked = async (awg: number) =>
    rowsOf((await hoverAt(draft, thin(awg), "RACK"))!)
      .flat()
      .filter((cell) => / V, \*\*below /.test(cell));
  expect(await marked(10)).toEqual([]);
  editor.change(draft, [thin(10), thin(20)]);
  const cells = await marked(20);
  expect(cells.length).toBeGreaterThan(0);
  for (const cell of cells) {
    // The kit: RACK works from 24 V.
    expect(cell).toMatch(/ V, \*\*below 24 V\*\*$/);
    expect(Number.parseFloat(cell)).toBeLessThan(24);
  }
});

describe("in the kit", () => {
  it("on a draw, shows what comes of it in the install record that is open", async () => {
    const kit = workspace.uri(demo.kit);
    editor.open(kit, workspace.read(demo.kit));
    await editor.diagnostics(kit);
    const shown = plain((await hoverAt(kit, "power: 1100 W", "1100 W"))!);
    expect(shown).toContain(`In ${demo.clean}:`);
    const drop = worked("component CHILLER", "path-drop", "survey");
    expect(shown).toContain(`| path drop, CHILLER, survey | ${showMeasure(drop.value, drop.unit)} | ≤ `);
    const voltage = worked("component CHILLER", "load-current", "survey").inputs.find(
      ({ unit }) => unit === "V",
    )!;
    expect(shown).toContain(`= 1100 W / ${showMeasure(voltage.value, voltage.unit)}\n`);
  });

  it("shows nothing of an install record that is not open", async () => {
    const alone = await Editor.start({ folders: [workspace.uri("")] });
    const kit = workspace.uri(demo.kit);
    alone.open(kit, workspace.read(demo.kit));
    expect(await alone.hover(kit, alone.placeOf(kit, "1100 W"))).toBeNull();
  });
});

describe("on what takes part in no calculation", () => {
  it.each([
    { what: "a title", text: "Survey rack QSR-60 in B9-0417" },
    { what: "a status", text: "draft" },
    { what: "a purpose", text: "Inlet of the cooling air" },
    { what: "a comment", text: "# Feeders run forward to aft" },
  ])("$what: nothing", async ({ text }) => {
    expect(await hoverAt(install, text)).toBeNull();
  });

  it.each([
    { what: "an empty line", position: { line: 6, character: 0 } },
    { what: "far behind a line's end", position: { line: 6, character: 900 } },
    { what: "far behind the text's end", position: { line: 90_000, character: 0 } },
  ])("$what: nothing", async ({ position }) => {
    expect(await editor.hover(install, position)).toBeNull();
  });
});

it("never lets a record's text act as markup", async () => {
  const hostile =
    "`](command:workbench.action.quit) <img src=x> | ``` ~~~ *b* _i_ &amp; #1 ![x](http://x.invalid)";
  const draft = workspace.uri("hostile.install.yaml");
  editor.open(
    draft,
    workspace.read(demo.clean).replaceAll(/(?<=id: |^ *)P102A8$/gm, JSON.stringify(hostile)),
  );
  expect(editor.textOf(draft)).toContain(hostile);
  const shown = (await hoverAt(draft, "8 AWG\n    length: 14.5 ft", "8 AWG"))!;
  expect(plain(shown)).toContain("img src=x");
  const [before, ...code] = shown.split("```");
  // One block of code, which nothing in it ends early.
  expect(code).toHaveLength(2);
  for (const text of [before!, code[1]!]) {
    expect(text.replace(/\\[^\w\s]/g, "")).not.toMatch(/[`<>[\]&]/);
  }
  const cells = rowsOf(shown).map((row) => row.length);
  expect(new Set(cells).size).toBe(1);
});
