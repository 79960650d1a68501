/** A server that has seen a long session says what one says that has just been started. */
import { expect, it } from "vitest";
import type { CodeAction, Diagnostic, DocumentSymbol, Hover } from "vscode-languageserver";
import { type Change, Editor } from "../support/editor";
import { demo, demoWorkspace } from "../support/workspace";

const workspace = demoWorkspace();
const uris = {
  airframe: workspace.uri(demo.airframe),
  kit: workspace.uri(demo.kit),
  install: workspace.uri(demo.clean),
};

/** Edits one after the other, each of the text that the ones before it left. */
const steps: readonly {
  readonly what: string;
  readonly in: keyof typeof uris;
  readonly changes: readonly Change[];
}[] = [
  { what: "a gauge", in: "install", changes: [["gauge: 8 AWG\n    length", "gauge: 12 AWG\n    length"]] },
  {
    what: "a line that moves all others",
    in: "install",
    changes: [["document:\n", "# Draft\n\ndocument:\n"]],
  },
  { what: "a line that moves all others, in the kit", in: "kit", changes: [["kit:\n", "\n# Draft\nkit:\n"]] },
  { what: "a draw in the kit", in: "kit", changes: [["1100 W", "1900 W"]] },
  { what: "an id in the kit", in: "kit", changes: [["- id: FANS", "- id: FAN"]] },
  { what: "the voltage of the airframe", in: "airframe", changes: [["nominal: 28 V", "nominal: 14 V"]] },
  {
    what: "a condition taken out",
    in: "install",
    changes: [["    ambient: 45 degC\n    engine-speed: 1000 rpm\n", ""]],
  },
  {
    what: "a half-typed entry",
    in: "install",
    changes: [["  - { equipment: aft-belts }", "  - { equipment: aft-"]],
  },
  {
    what: "the entry mended",
    in: "install",
    changes: [["  - { equipment: aft-\n", "  - { equipment: aft-belts }\n"]],
  },
  {
    what: "two wires that change places",
    in: "install",
    changes: [
      ["id: P101B10N, from: RACK", "id: X"],
      ["id: P102B8N, from: CHILLER", "id: P101B10N, from: RACK"],
      ["id: X", "id: P102B8N, from: CHILLER"],
    ],
  },
  { what: "the id back", in: "kit", changes: [["- id: FAN\n", "- id: FANS\n"]] },
  {
    what: "an opening moved onto another",
    in: "install",
    changes: [["at: { x: 6 in, y: -2 in }", "at: { x: -5 in, y: 1 in }"]],
  },
  {
    what: "an arm",
    in: "install",
    changes: [["arm: 142.0 ± 0.5 in", "arm: 215.0 in"]],
  },
  { what: "a limit of the airframe", in: "airframe", changes: [["takeoff: 3800 lb", "takeoff: 3200 lb"]] },
  { what: "the kit without its head", in: "kit", changes: [["  number: QSR-60\n", ""]] },
  { what: "another kit named", in: "install", changes: [[`kit: ${demo.kit}`, "kit: no.kit.yaml"]] },
  { what: "the kit named again", in: "install", changes: [["kit: no.kit.yaml", `kit: ${demo.kit}`]] },
  {
    what: "the gauge and the draw back",
    in: "install",
    changes: [["gauge: 12 AWG\n    length", "gauge: 8 AWG\n    length"]],
  },
];

interface Picture {
  readonly diagnostics: readonly (readonly Diagnostic[] | undefined)[];
  readonly symbols: readonly (DocumentSymbol[] | null)[];
  readonly hovers: readonly (Hover | null)[];
  readonly actions: readonly Pick<CodeAction, "title" | "diagnostics">[];
}

/** Actions are asked for at so many findings of each picture: each takes several checks to prove. */
const mostAsked = 3;

/** Hovers are asked for on every so manieth line, on other lines each time. */
const lineStride = 12;

/** What an editor can ask about the three records; hovers and actions on other lines and findings each time. */
async function pictureOf(editor: Editor, turn: number): Promise<Picture> {
  // Each answer is a turn in which one record may be checked that rests on the changed one, however slow it is.
  for (let turns = 0; turns < 20; turns++) await editor.hover(uris.install, { line: 0, character: 0 });
  await editor.quiet();
  const all = Object.values(uris);
  const found = editor.lastOf(uris.install)?.diagnostics ?? [];
  const stride = Math.max(1, Math.ceil(found.length / mostAsked));
  const asked = found.filter((_, index) => index % stride === turn % stride);
  const actions: CodeAction[] = [];
  for (const { range } of asked.slice(0, mostAsked)) {
    actions.push(...((await editor.actions(uris.install, range)) ?? []));
  }
  const places = [uris.install, uris.kit].flatMap((uri) =>
    editor
      .textOf(uri)
      .split("\n")
      .flatMap((text, line) =>
        line % lineStride === turn % lineStride && /\d/.test(text)
          ? [{ uri, position: { line, character: text.length - 3 } }]
          : [],
      ),
  );
  return {
    diagnostics: all.map((uri) => editor.lastOf(uri)?.diagnostics),
    symbols: await Promise.all(all.map((uri) => editor.symbols(uri))),
    hovers: await Promise.all(places.map(({ uri, position }) => editor.hover(uri, position))),
    actions: actions.map(({ title, diagnostics }) => ({ title, diagnostics: diagnostics ?? [] })),
  };
}

it("after each of many edits, in whichever of the records", async () => {
  const session = await Editor.start({ folders: [workspace.uri("")] });
  for (const [kind, uri] of Object.entries(uris)) {
    session.open(uri, workspace.read(kind === "install" ? demo.clean : demo[kind as "airframe" | "kit"]));
  }
  const seen = new Set<string>();
  const offered = new Set<string>();
  for (const [turn, { what, in: kind, changes }] of steps.entries()) {
    session.change(uris[kind], ...changes);
    await session.diagnostics(uris[kind]);

    const fresh = await Editor.start({
      folders: [workspace.uri("")],
      initializationOptions: { checkWorkspace: false },
    });
    for (const uri of Object.values(uris)) fresh.open(uri, session.textOf(uri));
    for (const uri of Object.values(uris)) await fresh.diagnostics(uri);
    const [picture, freshPicture] = await Promise.all([pictureOf(session, turn), pictureOf(fresh, turn)]);
    expect({ what, ...picture }).toEqual({ what, ...freshPicture });
    await fresh.kill();

    seen.add(JSON.stringify(picture.diagnostics));
    for (const { title } of picture.actions) offered.add(title);
    expect(picture.hovers.some((hover) => hover !== null)).toBe(true);
  }
  // Most steps show; some only move what was found, or mend what another broke.
  expect(seen.size).toBeGreaterThan(steps.length / 2);
  expect(offered.size, "no actions would prove nothing").toBeGreaterThan(mostAsked);
}, 600_000);
