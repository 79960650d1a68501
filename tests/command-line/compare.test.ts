/**
 * A review of the demo in a git repository: one record is only put in another order, one only in other units, and
 * one gets a wire that is too thin.
 */
import MarkdownIt from "markdown-it";
import { type DefaultTreeAdapterTypes, type ParserError, parse as parseHtml } from "parse5";
import { beforeAll, describe, expect, it } from "vitest";
import { tailconeHere } from "../support/command-here";
import { run, tailcone } from "../support/command-line";
import { GitRepository } from "../support/git";
import { once } from "../support/once";
import { programs } from "../support/programs";
import { demo, demoRecords, replaceOnce, Workspace } from "../support/workspace";

const records = demoRecords();
const clean = records[demo.clean]!;
const linked = { [demo.airframe]: records[demo.airframe]!, [demo.kit]: records[demo.kit]! };

const names = { order: "order.install.yaml", units: "units.install.yaml", fault: "fault.install.yaml" };

/** The list of bonds before everything else, and the wires of it in another order. */
const reordered = (() => {
  const bonds = clean.slice(clean.indexOf("bonds:"), clean.indexOf("spares:"));
  const start = clean.indexOf("  - id: P101A10");
  const middle = clean.indexOf("  - id: P102A8");
  const end = clean.indexOf("  - id: P103A16");
  const swapped =
    clean.slice(0, start) + clean.slice(middle, end) + clean.slice(start, middle) + clean.slice(end);
  return bonds + replaceOnce(swapped, bonds, "");
})();
const converted = replaceOnce(
  replaceOnce(clean, "length: 14.5 ft", "length: 174 in"),
  "arm: 142.0 ± 0.5 in",
  "arm: 3.6068 ± 0.0127 m",
);
const faulty = replaceOnce(clean, "gauge: 8 AWG\n    length: 14.5 ft", "gauge: 12 AWG\n    length: 14.5 ft");

let repository: GitRepository;
let base: string;
let folder: string;

beforeAll(() => {
  const workspace = new Workspace({
    ...linked,
    ...Object.fromEntries(Object.values(names).map((name) => [name, clean])),
  });
  repository = new GitRepository(workspace);
  base = repository.commit("Base");
  workspace.write(names.order, reordered);
  workspace.write(names.units, converted);
  workspace.write(names.fault, faulty);
  repository.commit("Head");
  folder = workspace.folder;
});

const compare = (...args: readonly string[]) => tailcone(["compare", ...args], folder);

/** What the two revisions are compared to, as text on the output and in each other form in a file. */
const inEveryForm = once(async () => {
  const shelf = new Workspace();
  const forms = ["json", "markdown", "html"] as const;
  const reports = forms.flatMap((form) => ["--report", `${form}:${shelf.path(form)}`]);
  const outcome = await compare("--git", "HEAD~1..HEAD", "--report", "text", ...reports);
  const [json, markdown, html] = forms.map((form) => shelf.read(form)) as [string, string, string];
  return { ...outcome, json, markdown, html };
});

interface Side {
  readonly margin: number;
  readonly holds: boolean;
}

interface Compared {
  readonly files: readonly {
    readonly path: string;
    readonly changes: readonly { readonly field: string }[];
  }[];
  readonly records: readonly {
    readonly path: string;
    readonly findings: { readonly appeared: readonly { rule: string }[]; readonly gone: readonly unknown[] };
    readonly values: readonly { subject: string; quantity: string; before: number; after: number }[];
    readonly margins: readonly { rule: string; subject: string; before: Side; after: Side }[];
    readonly worst: { readonly before: readonly Side[]; readonly after: readonly Side[] };
  }[];
}

