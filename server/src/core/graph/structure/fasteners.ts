/** Fasteners of a panel and of what is fastened onto it, one by one. */
import type { Point } from "../../methods/geometry";
import type { Quantity } from "../../quantities";
import type { DoublerFasteners, Panel } from "../../records/types";
import type { Place, Written } from "../../records/written";
import type { Operand } from "../value";
import { type Operands, pointOf, type Unit } from "./figures";

export interface Fastener {
  readonly x: number;
  readonly y: number;
  readonly place: Place;
  readonly diameter: Written<Quantity>;
  readonly head: "protruding" | "countersunk";
  readonly headPlace: Place | undefined;
}

/** Where a fastener stands, as inputs of a measure. */
export function fastenerOperand({ x, y, place }: Fastener, unit: Unit): Operands {
  const operand = (name: string, value: number): Operand => ({
    name,
    value,
    unit,
    places: [place],
    notes: [],
  });
  return { "fastener x": operand("fastener x", x), "fastener y": operand("fastener y", y) };
}

/** Single fasteners and rows of a panel, one by one. */
export function fastenersOf(panel: Panel, unit: Unit): Fastener[] {
  const single = (panel.fasteners ?? []).flatMap(({ at, diameter, head, place }) => {
    const centre = at && pointOf(at, unit);
    if (!centre || !diameter) return [];
    return [
      { ...centre, place, diameter, head: head?.value ?? "protruding", headPlace: head?.place } as const,
    ];
  });
  const rows = (panel.fastenerRows ?? []).flatMap(({ from, to, count, diameter, head, place }) => {
    const start = from && pointOf(from, unit);
    const end = to && pointOf(to, unit);
    if (!start || !end || !count || !diameter) return [];
    const common = { place, diameter, head: head?.value ?? "protruding", headPlace: head?.place } as const;
    return spread(start, end, count.value).map((at) => ({ ...at, ...common }));
  });
  return [...single, ...rows];
}

/** The fasteners of a reinforcement, where their places are recorded; each line by itself. */
export function doublerLines({ lines, diameter, head }: DoublerFasteners, unit: Unit): Fastener[][] {
  return (lines ?? []).flatMap(({ from, to, count, place }) => {
    const start = from && pointOf(from, unit);
    const end = to && pointOf(to, unit);
    if (!start || !end || !count || !diameter) return [];
    const common = { place, diameter, head: head?.value ?? "protruding", headPlace: head?.place } as const;
    return [spread(start, end, count.value).map((at) => ({ ...at, ...common }))];
  });
}

/** Evenly spaced points between two ends, both counted. */
function spread(start: Point, end: Point, count: number): Point[] {
  return Array.from({ length: count }, (_, index) => {
    const share = index / (count - 1);
    return { x: start.x + share * (end.x - start.x), y: start.y + share * (end.y - start.y) };
  });
}
