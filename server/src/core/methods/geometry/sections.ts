/**
 * Straight cuts through figures, side by side: how much of an outer figure stands beside an inner one in them, and
 * between which edges a figure runs past a level.
 */
import { type Arc, type OutlinePiece, outline } from "./outline";
import { rotated } from "./point";
import type { Segment } from "./segment";
import { coreOf, type Placed, sizeOf } from "./shape";
import { withinTouch } from "./tolerance";

/** What the outer figure has beside the inner one, at its least over all cuts through the inner one. */
export interface Beside {
  /** Before the inner figure and behind it, along the cut, each by itself. */
  readonly before: number;
  readonly behind: number;
  /** Both together, in one and the same cut. */
  readonly together: number;
  /** The inner figure itself at its widest in one cut; what it encloses counts as its own. */
  readonly widest: number;
}

/**
 * The least width of `outer` beside `inner`, over all cuts that run along `direction` (radians) and pass through
 * `inner`, from one of its ends to the other. In a cut only the material next to `inner` counts: not what lies
 * beyond a gap, and not what `inner` itself encloses. For `inner` within `outer`, both without `shapeProblems`.
 *
 * Source: derived; between the stations where a piece of an outline begins or ends, a width is the sum of a convex
 * and a concave function of the station, whose least value is closed in on from below (`leastOfSum`): never above
 * the true one, and below it by no more than the tolerance of a touch.
 */
export function beside(inner: Placed, outer: Placed, direction: number): Beside {
  const tolerance = withinTouch(sizeOf(coreOf(inner.shape)), sizeOf(coreOf(outer.shape)));
  const own = edgesAlong(inner, direction);
  const others = edgesAlong(outer, direction);
  const least = { before: Infinity, behind: Infinity, together: Infinity };
  let widest = 0;
  for (const [from, to] of stretchesOf([...own, ...others], endsOf(own), tolerance)) {
    const station = (from + to) / 2;
    const through = crossing(own, station);
    const [first, last] = [through[0], through.at(-1)];
    // A cut that only grazes the inner figure.
    if (!first || !last) continue;
    const within = { from, to, tolerance };
    const narrowness: Curve = (y) => first.at(y) - last.at(y);
    widest = Math.max(widest, -leastOfSum(narrowness, () => 0, within));
    const around = crossing(others, station);
    const before = around.findLast((edge) => edge.at(station) <= first.at(station) + tolerance);
    const behind = around.find((edge) => edge.at(station) >= last.at(station) - tolerance);
    if (!before || !behind) return { before: 0, behind: 0, together: 0, widest };
    least.before = Math.min(
      least.before,
      leastOfSum(first.at, (y) => -before.at(y), within),
    );
    least.behind = Math.min(
      least.behind,
      leastOfSum((y) => -last.at(y), behind.at, within),
    );
    const space: Curve = (y) => behind.at(y) - before.at(y);
    least.together = Math.min(least.together, leastOfSum(narrowness, space, within));
  }
  return { ...least, widest };
}

/** Between which values something lies. */
export interface Range {
  readonly from: number;
  readonly to: number;
}

/** The two edges of a figure that passes a level, each with how far it moves over the stretch. */
export interface Passage {
  readonly lower: Range;
  readonly upper: Range;
}

/**
 * Between which edges the figure runs along a stretch: in every cut along `direction`, at the stations of the
 * stretch, those next to the level. Levels are measured along `direction`, stations a quarter turn on from it, both
 * from the origin of the plane (as `reachAlong` does). Undefined where the figure is not at the level all along.
 */
export function passageOf(
  figure: Placed,
  direction: number,
  level: number,
  stations: Range,
): Passage | undefined {
  const tolerance = withinTouch(sizeOf(coreOf(figure.shape)));
  const edges = edgesAlong(figure, direction);
  const ends = endsOf(edges);
  if (stations.from < ends.from - tolerance || stations.to > ends.to + tolerance) return undefined;
  const lower: number[] = [];
  const upper: number[] = [];
  for (const [from, to] of stretchesOf(edges, stations, tolerance)) {
    const station = (from + to) / 2;
    const around = crossing(edges, station);
    const beyond = around.findIndex((edge) => edge.at(station) > level);
    // Inside, an odd number of edges lies below.
    if (beyond % 2 !== 1) return undefined;
    const [below, above] = [around[beyond - 1]!, around[beyond]!];
    // Each edge only rises or only falls over a stretch.
    lower.push(below.at(from), below.at(to));
    upper.push(above.at(from), above.at(to));
  }
  return lower.length === 0 ? undefined : { lower: rangeOf(lower), upper: rangeOf(upper) };
}

const rangeOf = (values: readonly number[]): Range => ({
  from: Math.min(...values),
  to: Math.max(...values),
});