describe("the comparison of two revisions", () => {
  let compared: Compared;

  beforeAll(async () => {
    compared = JSON.parse((await inEveryForm()).json);
  });

  it("shows the one real change, and neither order nor units", () => {
    expect(compared.files).toEqual([
      {
        path: names.fault,
        status: "changed",
        changes: [{ field: "wires[P102A8].gauge", before: "8 AWG", after: "12 AWG" }],
      },
    ]);
  });

  it("finds nothing that follows from another order or other units", () => {
    for (const name of [names.order, names.units]) {
      const { findings, values, margins } = compared.records.find(({ path }) => path === name)!;
      expect({ name, appeared: findings.appeared, gone: findings.gone, values, margins }).toEqual({
        name,
        appeared: [],
        gone: [],
        values: [],
        margins: [],
      });
    }
  });

  it("shows what follows from the change: findings, values with old and new, margins", () => {
    const { findings, values, margins, worst } = compared.records.find(({ path }) => path === names.fault)!;
    const rules = findings.appeared.map(({ rule }) => rule);
    for (const rule of ["protection-above-wire", "wire-over-ampacity", "wire-voltage-drop"]) {
      expect(rules).toContain(rule);
    }
    expect(findings.gone).toEqual([]);
    const drop = values.find(
      ({ subject, quantity }) => subject === "wire P102A8" && quantity === "wire-resistance",
    );
    expect(drop!.after).toBeGreaterThan(2 * drop!.before);
    const margin = margins.find(
      ({ rule, subject }) => rule === "wire-voltage-drop" && subject === "component CHILLER",
    )!;
    expect(margin.before).toMatchObject({ holds: true });
    expect(margin.after).toMatchObject({ holds: false });
    expect(margin.after.margin).toBeLessThan(0);
    expect(worst.after[0]!.margin).toBeLessThan(worst.before[0]!.margin);
  });

  it("is the same against the work tree, from where two parted, and between folders", async () => {
    const comparable = ({ files, records: found }: Compared) => ({ files, records: found });
    const before = new Workspace({
      ...linked,
      ...Object.fromEntries(Object.values(names).map((name) => [name, clean])),
    });
    for (const args of [
      ["--git", base],
      ["--git", `${base}...`],
      [before.folder, folder],
    ]) {
      const { stdout } = await tailconeHere(["compare", ...args, "--report", "json"], folder);
      expect(comparable(JSON.parse(stdout))).toEqual(comparable(compared));
    }
  });
});

describe("every form", () => {
  it("text fits a terminal and shows the change first", async () => {
    const { code, stdout } = await inEveryForm();
    expect(code).toBe(0);
    expect(stdout.split("\n").filter((line) => line.length > 80)).toEqual([]);
    expect(stdout.indexOf("wires[P102A8].gauge: 8 AWG -> 12 AWG")).toBeGreaterThan(0);
    expect(stdout.indexOf("wires[P102A8].gauge")).toBeLessThan(stdout.indexOf("new error wire-voltage-drop"));
    await expect(withoutCommits(stdout)).toMatchFileSnapshot("snapshots/comparison.text.snap");
  });

  it("markdown", async () => {
    const { markdown } = await inEveryForm();
    await expect(withoutCommits(markdown)).toMatchFileSnapshot("snapshots/comparison.markdown.snap");
    const html = new MarkdownIt({ html: true, linkify: true }).render(markdown);
    expect(html).toContain("<td><code>wires[P102A8].gauge</code></td>");
    expect(html).toContain("<code>wire-voltage-drop</code>");
  });

  it("html", async () => {
    const { html } = await inEveryForm();
    expect(html).toContain("default-src 'none'");
    expect(html).not.toMatch(/<script|<link|<img|src=|href=/);
    expect(html).toContain('<td class="name">wires[P102A8].gauge</td><td>8 AWG</td><td>12 AWG</td>');
    expect(elementsOf(html)).toContain("table");
  });

  it("asks git for each text once, though both revisions have it", async () => {
    const shelf = new Workspace();
    const traced = [`GIT_TRACE=${shelf.path("trace")}`, process.execPath, programs.commandLine];
    const { code } = await run("env", [...traced, "compare", "--git", "HEAD~1..HEAD"], folder);
    expect(code).toBe(0);
    const texts = [...shelf.read("trace").matchAll(/cat-file blob [0-9a-f]+/g)].map(([text]) => text);
    // The airframe, the kit, the record as all three were, and each as it is now.
    expect(texts.toSorted()).toEqual([...new Set(texts)].toSorted());
    expect(texts).toHaveLength(6);
  });

  it("nothing changed is said", async () => {
    const { stdout, code } = await compare("--git", "HEAD..HEAD", "--fail-on", "information");
    expect(code).toBe(0);
    expect(stdout).toContain("The records say the same.");
  });

  it("only order and units are said to be no change", async () => {
    const { stdout } = await compare("--git", "HEAD~1..HEAD", names.order, names.units);
    expect(stdout).toContain("Only units, order or comments differ");
  });
});

