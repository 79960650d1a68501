/** What cutting an opening takes out and its doubler adds, in the weights of the aircraft: by hand. */
import { expect, it } from "vitest";
import { weightsOf } from "../../server/src/core/graph/derivations";
import { doublerExample } from "../../server/src/core/rules/structure/doubler-example";
import { runExample } from "../../server/src/core/run-example";

const parts = {
  panel: ["density: 0.1 lb/in3", "position: { arm: 120 in, butt-line: 20 in, water-line: 30 in }"],
  doubler:
    "kind: doubler, material: 2024-T3 clad, thickness: 0.040 in, density: 0.1 lb/in3, joint: single-lap, outline: { shape: rectangle, width: 7 in, height: 7 in, corner-radius: 0.5 in }",
  fasteners:
    "{ kind: 2117-rivet, diameter: 1/8 in, count-per-side: 14, rows: 2, pitch: 0.6 in, row-pitch: 0.5 in, edge-distance: 0.3 in, weight-each: 0.0004 lb }",
};
const weightsIn = (text: string) => weightsOf(runExample({ title: "", text, finds: [] }).project!);

/** A hole of 3 in, and a square of 7 in with corners of 0.5 in around it. */
const cut = (Math.PI / 4) * 9 * 0.032 * 0.1;
const added = (49 - (4 - Math.PI) * 0.25 - (Math.PI / 4) * 9) * 0.04 * 0.1 + 2 * 14 * 0.0004;

it("counts the metal cut out and the doubler with its rivets, at the arm of the panel", () => {
  const { change } = weightsIn(doublerExample(parts));
  expect(change.items.map(({ subject, sense }) => [subject.id, sense])).toEqual([
    ["C1 sheet", "removed"],
    ["C1 reinforcement", "added"],
  ]);
  expect(change.weightChange!.value).toBeCloseTo(added - cut, 9);
  expect(change.emptyWeight!.value).toBeCloseTo(2412 + added - cut, 9);
  expect(change.emptyMoment!.value).toBeCloseTo(2412 * 88.4 + (added - cut) * 120, 6);
});

it("counts what is known: without a density of the doubler the metal cut out alone", () => {
  const { change } = weightsIn(
    doublerExample({ ...parts, doubler: parts.doubler.replace(" density: 0.1 lb/in3,", "") }),
  );
  expect(change.items.map(({ subject }) => subject.id)).toEqual(["C1 sheet"]);
});
