/** Routes: how far bundles are from lines and control runs, held against samples; and which limit is asked. */

import { describe, expect, it } from "vitest";
import { routesOf } from "../../server/src/core/graph/derivations";
import { routeAlong, routeExample } from "../../server/src/core/rules/wires/route-example";
import { judge, remediesFor } from "../remedies/support";
import { fc } from "../support/random";

type Point = readonly [arm: number, buttLine: number, waterLine: number];

const inch = fc.integer({ min: -20, max: 20 });
const route: fc.Arbitrary<readonly Point[]> = fc.array(fc.tuple(inch, inch, inch), {
  minLength: 2,
  maxLength: 5,
});

const written = (points: readonly Point[]) =>
  `route: [${points.map(([x, y, z]) => `{ arm: ${x} in, butt-line: ${y} in, water-line: ${z} in }`).join(", ")}]`;

function separationsIn(text: string) {
  return routesOf(judge(text).project!).separations;
}

const separationIn = (text: string) => separationsIn(text)[0]!.value.value;

/** Points along a route, no farther apart than this share of each stretch. */
const samples = 60;
function sampled(points: readonly Point[]): Point[] {
  return points.slice(1).flatMap((to, index) =>
    Array.from({ length: samples + 1 }, (_, at): Point => {
      const from = points[index]!;
      const between = (axis: 0 | 1 | 2) => from[axis] + ((to[axis] - from[axis]) * at) / samples;
      return [between(0), between(1), between(2)];
    }),
  );
}

const apart = (a: Point, b: Point) => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
const longest = (points: readonly Point[]) =>
  Math.max(...points.slice(1).map((to, index) => apart(points[index]!, to)));

describe("the separation of two routes", () => {
  it("is the least distance of their points, less half of each diameter", () => {
    fc.assert(
      fc.property(route, route, (ofBundle, ofLine) => {
        const found = separationIn(
          routeExample({
            bundle: `diameter: 0.5 in, ${written(ofBundle)}`,
            line: `kind: tube, fluid: fuel, dash: 8, material: steel, ${written(ofLine)}`,
          }),
        );
        const lines = sampled(ofLine);
        const least = Math.min(...sampled(ofBundle).flatMap((one) => lines.map((two) => apart(one, two))));
        const mostBetween = (longest(ofBundle) + longest(ofLine)) / (2 * samples);
        expect(found).toBeLessThanOrEqual(least - 0.5 + 1e-9);
        expect(found).toBeGreaterThanOrEqual(least - 0.5 - mostBetween - 1e-9);
      }),
      { numRuns: 30 },
    );
  });

  it("says where it counts less than there is", () => {
    const notesIn = (keys: string, specification = "") =>
      separationsIn(
        routeExample({
          bundle: `${keys}route: ${routeAlong("10 in", "20 in")}`,
          line: `kind: hose, fluid: water, dash: 8${specification}, route: ${routeAlong("14 in", "20 in")}`,
        }),
      )[0]!.value.notes;
    expect(notesIn("")).toEqual([
      expect.stringContaining("hose L1: it counts as the tube that it fits"),
      expect.stringContaining("bundle B1 is not recorded: it counts as its centre line"),
    ]);
    expect(notesIn("diameter: 0.5 in, ", ", specification: MIL-H-8794")).toEqual([]);
  });

  it.each([
    [
      "a point half typed",
      "",
      "[{ arm: 60 in, butt-line: 10 in }, { arm: 90 in, butt-line: 1 in, water-line: 2 in }]",
    ],
    ["a point that is none", "", "[60 in, { arm: 90 in, butt-line: 1 in, water-line: 2 in }]"],
    ["one point only", "", "[{ arm: 90 in, butt-line: 1 in, water-line: 2 in }]"],
    ["a faulty diameter", "diameter: thick, ", routeAlong("10 in", "20 in")],
  ])("is not computed from %s", (_, keys, points) => {
    const text = routeExample({
      bundle: `${keys}route: ${points}`,
      line: `kind: tube, fluid: fuel, dash: 8, material: steel, route: ${routeAlong("10 in", "20 in")}`,
    });
    expect(separationsIn(text)).toEqual([]);
    expect(judge(text).findings.map(({ rule }) => rule)).not.toContain("route-too-near");
  });
});