/** The short names of commits are others each time. */
function withoutCommits(text: string): string {
  return text.replace(/\b[0-9a-f]{10}\b/g, "COMMIT");
}

describe("the gate", () => {
  it.each([
    { args: ["--fail-on", "error"], code: 1 },
    { args: ["--fail-on", "error", "order.install.yaml", "units.install.yaml"], code: 0 },
    {
      args: [
        "--severity",
        "wire-voltage-drop=warning",
        "--severity",
        "protection-above-wire=off",
        "--severity",
        "wire-over-ampacity=information",
        "--fail-on",
        "error",
      ],
      code: 0,
    },
    { args: ["--margin-floor", "wire-voltage-drop=1%", "order.install.yaml"], code: 0 },
    { args: ["--margin-floor", "wire-voltage-drop=99%", "order.install.yaml"], code: 1 },
    { args: ["--margin-erosion", "wire-voltage-drop=20%"], code: 1 },
    { args: ["--margin-erosion", "wire-voltage-drop=20%", "units.install.yaml"], code: 0 },
    { args: ["--margin-erosion", "cg-aft-of-limit=20%"], code: 0 },
  ])("compare $args gives $code", async ({ args, code }) => {
    const outcome = await tailconeHere(["compare", "--git", "HEAD~1..HEAD", ...args], folder);
    expect({ code: outcome.code, stderr: outcome.stderr }).toEqual({ code, stderr: "" });
  });

  it.each([
    { args: ["--base", "HEAD~1"], code: 1, knows: 0 },
    { args: ["--base", "HEAD"], code: 0, knows: 2 },
    { args: ["--base", "HEAD~1", names.order, names.units], code: 0, knows: 0 },
    { args: ["--changed-since", "HEAD"], code: 0, knows: 0 },
    { args: ["--changed-since", "HEAD~1"], code: 1, knows: 0 },
    { args: ["--base", "HEAD", "--margin-erosion", "1%"], code: 0, knows: 2 },
  ])("check $args gives $code", async ({ args, code, knows }) => {
    const outcome = await tailcone(["check", "--brief", ...args], folder);
    expect({ code: outcome.code, stderr: outcome.stderr }).toEqual({ code, stderr: "" });
    if (knows > 0) expect(outcome.stdout).toMatch(/[1-9]\d* findings? known before/);
    else expect(outcome.stdout).not.toContain("known before");
  });

  it("a change of a kit reaches the records that name it", async () => {
    repository.workspace.write(demo.kit, `${linked[demo.kit]}# a word more\n`);
    const { stdout } = await tailcone(["check", "--brief", "--changed-since", "HEAD"], folder);
    repository.workspace.write(demo.kit, linked[demo.kit]!);
    expect(stdout).toMatch(/^4 records checked/m);
  });

  it("a baseline knows what it lists, by record, rule and field, and says what is gone", async () => {
    const checked = (...args: readonly string[]) => tailconeHere(["check", "--brief", ...args], folder);
    expect((await checked()).code).toBe(1);
    expect((await checked("--write-baseline", "known.json")).code).toBe(0);
    const known = await checked("--baseline", "known.json");
    expect({ code: known.code, stderr: known.stderr }).toEqual({ code: 0, stderr: "" });
    repository.workspace.write(names.fault, `# two\n# lines\n${faulty}`);
    expect((await checked("--baseline", "known.json")).code).toBe(0);
    repository.workspace.write(
      names.fault,
      faulty.replace("gauge: 16 AWG\n    length: 4 ft", "gauge: 24 AWG\n    length: 4 ft"),
    );
    expect((await checked("--baseline", "known.json")).code).toBe(1);
    repository.workspace.write(names.fault, clean);
    const mended = await checked("--baseline", "known.json");
    expect(mended.code).toBe(0);
    expect(mended.stderr).toMatch(/\d+ findings of the baseline are gone/);
    repository.workspace.write(names.fault, faulty);
  });
});

