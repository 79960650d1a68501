/** Whether the fasteners that a record counts find room on its reinforcement, row by row. */
import { beside, lengthAround, passageOf, reachAlong } from "../../methods/geometry";
import { none } from "../../none";
import type { Quantity } from "../../quantities";
import type { Written } from "../../records/written";
import { isBelow } from "../../rounding";
import type { Source } from "../../source";
import type { Distance } from "../openings";
import { asRecorded, countAsRecorded, counted } from "../recorded";
import { derive, derived, type Operand, type Value, written } from "../value";
import { figureOperands, geometrySource } from "./figures";
import type { ReinforcementParts } from "./reinforcement";
import { doublerOperands, rowsOnSide } from "./reinforcement-operands";

export interface FastenerRoom {
  /** Fasteners in all, and twice those of a side. */
  readonly total: Distance;
  /** How far the reinforcement reaches beyond its opening where the rows stand, and what they take of it. */
  readonly overlap: Distance;
  /** Undefined where the rows themselves have no room, and where the places of the fasteners are recorded. */
  readonly row: Row | undefined;
  /** The most fasteners that the rows of a side have room for. */
  readonly most: Value | undefined;
}

/** What one row of a side finds, and how its fasteners stand in it; all in the unit of the length. */
export interface Row {
  /** Across the load from edge to edge, or on one side of the way around the opening. */
  readonly length: Value;
  readonly isAround: boolean;
  readonly pitch: number;
  readonly edge: number;
}

/** The pitch at which so many fasteners take all of a row. */
export function pitchInRow({ length: { value }, isAround, edge }: Row, count: number): number {
  return isAround ? value / count : (value - 2 * edge) / (count - 1);
}

/** What so many fasteners take of a row at its pitch. */
export function lengthOfRow({ isAround, pitch, edge }: Row, count: number): number {
  return isAround ? count * pitch : (count - 1) * pitch + 2 * edge;
}

/** What holds for distances that the record leaves out. */
export interface LeastDistances {
  readonly pitch: Value | undefined;
  readonly rowPitch: Value | undefined;
  readonly edge: Value | undefined;
}

export function fastenerRoom(parts: ReinforcementParts, least: LeastDistances): FastenerRoom {
  const { fasteners, subject, keep } = parts;
  const total = {
    value: keep(countAsRecorded(subject, "fastener-total", "fasteners in all", fasteners?.total)),
    least: keep(
      derive({
        subject,
        quantity: "least-fastener-total",
        unit: "1",
        formula: "2 * n",
        operands: { n: counted("fasteners on each side", fasteners?.countPerSide) },
        compute: ({ n }) => 2 * n,
      }),
    ),
  };
  // Where each one stands, its distances are measured.
  if (!fasteners || fasteners.lines?.length) {
    return { total, overlap: { value: undefined, least: undefined }, row: undefined, most: undefined };
  }
  const rows = rowsOf(parts, least);
  const overlap = { value: overlapOf(parts, rows), least: leastOverlap(parts, rows) };
  if (!overlap.value || !overlap.least || isBelow(overlap.value.value, overlap.least.value)) {
    return { total, overlap, row: undefined, most: undefined };
  }
  const isAround = rows.across === undefined;
  const length = isAround ? wayAround(parts, rows, overlap.value) : wayAcross(parts, rows, rows.across);
  const { p, e } = rows;
  const row = length && p && e && { length, isAround, pitch: p.value, edge: e.value };
  return { total, overlap, row, most: mostInRows(parts, rows, length) };
}

/** How the rows of a side run, and how far apart everything stands in them. */
interface Rows {
  /**
   * Direction of straight rows, in radians from the panel's x axis; undefined where they run around the opening.
   */
  readonly across: number | undefined;
  readonly r: Operand;
  readonly e: Operand;
  readonly p: Operand;
  /** Empty for a single row. */
  readonly q: { readonly q?: Operand };
  /** Of those that the record leaves out. */
  readonly sources: { readonly [key in "e" | "p" | "q"]: readonly Source[] };
}

function rowsOf(parts: ReinforcementParts, least: LeastDistances): Rows {
  const { fasteners, unit } = parts;
  const { rows, rowPitch, pitch, edgeDistance } = fasteners ?? {};
  const isSingle = (rows?.value ?? 1) === 1;
  const recorded = (name: string, length: Written<Quantity> | undefined, orLeast: Value | undefined) =>
    written(name, length, unit) ?? derived(`least ${name}`, orLeast);
  return {
    across: directionOfRows(parts),
    r: rowsOnSide(parts),
    e: recorded("edge distance", edgeDistance, least.edge),
    p: recorded("pitch", pitch, least.pitch),
    q: isSingle ? {} : { q: recorded("distance between rows", rowPitch, least.rowPitch) },
    sources: {
      e: sourcesUnless(edgeDistance, least.edge),
      p: sourcesUnless(pitch, least.pitch),
      q: isSingle ? none : sourcesUnless(rowPitch, least.rowPitch),
    },
  };
}

const sourcesUnless = (
  recorded: Written<Quantity> | undefined,
  least: Value | undefined,
): readonly Source[] => (recorded ? none : (least?.sources ?? none));

