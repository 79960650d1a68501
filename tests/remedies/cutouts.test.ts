/** An opening that is too near to something is moved no further than it takes. */
import { describe, expect, it } from "vitest";
import { panelExample } from "../../server/src/core/rules/cutouts/panel-example";
import { doublerExample } from "../../server/src/core/rules/structure/doubler-example";
import { faultsIn, remediesFor, titlesFor } from "./support";

const circle = (x: string, y: string, diameter = "3 in") =>
  `{ shape: circle, diameter: ${diameter}, at: { x: ${x}, y: ${y} } }`;

it("a corner gets the radius that is asked for, in its own unit, rounded up", () => {
  const rectangle = "{ shape: rectangle, width: 4 in, height: 3 in, corner-radius: 6 mm }";
  const [remedy] = remediesFor("cutout-corner-radius", panelExample({ openings: [rectangle] }));
  // 1/2 in is 12.7 mm.
  expect(remedy!.title).toBe("Give C1 a corner radius of 13 mm");
  expect(faultsIn(remedy!.text)).not.toContain("cutout-corner-radius");
});

describe("a move", () => {
  it("keeps the edge distance and not a step more", () => {
    // The panel ends at x 10 in; 1 in of edge and 1.5 in of radius leave 7.5 in.
    const remedies = remediesFor(
      "cutout-edge-distance",
      panelExample({ openings: [circle("8 in", "0 in")] }),
    );
    expect(remedies.map(({ title }) => title)).toEqual(["Move C1 to x 7.5 in"]);
    expect(faultsIn(remedies[0]!.text)).not.toContain("cutout-edge-distance");
  });

  it("goes in whole millimetres where these are written", () => {
    const openings = [circle("8 in", "0 in").replace("8 in", "200 mm")];
    // 7.5 in is 190.5 mm.
    expect(titlesFor("cutout-edge-distance", panelExample({ openings }))).toEqual(["Move C1 to x 190 mm"]);
  });

  it("goes both ways that are open, the shorter first", () => {
    const fasteners = "[{ at: { x: 1.6 in, y: 0.6 in }, diameter: 1/8 in }]";
    const titles = titlesFor("cutout-fastener-distance", panelExample({ fasteners }));
    expect(titles).toHaveLength(2);
    expect(titles[0]).toMatch(/^Move C1 to x -0\.\d+ in$/);
    expect(titles[1]).toMatch(/^Move C1 to y -/);
  });

  it("parts two openings that overlap or are too near, and looks out for all else", () => {
    const spaced = panelExample({ openings: [circle("-2 in", "0 in"), circle("2 in", "0 in")] });
    expect(titlesFor("cutout-spacing", spaced)[0]).toBe("Move C2 to x 2.5 in");
    const overlapping = panelExample({ openings: [circle("-1 in", "0 in"), circle("1 in", "0 in")] });
    // 3 in between centres touch, 4.5 in leave the 1.5 in that are asked for.
    expect(titlesFor("cutout-overlap", overlapping)[0]).toBe("Move C2 to x 3.5 in");
    const fasteners = "[{ at: { x: 5 in, y: 0 in }, diameter: 1/4 in }]";
    const guarded = panelExample({ openings: [circle("-1 in", "0 in"), circle("1 in", "0 in")], fasteners });
    for (const { text } of remediesFor("cutout-overlap", guarded)) expect(faultsIn(text)).toEqual([]);
  });

  it("brings an opening back into its panel", () => {
    expect(titlesFor("cutout-outside-panel", panelExample({ openings: [circle("9 in", "0 in")] }))).toEqual([
      "Move C1 to x 7.5 in",
    ]);
  });

  it("goes along both axes from a corner", () => {
    expect(titlesFor("cutout-outside-panel", panelExample({ openings: [circle("9 in", "5 in")] }))).toEqual([
      expect.stringMatching(/^Move C1 to x \S+ in, y \S+ in$/),
    ]);
  });

  it("is none where there is no room", () => {
    expect(
      titlesFor("cutout-edge-distance", panelExample({ openings: [circle("0 in", "0 in", "10.5 in")] })),
    ).toEqual([]);
  });
});

describe("a move away from a stiffener", () => {
  const record = (from: string, to: string) =>
    doublerExample({
      panel: [
        `stiffeners: [{ name: stringer 4, from: ${from}, to: ${to}, width: 0.75 in }]`,
        "minimums: { edge: 1 in, stiffener: 0.75 in, data: Repair data B9-51 }",
      ],
    });

  it("along a panel's axis changes no other coordinate", () => {
    const text = record("{ x: -9 in, y: 2.375 in }", "{ x: 9 in, y: 2.375 in }");
    const [remedy] = remediesFor("cutout-stiffener-distance", text);
    expect(remedy!.title).toMatch(/^Move the opening to y -0\.\d+ in$/);
    expect(remedy!.edits).toHaveLength(1);
  });

  it("across both axes changes both", () => {
    const text = record("{ x: -9 in, y: -5.85 in }", "{ x: 9 in, y: 12.15 in }");
    const [remedy] = remediesFor("cutout-stiffener-distance", text);
    expect(remedy!.title).toMatch(/^Move the opening to x .* in, y .* in$/);
    expect(remedy!.edits).toHaveLength(2);
  });
});
