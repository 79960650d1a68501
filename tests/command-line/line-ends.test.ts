/** The same record with other line breaks, or with a byte order mark, is the same record. */
import { describe, expect, it } from "vitest";
import { findingsOf, report, tailcone, tailconeOnDemo } from "../support/command-line";
import { demo, demoRecords, demoWorkspace, Workspace } from "../support/workspace";

const forms = [
  { form: "CRLF", convert: (text: string) => text.replaceAll("\n", "\r\n") },
  { form: "lone CR", convert: (text: string) => text.replaceAll("\n", "\r") },
  { form: "a byte order mark", convert: (text: string) => `\uFEFF${text}` },
  { form: "a byte order mark and CRLF", convert: (text: string) => `\uFEFF${text.replaceAll("\n", "\r\n")}` },
  { form: "no line break at the end", convert: (text: string) => text.trimEnd() },
];

describe.each(forms)("$form", ({ convert }) => {
  const converted = () =>
    demoWorkspace(
      Object.fromEntries(Object.entries(demoRecords()).map(([name, text]) => [name, convert(text)])),
    );

  it.each([
    {
      same: "the findings, at the same places",
      args: ["check", "--report", "json", demo.clean, demo.faulty],
    },
    { same: "the worksheet", args: ["worksheet", "--report", "json", demo.clean] },
  ])("$same", async ({ args }) => {
    const plain = await tailconeOnDemo(...args);
    expect(plain.stdout).toMatch(/^\{/);
    expect(await tailcone(args, converted().folder)).toEqual(plain);
  });

  it("a fault in the first line stands where an editor shows it", async () => {
    const text = "documnet: { number: HM-0412, revision: A, status: draft }\n";
    const found = findingsOf(await report(["."], new Workspace({ "x.install.yaml": convert(text) }).folder));
    const slip = found.find(({ rule }) => rule === "key-unknown")!;
    expect([slip.start, slip.end]).toEqual([
      { line: 1, column: 1 },
      { line: 1, column: 9 },
    ]);
  });
});

it.each(["", "\uFEFF", "\n", "---\n", "# only a comment\n"])(
  "an empty record %j is read and lacks its keys",
  async (text) => {
    const found = findingsOf(await report(["."], new Workspace({ "x.kit.yaml": text }).folder));
    expect(new Set(found.map(({ rule }) => rule))).toEqual(new Set(["key-missing"]));
  },
);
