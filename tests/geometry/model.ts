/**
 * A second, independent description of the shapes, for comparison: boundaries as parametrised pieces that
 * are sampled and searched, and how far a point stands out, from the textbook distance of each shape.
 */
import type { Placed, Point } from "../../server/src/core/methods/geometry";

/** A point of a piece of boundary for each share from 0 to 1. */
export type Piece = (share: number) => Point;

export const apart = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

export function toWorld(point: Point, { at, angle }: Placed): Point {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return { x: at.x + point.x * cos - point.y * sin, y: at.y + point.x * sin + point.y * cos };
}

function toLocal(point: Point, { at, angle }: Placed): Point {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const [x, y] = [point.x - at.x, point.y - at.y];
  return { x: x * cos + y * sin, y: y * cos - x * sin };
}

export function boundaryPieces(placed: Placed): readonly Piece[] {
  return localPieces(placed).map((piece) => (share) => toWorld(piece(share), placed));
}

function localPieces({ shape }: Placed): readonly Piece[] {
  switch (shape.kind) {
    case "circle":
      return [0, 1, 2, 3].map((i) => arc(0, 0, shape.diameter / 2, (i * Math.PI) / 2, Math.PI / 2));
    case "slot":
      return roundedBox(shape.length / 2, shape.width / 2, shape.width / 2);
    case "rectangle":
      return roundedBox(shape.width / 2, shape.height / 2, shape.cornerRadius);
    case "polygon":
      return shape.points.map((from, i) => line(from, shape.points[(i + 1) % shape.points.length]!));
  }
}

function roundedBox(a: number, b: number, r: number): readonly Piece[] {
  const quarter = Math.PI / 2;
  return [
    line({ x: -a + r, y: -b }, { x: a - r, y: -b }),
    arc(a - r, -b + r, r, -quarter, quarter),
    line({ x: a, y: -b + r }, { x: a, y: b - r }),
    arc(a - r, b - r, r, 0, quarter),
    line({ x: a - r, y: b }, { x: -a + r, y: b }),
    arc(-a + r, b - r, r, quarter, quarter),
    line({ x: -a, y: b - r }, { x: -a, y: -b + r }),
    arc(-a + r, -b + r, r, 2 * quarter, quarter),
  ];
}

const line =
  (from: Point, to: Point): Piece =>
  (share) => ({ x: from.x * (1 - share) + to.x * share, y: from.y * (1 - share) + to.y * share });

const arc =
  (x: number, y: number, r: number, start: number, sweep: number): Piece =>
  (share) => ({ x: x + r * Math.cos(start + sweep * share), y: y + r * Math.sin(start + sweep * share) });

/** Distance from the boundary, negative within the shape. */
export function standsOut(point: Point, placed: Placed): number {
  const { shape } = placed;
  const { x, y } = toLocal(point, placed);
  switch (shape.kind) {
    case "circle":
      return Math.hypot(x, y) - shape.diameter / 2;
    case "slot": {
      const past = Math.max(0, Math.abs(x) - (shape.length - shape.width) / 2);
      return Math.hypot(past, y) - shape.width / 2;
    }
    case "rectangle": {
      const r = shape.cornerRadius;
      const u = Math.abs(x) - shape.width / 2 + r;
      const v = Math.abs(y) - shape.height / 2 + r;
      return Math.hypot(Math.max(u, 0), Math.max(v, 0)) + Math.min(Math.max(u, v), 0) - r;
    }
    case "polygon":
      return polygonStandsOut({ x, y }, shape.points);
  }
}

