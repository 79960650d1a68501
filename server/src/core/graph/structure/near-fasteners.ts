/** Fasteners of a reinforcement against edges and against those that are there already. */
import { type Placed, pointClearance } from "../../methods/geometry";
import { inUnit } from "../../quantities";
import type { Place } from "../../records/written";
import { leastPitch } from "../../tables/rivet-spacing";
import type { Distance } from "../openings";
import { derive, type Keep, type Subject, tabled, written } from "../value";
import { type Fastener, fastenerOperand } from "./fasteners";
import type { Unit } from "./figures";

export interface NearFastener extends Distance {
  /** Line of the reinforcement's fastener. */
  readonly own: Fastener;
  readonly existing: Fastener;
  readonly place: Place;
}

/** Least distance from any fastener's centre to any of the outlines; undefined without fasteners. */
export function nearestEdge(fasteners: readonly Fastener[], outlines: readonly Placed[]): number | undefined {
  let least: number | undefined;
  for (const fastener of fasteners) {
    for (const outline of outlines) {
      const found = pointClearance(fastener, outline);
      const distance = found.kind === "outside" ? found.distance : found.depth;
      if (least === undefined || distance < least) least = distance;
    }
  }
  return least;
}

/**
 * The pair with the least room between their centres, against three diameters of the larger one, as in a row.
 * Undefined where either side has no recorded places.
 */
export function nearestFasteners(
  subject: Subject,
  own: readonly Fastener[],
  existing: readonly Fastener[],
  unit: Unit,
  keep: Keep,
): NearFastener | undefined {
  const factor = leastPitch(1, "protruding");
  let worst: { a: Fastener; b: Fastener; larger: Fastener; distance: number; room: number } | undefined;
  for (const a of own) {
    for (const b of existing) {
      const larger = inUnit(a.diameter.value, unit) >= inUnit(b.diameter.value, unit) ? a : b;
      const distance = Math.hypot(a.x - b.x, a.y - b.y);
      const room = distance - factor.value * inUnit(larger.diameter.value, unit);
      if (!worst || room < worst.room) worst = { a, b, larger, distance, room };
    }
  }
  if (!worst) return undefined;
  const { a, b, larger, distance } = worst;
  const numbered = (fastener: Fastener, prefix: string) =>
    Object.fromEntries(
      Object.entries(fastenerOperand(fastener, unit)).map(([symbol, operand]) => [
        `${prefix} ${symbol}`,
        operand && { ...operand, name: `${prefix} ${operand.name}` },
      ]),
    );
  return {
    own: a,
    existing: b,
    place: a.place,
    value: keep(
      derive({
        subject,
        quantity: "fastener-spacing",
        unit,
        method: "distance between the centres of the two nearest fasteners",
        operands: { ...numbered(a, "new"), ...numbered(b, "existing") },
        compute: () => distance,
      }),
    ),
    least: keep(
      derive({
        subject,
        quantity: "least-fastener-spacing",
        unit,
        formula: "k * D",
        operands: {
          k: tabled("diameters between centres", factor, "1", []),
          D: written("diameter of the larger fastener", larger.diameter, unit),
        },
        compute: (n) => n.k * n.D,
        sources: [factor.source],
      }),
    ),
  };
}
