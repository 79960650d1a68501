import { describe, expect, it } from "vitest";
import { rulesOf } from "../support/comparison";
import { Editor, type EditorOptions } from "../support/editor";
import { planted, plantedWorkspace } from "../support/workspace";

const rule = "key-unknown";

async function openDemo(options: EditorOptions) {
  const workspace = plantedWorkspace();
  const editor = await Editor.start({ folders: [workspace.uri("")], ...options });
  const uri = workspace.uri(planted);
  editor.open(uri, workspace.read(planted));
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
      await (await openDemo(options)).severity(1);
    }
  });

  it("are asked for, and asked for again when they change", async () => {
    const { editor, uri, severity } = await openDemo({ settings: { severity: { [rule]: "warning" } } });
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
    const { editor, severity } = await openDemo({
      initializationOptions: { severity: { [rule]: "warning" } },
    });
    await severity(2);
    editor.configure({ severity: { [rule]: "off" } });
    await severity(undefined);
    editor.configure({});
    await severity(1);
  });

  it("decide what is mended too: a rule that is off is no obstacle", async () => {
    const { editor, uri, severity } = await openDemo({ settings: { severity: { [rule]: "off" } } });
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

  it.each(senseless.map((settings) => ({ settings })))(
    "$settings leaves all as it is",
    async ({ settings }) => {
      const sound = await openDemo({ settings: {} });
      const expected = await sound.severity(1);
      const odd = await openDemo({ settings });
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
      const { severity } = await openDemo({ initializationOptions: options });
      await severity(1);
    },
  );
});

it("tells the status of a record to an editor that wants it, and to no other", async () => {
  const wants = await openDemo({ initializationOptions: { status: true } });
  await wants.severity(1);
  await wants.editor.quiet();
  expect(wants.editor.received("tailcone/status").at(-1)).toMatchObject({
    uri: wants.uri,
    counts: { error: expect.any(Number), warning: expect.any(Number), information: expect.any(Number) },
    linked: [expect.stringMatching(/airframe\.yaml$/), expect.stringMatching(/kit\.yaml$/)],
    milliseconds: expect.any(Number),
  });
  const other = await openDemo({});
  await other.severity(1);
  await other.editor.quiet();
  expect(other.editor.received("tailcone/status")).toEqual([]);
});
