/** Remedies that move an opening to where it keeps all of its distances. */
import { holds } from "../../findings/finding";
import { type Surroundings, surroundingsOf } from "../../graph/openings";
import { containment, pointClearance, relation } from "../../methods/geometry";
import type { Project } from "../../project";
import { convert, inUnit, type Quantity, roundDown, roundUp } from "../../quantities";
import type { Written } from "../../records/written";
import type { Remedy } from "../rule";

/** Steps in which a coordinate is moved, in the unit that it is written in: what can be marked out. */
const steps: Readonly<Record<string, number>> = { in: 0.05, mm: 1, cm: 0.1 };

/** No opening is moved further than this many steps. */
const mostSteps = 400;

type Coordinate = Written<Quantity<"length">>;
type Direction = -1 | 0 | 1;

/** Moves along one of the panel's axes, the shorter one first; along both, where neither is enough. */
export function* shifts(cutoutId: string | undefined, project: Project | undefined): Iterable<Remedy> {
  const around = cutoutId === undefined || !project ? undefined : surroundingsOf(cutoutId, project);
  const { x, y } = around?.cutout.opening?.at ?? {};
  if (!around || !x || !y || !steps[x.value.unit] || !steps[y.value.unit]) return;
  const nearest = (...ways: readonly (readonly [Direction, Direction])[]): Move[] =>
    ways
      .map(([dx, dy]) => shortest(around, x, y, dx, dy))
      .filter((move) => move !== undefined)
      .toSorted((a, b) => a.distance - b.distance)
      .slice(0, 1);
  const straight = [...nearest([1, 0], [-1, 0]), ...nearest([0, 1], [0, -1])];
  const moves = straight.length > 0 ? straight : nearest([1, 1], [1, -1], [-1, 1], [-1, -1]);
  for (const { changed, title } of moves.toSorted((a, b) => a.distance - b.distance)) {
    yield {
      title: `Move ${cutoutId} to ${title}`,
      changes: changed.map(([{ place }, text]) => ({ place, text })),
      series: title,
    };
  }
}

interface Move {
  readonly distance: number;
  readonly title: string;
  readonly changed: readonly (readonly [Coordinate, string])[];
}

/** The least move in a direction after which every distance is kept; undefined where there is none in reach. */
function shortest(
  around: Surroundings,
  x: Coordinate,
  y: Coordinate,
  dx: Direction,
  dy: Direction,
): Move | undefined {
  const { unit, placed } = around;
  for (let count = 1; count <= mostSteps; count++) {
    const [newX, newY] = [moved(x, dx, count), moved(y, dy, count)];
    const at = {
      x: dx === 0 ? placed.at.x : convert(newX, x.value.unit, unit, "length"),
      y: dy === 0 ? placed.at.y : convert(newY, y.value.unit, unit, "length"),
    };
    if (!keepsAll(around, at)) continue;
    const named = [
      ...(dx === 0 ? [] : [["x", x, `${newX} ${x.value.unit}`] as const]),
      ...(dy === 0 ? [] : [["y", y, `${newY} ${y.value.unit}`] as const]),
    ];
    return {
      distance: Math.hypot(at.x - placed.at.x, at.y - placed.at.y),
      title: named.map(([name, , text]) => `${name} ${text}`).join(", "),
      changed: named.map(([, coordinate, text]) => [coordinate, text]),
    };
  }
  return undefined;
}

/** A coordinate so many steps on, counted on the scale of whole steps; in its own unit. */
function moved({ value }: Coordinate, direction: Direction, count: number): number {
  const step = steps[value.unit]!;
  const written = inUnit(value, value.unit);
  if (direction > 0) return roundDown(roundDown(written, step) + count * step + step / 2, step);
  return roundUp(roundUp(written, step) - count * step - step / 2, step);
}

function keepsAll({ placed, panel, fasteners, others }: Surroundings, at: { x: number; y: number }): boolean {
  const there = { ...placed, at };
  const inside = panel && containment(there, panel.placed);
  if (inside && (inside.kind !== "inside" || !holds(inside.distance, "at-least", panel.least))) return false;
  const isClear = others.every((other) => {
    const found = relation(there, other.placed);
    return found.kind === "clear" && holds(found.distance, "at-least", other.least);
  });
  return (
    isClear &&
    fasteners.every((fastener) => {
      const found = pointClearance(fastener, there);
      return found.kind === "outside" && holds(found.distance, "at-least", fastener.least);
    })
  );
}
