/** A recorded route as straight stretches from point to point. */
import { clearance, type Solid, type SweptLine } from "../../methods/solids";
import type { Bundle, Line, SpacePoint } from "../../records/types";
import { isWholeList } from "../entries";
import { pointIn, pointOperands } from "../placement/boxes";
import type { Operand } from "../value";

/** Separations have their limits in in, so that this is what routes are measured in. */
export const routeUnit = "in";

export interface Course {
  readonly points: readonly SpacePoint[];
  /** Without radius: the centre line. One fewer than there are points. */
  readonly stretches: readonly SweptLine[];
}

/** Undefined without a route, and while a point of it is missing or faulty: what is left would be another route. */
export function courseOf(owner: Bundle | Line): Course | undefined {
  const { route } = owner;
  if (!route || route.length < 2 || !isWholeList(owner, "route", route)) return undefined;
  const places = route.map((point) => pointIn(point, routeUnit));
  const stretches = places.slice(1).flatMap((to, index): SweptLine[] => {
    const from = places[index];
    return from && to ? [{ kind: "line", from, to, radius: 0 }] : [];
  });
  return stretches.length === route.length - 1 ? { points: route, stretches } : undefined;
}

export interface Nearest {
  /** In in; negative inside the other. */
  readonly distance: number;
  /** Which stretch of the course comes nearest, and which of the others, from 0. */
  readonly stretch: number;
  readonly other: number;
}

/** Where a course comes nearest to any of the solids. */
export function nearestOf({ stretches }: Course, others: readonly Solid[]): Nearest {
  let nearest: Nearest = { distance: Number.POSITIVE_INFINITY, stretch: 0, other: 0 };
  for (const [stretch, one] of stretches.entries()) {
    for (const [other, solid] of others.entries()) {
      const distance = clearance(one, solid);
      if (distance < nearest.distance) nearest = { distance, stretch, other };
    }
  }
  return nearest;
}

/** All points of a route, those of the stretch that comes nearest first: a reader is shown the first few. */
export function courseOperands({ points }: Course, id: string, stretch: number): Record<string, Operand> {
  const operands = points.map((point, index) => pointOperands(point, routeUnit, `${id} point ${index + 1} `));
  return Object.assign({}, operands[stretch], operands[stretch + 1], ...operands);
}
