/** What sets the fasteners of a reinforcement another way leaves room for them, and says all that it changes. */
import { describe, expect, it } from "vitest";
import { doublerExample } from "../../server/src/core/rules/structure/doubler-example";
import { faultsIn, remediesFor, titlesFor } from "./support";

const alongX = ["load: { direction: 0 deg }"];

/** Faults of reinforcements; the panel of the example gives no least distances, which is told as well. */
const faultsOfDoublers = (text: string) => faultsIn(text).filter((rule) => rule !== "cutout-minimum-missing");

/** 7 by 7 in of doubler around 3 in, which need 14 fasteners of 1/8 in on each side. */
const square = (keys: string) =>
  doublerExample({
    panel: alongX,
    fasteners: `{ kind: 2117-rivet, diameter: 1/8 in, edge-distance: 0.3 in, ${keys} }`,
  });

describe("more fasteners on a side", () => {
  it("are as many as are needed where the rows have room, and the total goes along", () => {
    const text = square("count-per-side: 12, rows: 2, pitch: 0.6 in, row-pitch: 0.5 in, total: 24");
    expect(titlesFor("doubler-fasteners-too-few", text)).toEqual([
      "Set 14 fasteners on each side, 28 in all",
      "Set 14 fasteners on each side, in 3 rows, 28 in all",
    ]);
  });

  it("come closer, or in another row, where their row is full", () => {
    // 11 at 0.6 in take 6 in and twice 0.3 in; 14 in 6.4 in stand 0.492 in apart.
    const text = square("count-per-side: 10, pitch: 0.6 in, total: 20");
    const remedies = remediesFor("doubler-fasteners-too-few", text);
    expect(remedies.map(({ title }) => title)).toEqual([
      "Set 14 fasteners on each side, 0.49 in apart, 28 in all",
      "Set 14 fasteners on each side, in 2 rows 0.32 in from each other, 28 in all",
    ]);
    expect(remedies[1]!.text).toContain("rows: 2, row-pitch: 0.32 in }");
    for (const { text } of remedies) expect(faultsOfDoublers(text)).toEqual([]);
  });

  it("are none where no layout finds room", () => {
    const text = doublerExample({
      opening: "{ shape: rectangle, width: 5 in, height: 3 in, corner-radius: 0.5 in }",
      panel: alongX,
      material: "2024-T3",
      thickness: "0.051 in",
      doubler:
        "kind: doubler, material: 2024-T3, thickness: 0.071 in, outline: { shape: rectangle, width: 8 in, height: 6 in, corner-radius: 0.5 in }",
      fasteners:
        "{ kind: 2117-rivet, diameter: 1/8 in, count-per-side: 12, rows: 2, pitch: 0.75 in, row-pitch: 0.6 in, edge-distance: 0.3 in }",
    });
    expect(faultsIn(text)).toContain("doubler-fasteners-too-few");
    expect(titlesFor("doubler-fasteners-too-few", text)).toEqual([]);
  });
});

describe("more fasteners than find room", () => {
  it("come closer, in more rows, or on a wider doubler", () => {
    // Across y: 14 in a row at 0.6 in take 13 x 0.6 + 2 x 0.3 = 8.4 in.
    expect(titlesFor("doubler-fasteners-too-many", square("count-per-side: 14, pitch: 0.6 in"))).toEqual([
      "Set the fasteners 0.49 in apart",
      "Set the fasteners in 2 rows 0.32 in from each other",
      "Make the doubler's height 8.4 in",
    ]);
  });

  it("or on a wider ring", () => {
    // 11 in a row at 0.6 in take 6.6 in; the innermost row has half of pi times 3 in and the ring less a row pitch.
    const text = doublerExample({
      doubler: "kind: ring, material: 2024-T3 clad, thickness: 0.063 in, joint: single-lap, width: 1.5 in",
      fasteners:
        "{ kind: 2117-rivet, diameter: 1/8 in, count-per-side: 22, rows: 2, pitch: 0.6 in, row-pitch: 0.5 in, edge-distance: 0.3 in }",
    });
    expect(titlesFor("doubler-fasteners-too-many", text)).toEqual([
      "Set the fasteners 0.57 in apart",
      "Make the ring's width 1.71 in",
    ]);
  });
});

describe("rows beyond what the reinforcement has beside its opening", () => {
  it("come nearer to the edges, or the ring grows", () => {
    const text = doublerExample({
      doubler: "kind: ring, material: 2024-T3 clad, thickness: 0.063 in, joint: single-lap, width: 1.1 in",
      fasteners:
        "{ kind: 2117-rivet, diameter: 1/8 in, count-per-side: 14, rows: 2, pitch: 0.5 in, row-pitch: 0.5 in, edge-distance: 0.325 in }",
    });
    expect(titlesFor("doubler-overlap-too-short", text)).toEqual([
      "Keep 0.3 in to every edge",
      "Make the ring's width 1.15 in",
    ]);
  });

  it("have a ring that also holds their count", () => {
    const text = doublerExample({
      doubler: "kind: ring, material: 2024-T3 clad, thickness: 0.080 in, joint: single-lap, width: 0.9 in",
      fasteners:
        "{ kind: 2117-rivet, diameter: 1/8 in, count-per-side: 19, rows: 2, pitch: 0.6 in, row-pitch: 0.5 in, edge-distance: 0.25 in }",
    });
    // A ring of 1 in holds the rows; ten in a row at 0.6 in take one of 1.32 in.
    expect(titlesFor("doubler-overlap-too-short", text)).toEqual(["Make the ring's width 1.5 in"]);
  });

  it("are let be where nobody can tell the room: an opening beyond its doubler is another fault", () => {
    const text = doublerExample({ opening: "{ shape: circle, diameter: 3 in, at: { x: 5 in, y: 0 in } }" });
    expect(faultsOfDoublers(text)).toEqual(["doubler-misses-opening"]);
  });
});

describe("the rows of a doubler", () => {
  it("run along its own side that is nearest to across the load", () => {
    const turned = (angle: string, count: number) =>
      doublerExample({
        panel: alongX,
        doubler: `kind: doubler, material: 2024-T3 clad, thickness: 0.040 in, joint: single-lap, outline: { shape: rectangle, width: 7 in, height: 7 in, corner-radius: 0.5 in, angle: ${angle} }`,
        fasteners: `{ kind: 2117-rivet, diameter: 1/8 in, count-per-side: ${count}, rows: 2, pitch: 0.6 in, row-pitch: 0.5 in, edge-distance: 0.3 in }`,
      });
    for (const angle of ["0 deg", "15 deg", "-40 deg", "100 deg"]) {
      expect(faultsOfDoublers(turned(angle, 22))).toEqual([]);
      expect(faultsOfDoublers(turned(angle, 23))).toEqual(["doubler-fasteners-too-many"]);
    }
  });
});