describe("the limit", () => {
  const fuel = (passes: string, wires?: string) =>
    separationsIn(
      routeExample({
        bundle: `route: ${routeAlong("10 in", "20 in")}`,
        line: `kind: tube, fluid: fuel, dash: 8, material: steel, passes: ${passes}, route: ${routeAlong("14 in", "20 in")}`,
        ...(wires && { passes: wires }),
      }),
    )[0]!.least!.value;
  const wire = "{ by: wire, distance: 3 in, clamped: true }";

  // FAA AC 43.13-1B, par. 11-96w: 6 in, 2 in where clamped.
  it("of a flammable line is the closer one only where nothing recorded says otherwise", () => {
    expect(fuel("[]")).toBe(6);
    expect(fuel(`[${wire}]`)).toBe(2);
    expect(fuel("[]", "[{ by: fuel-line, distance: 3 in, clamped: true }]")).toBe(2);
    expect(fuel(`[${wire}]`, "[{ by: fuel-line, distance: 3 in }]")).toBe(6);
    expect(fuel(`[${wire}, { by: wire, distance: 4 in }]`)).toBe(6);
    expect(fuel("[]", "[{ by: oxygen-line, distance: 3 in, clamped: true }]")).toBe(6);
  });

  it("of a control run is the airframe's where that is not kept, else the greater", () => {
    const rulesOf = (cable: string) => {
      const text = routeExample({ bundle: `route: ${routeAlong("10 in", "20 in")}`, cable });
      const [one] = separationsIn(text);
      const [finding] = judge(text).findings.filter(({ rule }) => rule === "route-too-near");
      return [one!.value.value, one!.least!.value, finding?.severity];
    };
    expect(rulesOf("11 in")).toEqual([0.5, 1, "error"]);
    expect(rulesOf("12.5 in")).toEqual([2, 3, "warning"]); // 3 in is from memory
    expect(rulesOf("13.5 in")).toEqual([3, 3, undefined]);
  });
});

describe("the remedy", () => {
  const around = (butt: string, water: string) =>
    `[{ arm: 60 in, butt-line: 30 in, water-line: 20 in }, { arm: 80 in, butt-line: ${butt}, water-line: ${water} }, ` +
    `{ arm: 120 in, butt-line: ${butt}, water-line: ${water} }, { arm: 140 in, butt-line: 30 in, water-line: 20 in }]`;
  const line = `kind: tube, fluid: fuel, dash: 8, material: steel, route: [{ arm: 90 in, butt-line: 0 in, water-line: 17 in }, { arm: 110 in, butt-line: 0 in, water-line: 17 in }]`;

  it("moves the points of the stretch between its ends, and no farther than needed", () => {
    const found = remediesFor(
      "route-too-near",
      routeExample({ bundle: `route: ${around("0 in", "20 in")}`, line }),
    );
    const [first] = found;
    expect(first!.title).toBe("Move points 2 and 3 of the route of B1 3.25 in up");
    expect(first!.text).toContain(around("0 in", "23.25 in"));
    expect(found.map(({ title }) => title).filter((title) => title.includes("down"))).toEqual([]);
  });

  it("is none where the stretch has the ends of the route only", () => {
    const text = routeExample({ bundle: `route: ${routeAlong("0 in", "20 in")}`, line });
    expect(remediesFor("route-too-near", text)).toEqual([]);
  });

  it("of a control run goes on to the distance that is kept of cables", () => {
    const text = routeExample({ bundle: `route: ${around("12.5 in", "20 in")}`, cable: "12.5 in" });
    const titles = remediesFor("route-too-near", text).map(({ title }) => title);
    expect(titles.length).toBeGreaterThan(0);
    for (const { text: after } of remediesFor("route-too-near", text)) {
      expect(separationsIn(after)[0]!.value.value).toBeGreaterThanOrEqual(3);
    }
  });
});