/**
 * Rows run around the opening where the reinforcement is a ring, a circle or a slot, and where nobody says which way
 * the load runs; otherwise across the load, on a rectangle along that of its sides which is nearest to it.
 */
function directionOfRows({ outline, path }: ReinforcementParts): number | undefined {
  if (!outline || !path.direction) return undefined;
  if (outline.shape.kind === "polygon") return path.across;
  if (outline.shape.kind !== "rectangle") return undefined;
  const quarter = Math.PI / 2;
  return outline.angle + Math.round((path.across - outline.angle) / quarter) * quarter;
}

function overlapOf(parts: ReinforcementParts, { across }: Rows): Value | undefined {
  const { reinforcement, subject, unit, keep, outline, standing, opening } = parts;
  if (!reinforcement.outline) {
    return keep(asRecorded(subject, "doubler-overlap", "width of the ring", reinforcement.width, unit));
  }
  if (!outline || standing?.kind !== "inside") return undefined;
  return keep(
    derive({
      subject,
      quantity: "doubler-overlap",
      unit,
      method:
        across === undefined
          ? "least distance between the outlines of opening and doubler"
          : "least length of the doubler before and behind the opening, across its rows",
      operands: doublerOperands(parts),
      compute: () => {
        if (across === undefined) return standing.distance;
        const { before, behind } = beside(opening.placed, outline, across + Math.PI / 2);
        return Math.min(before, behind);
      },
      sources: [geometrySource],
    }),
  );
}

function leastOverlap(
  { subject, unit, keep }: ReinforcementParts,
  { r, e, q, sources }: Rows,
): Value | undefined {
  return keep(
    derive({
      subject,
      quantity: "least-doubler-overlap",
      unit,
      formula: "q" in q ? "(r - 1) * q + 2 * e" : "2 * e",
      operands: "q" in q ? { r, ...q, e } : { e },
      compute: (n: { r?: number; q?: number; e: number }) => ((n.r ?? 1) - 1) * (n.q ?? 0) + 2 * n.e,
      sources: [...sources.e, ...sources.q],
    }),
  );
}

/**
 * The rows stand as near to the opening as their edge distance lets them, and whatever lies within the edge distance
 * of one of them lies on the doubler: so in a corner that is round or cut off no fastener counts.
 */
function wayAcross(parts: ReinforcementParts, { r, e, q }: Rows, across: number): Value | undefined {
  const { subject, unit, keep, outline, opening } = parts;
  const along = across + Math.PI / 2;
  return keep(
    derive({
      subject,
      quantity: "row-length",
      unit,
      method:
        "between edges of the doubler that hold for all rows of a side and their edge distances, next to the opening",
      operands: { ...doublerOperands(parts), r, e, ...q },
      compute: (n: { r: number; e: number; q?: number }) => {
        const own = reachAlong(opening.placed, across);
        const ends = reachAlong(opening.placed, along);
        const taken = 2 * n.e + (n.r - 1) * (n.q ?? 0);
        const sides = [
          { from: ends.to, to: ends.to + taken },
          { from: ends.from - taken, to: ends.from },
        ];
        const lengths = sides.map((side) => {
          const edges = passageOf(outline!, across, (own.from + own.to) / 2, side);
          return edges ? Math.max(0, edges.upper.from - edges.lower.to) : 0;
        });
        return Math.min(...lengths);
      },
      sources: [geometrySource],
    }),
  );
}

/** The innermost row is the shortest; the rows stand in the middle of the ring. */
function wayAround(parts: ReinforcementParts, { r, q }: Rows, width: Value): Value | undefined {
  const { subject, unit, keep, opening } = parts;
  return keep(
    derive({
      subject,
      quantity: "row-length",
      unit,
      method:
        "half the way around the opening of the innermost row, all rows in the middle of the least width",
      operands: {
        ...figureOperands(opening.cutout.opening!, unit),
        w: derived("least width of the reinforcement", width),
        r,
        ...q,
      },
      compute: (n: { w: number; r: number; q?: number }) =>
        lengthAround(opening.placed.shape) / 2 + (Math.PI * (n.w - (n.r - 1) * (n.q ?? 0))) / 2,
      sources: [geometrySource],
    }),
  );
}

function mostInRows(
  { subject, keep }: ReinforcementParts,
  { across, r, e, p, sources }: Rows,
  length: Value | undefined,
): Value | undefined {
  const L = derived("length of a row", length);
  const shared = {
    subject,
    quantity: "most-fasteners",
    unit: "1",
    sources: [...sources.e, ...sources.p],
  } as const;
  // Room for binary noise: a pitch that fits exactly does.
  const whole = (places: number) => Math.floor(places + 1e-9);
  return keep(
    across === undefined
      ? derive({
          ...shared,
          formula: "r * floor(L / p)",
          operands: { r, L, p },
          compute: (n) => n.r * whole(n.L / n.p),
        })
      : derive({
          ...shared,
          formula: "max(0, r * (floor((L - 2 * e) / p) + 1))",
          operands: { r, L, e, p },
          compute: (n) => Math.max(0, n.r * (whole((n.L - 2 * n.e) / n.p) + 1)),
        }),
  );
}
