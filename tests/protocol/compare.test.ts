/** The comparison of an open record with a revision; the client has the texts of the revision. */
import { expect, it } from "vitest";
import { Editor } from "../support/editor";
import { demo, demoWorkspace, replaceOnce } from "../support/workspace";

interface Answer {
  readonly isNew: boolean;
  readonly html: string;
  readonly markdown: string;
}

it("shows what the change does, with the texts of the revision and of what it names", async () => {
  const workspace = demoWorkspace();
  const editor = await Editor.start({ folders: [workspace.uri("")] });
  const clean = workspace.read(demo.clean);
  const asked: string[] = [];
  editor.answer("tailcone/revisionText", ({ uri, revision }: { uri: string; revision: string }) => {
    asked.push(`${revision} ${uri.split("/").at(-1)}`);
    return uri === workspace.uri(demo.clean) ? clean : workspace.read(uri.split("/").at(-1)!);
  });
  const thinner = replaceOnce(
    clean,
    "gauge: 8 AWG\n    length: 14.5 ft",
    "gauge: 12 AWG\n    length: 14.5 ft",
  );
  editor.open(workspace.uri(demo.clean), thinner);
  const { isNew, html, markdown } = await editor.request<Answer>("tailcone/compare", {
    uri: workspace.uri(demo.clean),
    revision: "HEAD",
  });
  expect(asked).toEqual([`HEAD ${demo.clean}`, `HEAD ${demo.airframe}`, `HEAD ${demo.kit}`]);
  expect(isNew).toBe(false);
  expect(markdown).toContain("| `wires[P102A8].gauge` | `8 AWG` | `12 AWG` |");
  expect(html).toContain("<code>wire-voltage-drop</code>");
});

it("takes a record that the revision does not have as new", async () => {
  const workspace = demoWorkspace();
  const editor = await Editor.start({ folders: [workspace.uri("")] });
  editor.answer("tailcone/revisionText", () => null);
  editor.open(workspace.uri(demo.clean), workspace.read(demo.clean));
  const { isNew, markdown } = await editor.request<Answer>("tailcone/compare", {
    uri: workspace.uri(demo.clean),
    revision: "HEAD",
  });
  expect(isNew).toBe(true);
  expect(markdown).toContain(`**Changed in ${demo.clean} (added)**`);
});
