import { distinctPoints, edgesOf, extentOf } from "./loop";
import { cross, distance, length, minus, type Point } from "./point";
import { boxGap, nearestOfSegments, type Segment } from "./segment";
import type { Shape } from "./shape";
import { touchTolerance, withinTouch } from "./tolerance";

/** Most points of a polygon; every pair of edges is looked at, so the work grows with the square. */
export const polygonPointLimit = 1000;

export type Dimension = "diameter" | "length" | "width" | "height" | "cornerRadius";

/** What is wrong with a shape: facts, not sentences. Indices count the polygon's points as given, from 0. */
export type ShapeProblem =
  | { readonly kind: "size-not-finite"; readonly dimension: Dimension }
  /** For a corner radius: negative. */
  | { readonly kind: "size-not-positive"; readonly dimension: Dimension; readonly value: number }
  | { readonly kind: "slot-shorter-than-wide"; readonly length: number; readonly width: number }
  | { readonly kind: "corner-radius-too-large"; readonly value: number; readonly limit: number }
  | { readonly kind: "point-not-finite"; readonly index: number }
  | { readonly kind: "too-many-points"; readonly count: number; readonly limit: number }
  /** `count` without points that repeat the one before. */
  | { readonly kind: "too-few-points"; readonly count: number }
  /** All points on one line. */
  | { readonly kind: "zero-area" }
  /** Two edges cross, touch or fold back on each other, `at` a common point; each edge by its first point. */
  | { readonly kind: "self-intersecting"; readonly edges: readonly [number, number]; readonly at: Point };

/**
 * Everything that keeps a shape from being one; empty when it may be measured. The other functions of this
 * folder are for shapes without problems only. Equalities hold within `touchTolerance`, so that a slot as
 * long as wide survives a change of units.
 */
export function shapeProblems(shape: Shape): readonly ShapeProblem[] {
  switch (shape.kind) {
    case "circle":
      return notPositive("diameter", shape.diameter);
    case "slot": {
      const { length, width } = shape;
      const faults = [...notPositive("length", length), ...notPositive("width", width)];
      if (faults.length > 0 || !exceeds(width, length)) return faults;
      return [{ kind: "slot-shorter-than-wide", length, width }];
    }
    case "rectangle": {
      const { width, height, cornerRadius } = shape;
      const faults = [
        ...notPositive("width", width),
        ...notPositive("height", height),
        ...(cornerRadius === 0 ? [] : notPositive("cornerRadius", cornerRadius)),
      ];
      const limit = Math.min(width, height) / 2;
      if (faults.length > 0 || !exceeds(cornerRadius, limit)) return faults;
      return [{ kind: "corner-radius-too-large", value: cornerRadius, limit }];
    }
    case "polygon":
      return polygonProblems(shape.points);
  }
}

function notPositive(dimension: Dimension, value: number): readonly ShapeProblem[] {
  if (!Number.isFinite(value)) return [{ kind: "size-not-finite", dimension }];
  return value > 0 ? [] : [{ kind: "size-not-positive", dimension, value }];
}

const exceeds = (value: number, limit: number): boolean => value > limit * (1 + touchTolerance);

function polygonProblems(points: readonly Point[]): readonly ShapeProblem[] {
  const count = points.length;
  if (count > polygonPointLimit) return [{ kind: "too-many-points", count, limit: polygonPointLimit }];
  const broken = points.flatMap(({ x, y }, index): readonly ShapeProblem[] =>
    Number.isFinite(x) && Number.isFinite(y) ? [] : [{ kind: "point-not-finite", index }],
  );
  if (broken.length > 0) return broken;

  const tolerance = withinTouch(extentOf(points));
  const kept = distinctPoints(points, tolerance);
  const corners = kept.map((index) => points[index]!);
  if (corners.length < 3) return [{ kind: "too-few-points", count: corners.length }];
  if (onOneLine(corners, tolerance)) return [{ kind: "zero-area" }];
  const meeting = firstMeeting(edgesOf(corners), tolerance);
  if (meeting === undefined) return [];
  const [first, second] = meeting.edges;
  return [{ kind: "self-intersecting", edges: [kept[first]!, kept[second]!], at: meeting.at }];
}

function onOneLine(corners: readonly Point[], tolerance: number): boolean {
  const base = corners[0]!;
  const far = corners.reduce((best, corner) =>
    distance(base, corner) > distance(base, best) ? corner : best,
  );
  const along = minus(far, base);
  return corners.every((corner) => Math.abs(cross(along, minus(corner, base))) <= tolerance * length(along));
}

interface Meeting {
  readonly edges: readonly [number, number];
  readonly at: Point;
}

/**
 * The first pair of edges that have a point in common and are not neighbours. Neighbours that fold back need
 * no look of their own: the edge after the fold starts on the edge before it.
 */
function firstMeeting(edges: readonly Segment[], tolerance: number): Meeting | undefined {
  for (let i = 0; i < edges.length; i++) {
    // The last edge is a neighbour of the first.
    const end = i === 0 ? edges.length - 1 : edges.length;
    for (let j = i + 2; j < end; j++) {
      if (boxGap(edges[i]!, edges[j]!) > tolerance) continue;
      const nearest = nearestOfSegments(edges[i]!, edges[j]!);
      if (nearest.distance <= tolerance) return { edges: [i, j], at: nearest.between[0] };
    }
  }
  return undefined;
}
