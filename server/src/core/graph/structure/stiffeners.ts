/** Openings against the stiffeners of their panel. */
import { type Placed, relation } from "../../methods/geometry";
import { inUnit } from "../../quantities";
import type { Stiffener } from "../../records/types";
import type { CutoutResult, Distance } from "../openings";
import { derive, type Keep, type Operand, type Value, written } from "../value";
import { figureOperands, geometrySource, pointOf, type Unit, unitOf } from "./figures";

export interface StiffenerResult extends Distance {
  readonly opening: CutoutResult;
  readonly stiffener: Stiffener;
  readonly isCut: boolean;
}

/** Every stiffener that the opening cuts, and the nearest of the others. */
export function stiffenersBy(opening: CutoutResult, keep: Keep): StiffenerResult[] {
  const unit = unitOf(opening.panel);
  const found = (opening.panel.stiffeners ?? []).flatMap((stiffener) => {
    const strip = stripOf(stiffener, unit);
    return strip ? [{ stiffener, strip, relation: relation(opening.placed, strip) }] : [];
  });
  const distances = found.map((one) => (one.relation.kind === "clear" ? one.relation.distance : -1));
  const nearest = Math.min(...distances.filter((distance) => distance >= 0));
  return found
    .filter((_, index) => distances[index]! < 0 || distances[index] === nearest)
    .map(({ stiffener, relation: how }) => {
      if (how.kind !== "clear") {
        return { opening, stiffener, isCut: true, value: undefined, least: undefined };
      }
      return {
        opening,
        stiffener,
        isCut: false,
        value: keep(distanceTo(opening, stiffener, how.distance, unit)),
        least: keep(leastTo(opening, unit)),
      };
    });
}

function distanceTo(
  { id, cutout }: CutoutResult,
  stiffener: Stiffener,
  distance: number,
  unit: Unit,
): Value | undefined {
  const ends: Record<string, Operand> = {};
  for (const [name, point] of [
    ["from", stiffener.from],
    ["to", stiffener.to],
  ] as const) {
    ends[`stiffener ${name} x`] = written(`stiffener ${name} x`, point?.x, unit);
    ends[`stiffener ${name} y`] = written(`stiffener ${name} y`, point?.y, unit);
  }
  return derive({
    subject: { kind: "cutout", id },
    quantity: "stiffener-distance",
    unit,
    method: "least distance from the opening's outline to the stiffener's foot",
    operands: {
      ...figureOperands(cutout.opening!, unit),
      ...ends,
      "stiffener width": written("stiffener width", stiffener.width, unit),
    },
    compute: () => distance,
    sources: [geometrySource],
  });
}

function leastTo({ id, panel }: CutoutResult, unit: Unit): Value | undefined {
  const { minimums } = panel;
  return derive({
    subject: { kind: "cutout", id },
    quantity: "least-stiffener-distance",
    unit,
    formula: "least",
    operands: { least: written("the panel's minimum, stiffener", minimums?.stiffener, unit) },
    compute: ({ least }) => least,
    sources: minimums?.data ? [{ document: minimums.data.value, standing: "record" }] : [],
  });
}

/** A stiffener's foot as a rectangle along its middle line; undefined without a length. */
export function stripOf({ from, to, width }: Stiffener, unit: Unit): Placed | undefined {
  const start = from && pointOf(from, unit);
  const end = to && pointOf(to, unit);
  if (!start || !end || !width) return undefined;
  const [dx, dy] = [end.x - start.x, end.y - start.y];
  const length = Math.hypot(dx, dy);
  if (!(length > 0)) return undefined;
  return {
    shape: { kind: "rectangle", width: length, height: inUnit(width.value, unit), cornerRadius: 0 },
    at: { x: (start.x + end.x) / 2, y: (start.y + end.y) / 2 },
    angle: Math.atan2(dy, dx),
  };
}