/** Inside by the winding angle, not by counting edges. */
function polygonStandsOut(point: Point, points: readonly Point[]): number {
  let least = Infinity;
  let winding = 0;
  points.forEach((from, i) => {
    const to = points[(i + 1) % points.length]!;
    const [ax, ay, bx, by] = [from.x - point.x, from.y - point.y, to.x - point.x, to.y - point.y];
    winding += Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
    const [dx, dy] = [bx - ax, by - ay];
    const share = dx === 0 && dy === 0 ? 0 : -(ax * dx + ay * dy) / (dx * dx + dy * dy);
    const clamped = Math.min(1, Math.max(0, share));
    least = Math.min(least, Math.hypot(ax + clamped * dx, ay + clamped * dy));
  });
  return Math.abs(winding) > Math.PI ? -least : least;
}

/** The least value found of a function of a place on the boundary: samples, then ever finer ones. */
export function leastAlong(pieces: readonly Piece[], value: (point: Point) => number): number {
  let least = Infinity;
  for (const piece of pieces) {
    let [centre, reach, steps] = [0.5, 0.5, 48];
    for (let round = 0; round < 16; round++) {
      let best = { share: centre, value: Infinity };
      for (let i = -steps; i <= steps; i++) {
        const share = Math.min(1, Math.max(0, centre + (reach * i) / steps));
        const found = value(piece(share));
        if (found < best.value) best = { share, value: found };
      }
      least = Math.min(least, best.value);
      centre = best.share;
      reach = (1.5 * reach) / steps;
      steps = 6;
    }
  }
  return least;
}

/** The least distance between two boundaries, searched along each with the textbook distance of the other. */
export function leastDistance(a: Placed, b: Placed): number {
  return Math.min(
    leastAlong(boundaryPieces(a), (point) => Math.abs(standsOut(point, b))),
    leastAlong(boundaryPieces(b), (point) => Math.abs(standsOut(point, a))),
  );
}

/**
 * The distance between two boundaries by samples of both and nothing else. It is never below the true one,
 * and above it by no more than `spacing`.
 */
export function sampledDistance(a: Placed, b: Placed): { distance: number; spacing: number } {
  const [first, second] = [samplesOf(a), samplesOf(b)];
  let distance = Infinity;
  for (const point of first.points) {
    for (const other of second.points) distance = Math.min(distance, apart(point, other));
  }
  return { distance, spacing: first.spacing + second.spacing };
}

function samplesOf(placed: Placed): { points: readonly Point[]; spacing: number } {
  const steps = 40;
  const chains = boundaryPieces(placed).map((piece) =>
    Array.from({ length: steps + 1 }, (_, i) => piece(i / steps)),
  );
  const gaps = chains.flatMap((chain) => chain.slice(1).map((point, i) => apart(chain[i]!, point)));
  // An arc between two samples is longer than their distance, but by far less than twice.
  return { points: chains.flat(), spacing: Math.max(...gaps) };
}

/**
 * How deep a point common to both shapes was found: the depth below the nearer of the two boundaries, or
 * something not above zero when none was found. Looks along both boundaries and over a grid.
 */
export function commonDepth(a: Placed, b: Placed): number {
  const [aPieces, bPieces] = [boundaryPieces(a), boundaryPieces(b)];
  return Math.max(
    -leastAlong(aPieces, (point) => standsOut(point, b)),
    -leastAlong(bPieces, (point) => standsOut(point, a)),
    ...gridOver(aPieces, 24).map((point) => -Math.max(standsOut(point, a), standsOut(point, b))),
  );
}

/** Points in rows over the box around a boundary. */
export function gridOver(pieces: readonly Piece[], steps: number): readonly Point[] {
  const samples = pieces.flatMap((piece) => [0, 0.25, 0.5, 0.75, 1].map(piece));
  const [xs, ys] = [samples.map(({ x }) => x), samples.map(({ y }) => y)];
  const [left, bottom] = [Math.min(...xs), Math.min(...ys)];
  const [width, height] = [Math.max(...xs) - left, Math.max(...ys) - bottom];
  const shares = Array.from({ length: steps }, (_, i) => (i + 0.5) / steps);
  return shares.flatMap((u) => shares.map((v) => ({ x: left + u * width, y: bottom + v * height })));
}