/** A piece of an outline that a cut crosses once, from station to station, and the level where it does. */
interface Edge extends Range {
  readonly at: (station: number) => number;
}

/** The outline in quarters of arcs and straight edges; edges along the cuts are crossed by none. */
function edgesAlong({ shape, at, angle }: Placed, direction: number): readonly Edge[] {
  return outline({ shape, at: rotated(at, -direction), angle: angle - direction }).flatMap(
    (piece: OutlinePiece) => (piece.kind === "segment" ? straight(piece) : quarters(piece)),
  );
}

function straight({ from, to }: Segment): Edge[] {
  if (from.y === to.y) return [];
  const slope = (to.x - from.x) / (to.y - from.y);
  return [
    {
      from: Math.min(from.y, to.y),
      to: Math.max(from.y, to.y),
      at: (y) => from.x + (y - from.y) * slope,
    },
  ];
}

function quarters({ centre, radius, start, sweep }: Arc): Edge[] {
  const quarter = Math.PI / 2;
  const end = start + sweep;
  const cuts = [start];
  for (let turn = Math.floor(start / quarter) + 1; turn * quarter < end; turn++) cuts.push(turn * quarter);
  cuts.push(end);
  return cuts.slice(1).map((cut, index) => {
    const ys = [cuts[index]!, cut].map((angle) => centre.y + radius * Math.sin(angle));
    const side = Math.cos((cuts[index]! + cut) / 2) < 0 ? -1 : 1;
    return {
      from: Math.min(...ys),
      to: Math.max(...ys),
      at: (y) => centre.x + side * Math.sqrt(Math.max(0, radius ** 2 - (y - centre.y) ** 2)),
    };
  });
}

function endsOf(edges: readonly Edge[]): Range {
  return { from: Math.min(...edges.map(({ from }) => from)), to: Math.max(...edges.map(({ to }) => to)) };
}

/** Stretches of a range in which no edge begins or ends; slivers of no width but rounding are left out. */
function stretchesOf(edges: readonly Edge[], { from, to }: Range, tolerance: number): [number, number][] {
  const inside = edges.flatMap((edge) => [edge.from, edge.to]).filter((one) => one > from && one < to);
  const stations = [from, ...inside.sort((a, b) => a - b), to];
  return stations
    .slice(1)
    .map((station, index): [number, number] => [stations[index]!, station])
    .filter(([start, end]) => end - start > tolerance);
}

/** The edges that a cut crosses, in the order in which it does. */
function crossing(edges: readonly Edge[], station: number): Edge[] {
  return edges
    .filter(({ from, to }) => from < station && station < to)
    .sort((a, b) => a.at(station) - b.at(station));
}

type Curve = (station: number) => number;

/**
 * The least value of a convex and a concave function together, from below by no more than the tolerance.
 *
 * Source: derived; the chord of a concave function lies below it, and convex plus chord has one least value. Where
 * the chord is too far below there, both halves are asked.
 */
function leastOfSum(
  convex: Curve,
  concave: Curve,
  { from, to, tolerance }: Range & { readonly tolerance: number },
): number {
  let found = Infinity;
  const open = [{ from, to, depth: 0 }];
  for (let one = open.pop(); one; one = open.pop()) {
    const { from, to, depth } = one;
    const [start, end] = [concave(from), concave(to)];
    const chord: Curve = (y) => start + ((end - start) * (y - from)) / (to - from);
    const station = leastStation((y) => convex(y) + chord(y), from, to);
    const below = convex(station) + chord(station);
    // What lies above the least that was found already can't matter.
    if (below >= found) continue;
    if (depth >= deepest || concave(station) - chord(station) <= tolerance) {
      found = below;
    } else {
      open.push({ from, to: station, depth: depth + 1 }, { from: station, to, depth: depth + 1 });
    }
  }
  return found;
}

/** Halvings after which the value from below is taken as it is: it is never too great. */
const deepest = 40;

/** Where a convex function is least, by the golden section. */
function leastStation(convex: Curve, from: number, to: number): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [from, to];
  let [left, right] = [high - golden * (high - low), low + golden * (high - low)];
  let [atLeft, atRight] = [convex(left), convex(right)];
  for (let step = 0; step < 60; step++) {
    if (atLeft <= atRight) {
      [high, right, atRight] = [right, left, atLeft];
      left = high - golden * (high - low);
      atLeft = convex(left);
    } else {
      [low, left, atLeft] = [left, right, atRight];
      right = low + golden * (high - low);
      atRight = convex(right);
    }
  }
  const inner = (low + high) / 2;
  // A straight line is least at one of its ends, which the section only comes near to.
  return [from, to].reduce((best, end) => (convex(end) <= convex(best) ? end : best), inner);
}
