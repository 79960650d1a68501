/** Fasteners of a panel and of what is fastened onto it, one by one. */
import type { Point } from "../../methods/geometry";
import { onceEach } from "../../once-each";
import type { Quantity } from "../../quantities";
import type { DoublerFasteners, Panel } from "../../records/types";
import type { Place, Written } from "../../records/written";
import type { Operand } from "../value";
import { type Operands, pointOf, type Unit, unitOf } from "./figures";

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

/** Single fasteners and rows of a panel, one by one, in the panel's unit; the same list while the panel is. */
export const fastenersOf: (panel: Panel) => readonly Fastener[] = onceEach((panel) => {
  const unit = unitOf(panel);
  const fasteners: Fastener[] = [];
  for (const { at, diameter, head, place } of panel.fasteners ?? []) {
    const centre = at && pointOf(at, unit);
    if (centre && diameter) fasteners.push(fastenerAt(centre, place, diameter, head));
  }
  for (const { from, to, count, diameter, head, place } of panel.fastenerRows ?? []) {
    const start = from && pointOf(from, unit);
    const end = to && pointOf(to, unit);
    if (!start || !end || !count || !diameter) continue;
    for (const at of spread(start, end, count.value)) fasteners.push(fastenerAt(at, place, diameter, head));
  }
  return fasteners;
});

function fastenerAt(
  { x, y }: Point,
  place: Place,
  diameter: Written<Quantity>,
  head: Written<Fastener["head"]> | undefined,
): Fastener {
  return { x, y, place, diameter, head: head?.value ?? "protruding", headPlace: head?.place };
}

/** The fasteners of a reinforcement, where their places are recorded; each line by itself. */
export function doublerLines({ lines, diameter, head }: DoublerFasteners, unit: Unit): Fastener[][] {
  return (lines ?? []).flatMap(({ from, to, count, place }) => {
    const start = from && pointOf(from, unit);
    const end = to && pointOf(to, unit);
    if (!start || !end || !count || !diameter) return [];
    return [spread(start, end, count.value).map((at) => fastenerAt(at, place, diameter, head))];
  });
}

/** Evenly spaced points between two ends, both counted. */
function spread(start: Point, end: Point, count: number): Point[] {
  return Array.from({ length: count }, (_, index) => {
    const share = index / (count - 1);
    return { x: start.x + share * (end.x - start.x), y: start.y + share * (end.y - start.y) };
  });
}
