/** Hover on the name of a source: a small table of what it can give and what is asked, in each condition. */
import { expect, it } from "vitest";
import { valuesOf } from "../../server/src/core/graph/derivations";
import { showMeasure } from "../../server/src/core/graph/value";
import { protectionExample } from "../../server/src/core/rules/protection/protection-example";
import { runExample } from "../../server/src/core/run-example";
import { hoverOn } from "../../server/src/core/views/hover";

const text = protectionExample({
  system: [
    "sources:",
    "  - { id: ALT, kind: alternator, bus: MAIN, voltage: 28 V, rating: 100 A, drive-ratio: 3, output: [{ speed: 3000 rpm, current: 40 A }, { speed: 7500 rpm, current: 100 A }], data: Points made up }",
    "  - { id: BAT, kind: battery, bus: MAIN, voltage: 25 V, capacity: 24 Ah }",
  ],
}).replace(
  "conditions:\n",
  "conditions:\n  - { id: idle, phase: taxi, altitude: 0 ft, ambient: 40 degC, engine-speed: 1000 rpm, loads: { RACK: run } }\n",
);
const full = text.replace("id: cruise, phase: cruise,", "id: cruise, phase: cruise, engine-speed: 2400 rpm,");

it("has a row for each condition, and nothing but values of the graph", () => {
  const judgement = runExample({ title: "", text: full, finds: [] });
  const project = judgement.project!;
  const [file] = project.files;
  const declared = file!.typing.declarations.find(({ kind, id }) => kind === "source" && id.value === "ALT")!;
  const hover = hoverOn(declared.id.place.file, declared.id.place.node, [judgement])!;
  const rows = hover.markdown.split("\n").filter((line) => line.startsWith("| "));
  expect(rows[0]).toMatch(
    /^\| \*\*ALT\*\* \| source output \| source current \| source demand \| source capacity \|$/,
  );
  for (const condition of ["idle", "cruise"]) {
    const cells = ["source-output", "source-current", "source-demand", "source-capacity"].map((quantity) => {
      const value = valuesOf(project).find(
        (one) => one.quantity === quantity && one.condition === condition && one.subject.id !== "BAT",
      )!;
      return showMeasure(value.value, value.unit);
    });
    expect(rows).toContainEqual(expect.stringContaining(`| ${[condition, ...cells].join(" | ")}`));
  }
  // 1000 rpm x 3 is the first point of the output: 40 A.
  expect(rows.find((row) => row.startsWith("| idle"))).toContain("| 40 A | 15 A | 15 A | 40 A");
});
