/** Areas, lengths and distances of shapes against a general-purpose geometry package (@flatten-js/core). */
import Flatten from "@flatten-js/core";
import { expect, test } from "vitest";
import {
  area,
  boundingBox,
  outline,
  type Placed,
  perimeter,
  pointClearance,
  relation,
} from "../../server/src/core/methods/geometry";
import { fc } from "../support/random";
import { placed, point, runs } from "./arbitraries";

const { arc, point: at, Polygon, segment, CCW } = Flatten;

/** The same outline in the package's own terms: from our pieces only their ends, centres and radii are taken. */
function outsideOf(shape: Placed): Flatten.Polygon {
  // What the package takes for one point, it can't have as an edge.
  const edges = outline(shape)
    .filter((piece) =>
      piece.kind === "arc"
        ? piece.radius * piece.sweep > 1e-6
        : Math.hypot(piece.to.x - piece.from.x, piece.to.y - piece.from.y) > 1e-6,
    )
    .map((piece) =>
      piece.kind === "segment"
        ? segment(at(piece.from.x, piece.from.y), at(piece.to.x, piece.to.y))
        : arc(at(piece.centre.x, piece.centre.y), piece.radius, piece.start, piece.start + piece.sweep, CCW),
    );
  const polygon = new Polygon();
  polygon.addFace(edges);
  return polygon;
}

const near = (a: number, b: number) => expect(Math.abs(a - b)).toBeLessThanOrEqual(3e-6 * (1 + Math.abs(a)));

test("areas, lengths and boxes", () => {
  fc.assert(
    fc.property(placed, (shape) => {
      const outside = outsideOf(shape);
      near(area(shape.shape), outside.area());
      let length = 0;
      for (const edge of outside.edges) length += edge.length;
      near(perimeter(shape.shape), length);
      const { min, max } = boundingBox(shape);
      near(min.x, outside.box.xmin);
      near(min.y, outside.box.ymin);
      near(max.x, outside.box.xmax);
      near(max.y, outside.box.ymax);
    }),
    runs(300),
  );
});

test("distances of a fastener from an outline", () => {
  fc.assert(
    fc.property(placed, point, (shape, centre) => {
      const found = pointClearance(centre, shape);
      const outside = outsideOf(shape);
      let least = Infinity;
      for (const edge of outside.edges) {
        least = Math.min(least, at(centre.x, centre.y).distanceTo(edge.shape)[0]);
      }
      near(found.kind === "outside" ? found.distance : found.depth, least);
    }),
    runs(300),
  );
});

test("distances between two openings", () => {
  let clear = 0;
  fc.assert(
    fc.property(placed, placed, (a, b) => {
      const found = relation(a, b);
      if (found.kind !== "clear") return;
      clear++;
      let least = Infinity;
      for (const one of outsideOf(a).edges) {
        for (const other of outsideOf(b).edges) least = Math.min(least, one.shape.distanceTo(other.shape)[0]);
      }
      near(found.distance, least);
    }),
    runs(300),
  );
  expect(clear).toBeGreaterThan(50);
});
