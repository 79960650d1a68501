import { edgesOf } from "./loop";
import { cross, distance, dot, onCircle, type Point, plus, rotated, times, unit } from "./point";
import { directionOf, nearestOnSegment, type Segment } from "./segment";
import { type Core, coreOf, type Placed } from "./shape";

/** A circular piece of a boundary: counter-clockwise from angle `start` by `sweep` (over 0, up to 2π). */
export interface Arc {
  readonly kind: "arc";
  readonly centre: Point;
  readonly radius: number;
  readonly start: number;
  readonly sweep: number;
  readonly from: Point;
  readonly to: Point;
}

export type OutlinePiece = Segment | Arc;

/** The exact boundary, counter-clockwise, each piece beginning where the one before ends; the last closes it. */
export function outline({ shape, at, angle }: Placed): readonly OutlinePiece[] {
  const place = (point: Point) => plus(at, rotated(point, angle));
  return outlineOfCore(coreOf(shape)).map((piece) => {
    const ends = { from: place(piece.from), to: place(piece.to) };
    if (piece.kind === "segment") return { ...piece, ...ends };
    return { ...piece, ...ends, centre: place(piece.centre), start: piece.start + angle };
  });
}

/** The boundary of a core: its edges moved out by the radius, joined by an arc around every corner. */
export function outlineOfCore({ loop, radius }: Core): readonly OutlinePiece[] {
  if (radius === 0) return edgesOf(loop);
  if (loop.length === 1) return [arc(loop[0]!, radius, 0, 2 * Math.PI)];
  const edges = edgesOf(loop);
  return edges.flatMap((edge, i) => {
    const normal = outward(edge);
    const next = outward(edges[(i + 1) % edges.length]!);
    const offset = times(normal, radius);
    const turn = Math.atan2(cross(normal, next), dot(normal, next));
    const straight: Segment = { ...edge, from: plus(edge.from, offset), to: plus(edge.to, offset) };
    const corner = arc(edge.to, radius, Math.atan2(normal.y, normal.x), Math.abs(turn));
    return [straight, { ...corner, from: straight.to, to: plus(edge.to, times(next, radius)) }];
  });
}

/** The point of the piece that is nearest to `point`. */
export function nearestOnPiece(point: Point, piece: OutlinePiece): Point {
  if (piece.kind === "segment") return nearestOnSegment(point, piece);
  const { centre, radius, start, sweep, from, to } = piece;
  // From the centre itself every point of the arc is as near, and the angle comes out as 0.
  const angle = Math.atan2(point.y - centre.y, point.x - centre.x);
  const turn = 2 * Math.PI;
  if ((((angle - start) % turn) + turn) % turn <= sweep) return onCircle(centre, radius, angle);
  return distance(point, from) <= distance(point, to) ? from : to;
}

/** Unit vector to the right of the edge, which is away from the area of a counter-clockwise loop. */
function outward(edge: Segment): Point {
  const along = unit(directionOf(edge));
  return { x: along.y, y: -along.x };
}

function arc(centre: Point, radius: number, start: number, sweep: number): Arc {
  return {
    kind: "arc",
    centre,
    radius,
    start,
    sweep,
    from: onCircle(centre, radius, start),
    to: onCircle(centre, radius, start + sweep),
  };
}
