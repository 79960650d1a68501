/** Counts of a reinforcement's fasteners against the places that the same record gives for them. */
import type { Placed } from "../../methods/geometry";
import type { DoublerFasteners } from "../../records/types";
import { doublerLines } from "./fasteners";
import type { LoadPath } from "./load-path";
import type { ReinforcementParts } from "./reinforcement";

export interface FastenerPlaces {
  /** Places of the record's lines; one that two lines share counts once. */
  readonly placed: number;
  /** How many there are all around by the record's counts. */
  readonly stated: number | undefined;
  /** Places on the side of the opening that has fewer; undefined where the direction of the load is not recorded. */
  readonly fewerSide: number | undefined;
}

/** Undefined where no places are recorded, or a line of them is half written. */
export function fastenerPlaces({
  fasteners,
  opening,
  path,
  unit,
}: ReinforcementParts): FastenerPlaces | undefined {
  const lines = fasteners ? doublerLines(fasteners, unit) : [];
  if (!fasteners || lines.length === 0 || lines.length < (fasteners.lines?.length ?? 0)) return undefined;
  const points = new Map(lines.flat().map((one) => [`${one.x.toFixed(6)} ${one.y.toFixed(6)}`, one]));
  return {
    placed: points.size,
    stated: statedTotal(fasteners),
    fewerSide: path.direction ? fewerBeside(opening.placed, [...points.values()], path) : undefined,
  };
}

/** Twice the count of a side, where the record does not say how many there are in all. */
function statedTotal({ total, countPerSide }: DoublerFasteners): number | undefined {
  return total?.value ?? (countPerSide && 2 * countPerSide.value);
}

/** Those before and those behind the middle of the opening, along the load; one abreast of it is on neither side. */
function fewerBeside(
  { shape, at }: Placed,
  points: readonly { readonly x: number; readonly y: number }[],
  { across }: LoadPath,
): number | undefined {
  if (shape.kind === "polygon") return undefined;
  const [ex, ey] = [Math.sin(across), -Math.cos(across)];
  const along = points.map(({ x, y }) => (x - at.x) * ex + (y - at.y) * ey);
  // Nothing less than a hair's breadth is before or behind.
  const hair = 1e-6;
  return Math.min(along.filter((one) => one > hair).length, along.filter((one) => one < -hair).length);
}
