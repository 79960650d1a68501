/** Editor and command line say the same of every record: both run as users run them, on the same folder. */
import { beforeAll, describe, expect, it } from "vitest";
import type { Diagnostic } from "vscode-languageserver";
import { type ReportedFinding, report } from "./support/command-line";
import { ofEditor, ofReport } from "./support/comparison";
import { Editor } from "./support/editor";
import { exampleFiles, exampleFolders } from "./support/examples";
import { demoRecords, Workspace } from "./support/workspace";

const records = Object.entries(demoRecords());

/** By path in the workspace. */
const texts: Readonly<Record<string, string>> = {
  ...Object.fromEntries(records.map(([name, text]) => [`demo/${name}`, text])),
  ...Object.fromEntries(records.map(([name, text]) => [`crlf/${name}`, text.replaceAll("\n", "\r\n")])),
  ...exampleFiles(),
};

const reported = new Map<string, readonly ReportedFinding[]>();
const shown = new Map<string, readonly Diagnostic[]>();

beforeAll(async () => {
  const workspace = new Workspace(texts);
  for (const { path, findings } of (await report(["."], workspace.folder)).files)
    reported.set(path, findings);
  const editor = await Editor.start({
    folders: [workspace.uri("")],
    initializationOptions: { checkWorkspace: false },
  });
  // Each is closed again: a record is judged as it is on disk, as the command line judges it.
  for (const [path, text] of Object.entries(texts)) {
    editor.open(workspace.uri(path), text);
    shown.set(path, await editor.diagnostics(workspace.uri(path)));
    editor.close(workspace.uri(path));
  }
}, 120_000);

it("both look at every record", () => {
  expect([...reported.keys()].sort()).toEqual(Object.keys(texts).sort());
  expect([...shown.keys()].sort()).toEqual(Object.keys(texts).sort());
});

describe("rule, severity, range and words are the same", () => {
  it.each(Object.keys(texts))("%s", (path) => {
    expect(shown.get(path)!.map(ofEditor)).toEqual(
      reported.get(path)!.map((finding) => ofReport(finding, texts[path]!)),
    );
  });
});

it("and there is something to compare: each rule's examples bring it up, in the editor too", () => {
  const withFindings = exampleFolders.filter(({ finds }) => finds > 0);
  expect(withFindings.length).toBeGreaterThan(50);
  for (const { folder, record, rule, finds } of withFindings) {
    const own = shown.get(`${folder}/${record}`)!.filter(({ code }) => code === rule);
    expect({ folder, finds: own.length }).toEqual({ folder, finds });
  }
});
