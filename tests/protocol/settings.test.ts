import { beforeAll, describe, expect, it } from "vitest";
import type { Diagnostic } from "vscode-languageserver";
import { circuitExample } from "../../server/src/core/rules/wires/circuit-example";
import { rulesOf } from "../support/comparison";
import { Editor, type EditorOptions } from "../support/editor";
import { planted, plantedText, plantedWorkspace, replaceOnce, Workspace } from "../support/workspace";

const rule = "key-unknown";

/** A small record with a key that is none, a wire that is too thin, and what follows from it. */
const slipped = replaceOnce(circuitExample({ gauge: "22 AWG" }), "altitude: ", "altitud: ");

async function openSlipped(options: EditorOptions) {
  return openRecord(new Workspace(), "slipped.install.yaml", slipped, options);
}

async function openRecord(workspace: Workspace, name: string, text: string, options: EditorOptions) {
  const editor = await Editor.start({ folders: [workspace.uri("")], ...options });
  const uri = workspace.uri(name);
  editor.open(uri, text);
  const severity = (wanted: number | undefined) =>
    editor.diagnosticsWhen(
      uri,
      ({ diagnostics }) => diagnostics.find(({ code }) => code === rule)?.severity === wanted,
      `${rule} with severity ${wanted}`,
    );
  return { editor, uri, severity };
}

describe("severities", () => {
  it("of the rules themselves hold where nothing is set", async () => {
    for (const options of [{}, { settings: {} }, { settings: { severity: {} } }]) {
      await (await openSlipped(options)).severity(1);
    }
  });

  it("are asked for, and asked for again when they change", async () => {
    const { editor, uri, severity } = await openSlipped({ settings: { severity: { [rule]: "warning" } } });
    await severity(2);
    const count = editor.lastOf(uri)!.diagnostics.length;
    editor.configure({ severity: { [rule]: "information" } });
    await severity(3);
    editor.configure({ severity: { [rule]: "off" } });
    await severity(undefined);
    expect(editor.lastOf(uri)!.diagnostics).toHaveLength(count - 1);
    editor.configure({});
    await severity(1);
    expect(editor.lastOf(uri)).toMatchObject({ version: 1 });
  });

  it("come with the greeting, and with each change, where the editor can't be asked", async () => {
    const { editor, severity } = await openSlipped({
      initializationOptions: { severity: { [rule]: "warning" } },
    });
    await severity(2);
    editor.configure({ severity: { [rule]: "off" } });
    await severity(undefined);
    editor.configure({});
    await severity(1);
  });

  it("decide what is mended too: a rule that is off is no obstacle", async () => {
    const { editor, uri, severity } = await openSlipped({ settings: { severity: { [rule]: "off" } } });
    await severity(undefined);
    const drop = editor.lastOf(uri)!.diagnostics.find(({ code }) => code === "wire-voltage-drop")!;
    expect(await editor.actions(uri, drop.range)).not.toEqual([]);
  });
});

describe("settings that make no sense", () => {
  const senseless = [
    null,
    7,
    "warning",
    [],
    { severity: null },
    { severity: "off" },
    { severity: ["off"] },
    { severity: { [rule]: "loud" } },
    { severity: { [rule]: null } },
    { severity: { [rule]: 3 } },
    { severity: { [rule]: ["off"] } },
    { severity: { "no-such-rule": "off", "": "off", __proto__: "off" } },
  ];

  let expected: readonly Diagnostic[];

  beforeAll(async () => {
    const sound = await openSlipped({ settings: {} });
    expected = await sound.severity(1);
    await sound.editor.kill();
    expect(new Set(expected.map(({ severity }) => severity)).size, "one alone would prove little").toBe(3);
  });

  it.each(senseless.map((settings) => ({ settings })))(
    "$settings leaves all as it is",
    async ({ settings }) => {
      const odd = await openSlipped({ settings });
      await odd.editor.diagnostics(odd.uri);
      await odd.editor.quiet();
      expect(odd.editor.lastOf(odd.uri)!.diagnostics.map(({ severity }) => severity)).toEqual(
        expected.map(({ severity }) => severity),
      );
      expect(rulesOf(odd.editor.lastOf(odd.uri)!.diagnostics)).toEqual(rulesOf(expected));
    },
  );

  it.each([null, 7, "x", { status: 7, severity: 7 }])(
    "greeting with the options %j is answered",
    async (options) => {
      const { severity } = await openSlipped({ initializationOptions: options });
      await severity(1);
    },
  );
});

function openPlanted(options: EditorOptions) {
  return openRecord(plantedWorkspace(), planted, plantedText(), options);
}

it("tells the status of a record to an editor that wants it, and to no other", async () => {
  const wants = await openPlanted({ initializationOptions: { status: true } });
  await wants.severity(1);
  await wants.editor.quiet();
  expect(wants.editor.received("tailcone/status").at(-1)).toMatchObject({
    uri: wants.uri,
    counts: { error: expect.any(Number), warning: expect.any(Number), information: expect.any(Number) },
    linked: [expect.stringMatching(/airframe\.yaml$/), expect.stringMatching(/kit\.yaml$/)],
    milliseconds: expect.any(Number),
  });
  const other = await openPlanted({});
  await other.severity(1);
  await other.editor.quiet();
  expect(other.editor.received("tailcone/status")).toEqual([]);
});