describe("what can't be compared gives 2", () => {
  it.each([
    { args: ["--git", "no-such-revision"], says: "no-such-revision" },
    { args: ["--git=--output=/tmp/x..HEAD"], says: "--output=/tmp/x" },
    { args: ["--git", "$(touch x)..HEAD"], says: "$(touch x)" },
    { args: [demo.clean], says: "two files" },
    { args: ["nowhere", "."], says: "nowhere" },
    { args: [".", names.order], says: "is a file" },
    { args: [names.order, names.units, "--report", "sarif"], says: "markdown" },
  ])("$args", async ({ args, says }) => {
    const { code, stdout, stderr } = await compare(...args);
    expect({ code, stdout }).toEqual({ code: 2, stdout: "" });
    expect(stderr).toContain(says);
    expect(stderr).not.toContain("fault of the tool");
  });
});

describe("hostile text in a comparison", () => {
  const hostile =
    "<img src=x onerror=alert(1)> [x](http://a.example) @all #1 !2 | `c` **b** www.a.example a@b.example &lt; \\u202e";
  let page: Record<string, string>;

  beforeAll(async () => {
    const workspace = new Workspace({
      ...linked,
      "a.install.yaml": clean,
      "b.install.yaml": replaceOnce(
        clean.replaceAll("K-CHILLER", `"${hostile}"`),
        "title: Survey rack QSR-60 in B9-0417",
        `title: "${hostile}"`,
      ).replace("gauge: 8 AWG\n", "gauge: 16 AWG\n"),
    });
    const outcome = await tailcone(
      ["compare", "a.install.yaml", "b.install.yaml", "--report", "markdown:m", "--report", "html:h"],
      workspace.folder,
    );
    expect(outcome).toMatchObject({ code: 0, stderr: "" });
    page = { markdown: workspace.read("m"), html: workspace.read("h") };
  });

  it("is only text in Markdown, as a general renderer has it", () => {
    const html = new MarkdownIt({ html: true, linkify: true }).render(page.markdown!);
    const tags = new Set([...html.matchAll(/<([a-z0-9]+)/g)].map(([, tag]) => tag));
    for (const tag of ["img", "a", "strong b", "script"]) expect(tags).not.toContain(tag);
    const rows = [...html.matchAll(/<tr>(.*?)<\/tr>/gs)].map(([row]) => row.split(/<t[dh]>/).length - 1);
    expect(new Set(rows)).toEqual(new Set([3, 4]));
    // Nobody is called and nothing is named by it outside of code, where forges look for neither.
    const prose = html.replace(/<code>.*?<\/code>/gs, "");
    expect(prose).not.toMatch(/[@#!](?=\w)(?!x)/);
  });

  it("is only text in HTML, as a parser by the standard has it", () => {
    const elements = new Set(elementsOf(page.html!));
    for (const element of ["img", "a", "script"]) expect(elements).not.toContain(element);
    expect(page.html).not.toMatch(/<img|<a |onerror=alert\(1\)>/);
    expect(page.html).toContain("&lt;img src=x onerror=alert(1)&gt;");
  });
});

/** Names of all elements of a page, in its order; the standard's parser must have nothing against it. */
function elementsOf(html: string): string[] {
  const errors: ParserError[] = [];
  const page = parseHtml(html, { onParseError: (error) => errors.push(error) });
  expect(errors).toEqual([]);
  const within = (node: DefaultTreeAdapterTypes.Node): string[] =>
    "childNodes" in node ? [node.nodeName, ...node.childNodes.flatMap(within)] : [];
  return within(page);
}
