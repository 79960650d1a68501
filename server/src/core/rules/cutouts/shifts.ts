/** Remedies that move an opening to where it keeps all of its distances. */
import { holds } from "../../findings/finding";
import { type Surroundings, surroundingsOf } from "../../graph/openings";
import { containment, type Point, pointClearance, relation } from "../../methods/geometry";
import type { Project } from "../../project";
import { convert, inUnit, type Quantity, roundDown, roundUp } from "../../quantities";
import type { Written } from "../../records/written";
import type { Remedy } from "../rule";

/** Steps in which a coordinate is moved, in the unit that it is written in: what can be marked out. */
const steps: Readonly<Record<string, number>> = { in: 0.05, mm: 1, cm: 0.1 };

/** No opening is moved further than this many steps. */
const mostSteps = 400;

/** Where it is not known how much: more than none. */
const some = Number.MIN_VALUE;

type Coordinate = Written<Quantity<"length">>;
type Direction = -1 | 0 | 1;

/** The same for every distance of an opening that is not kept. */
const known = new WeakMap<Project, Map<string, readonly Remedy[]>>();

/** Moves along one of the panel's axes, the shorter one first; along both, where neither is enough. */
export function shifts(cutoutId: string | undefined, project: Project | undefined): Iterable<Remedy> {
  if (cutoutId === undefined || !project) return [];
  const ofProject = known.get(project) ?? new Map<string, readonly Remedy[]>();
  known.set(project, ofProject);
  const remedies = ofProject.get(cutoutId) ?? [...shiftsOf(cutoutId, project)];
  ofProject.set(cutoutId, remedies);
  return remedies;
}

function* shiftsOf(cutoutId: string, project: Project): Iterable<Remedy> {
  const around = surroundingsOf(cutoutId, project);
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
  const inPanelUnit = (value: number, { value: { unit: own } }: Coordinate) =>
    convert(value, own, unit, "length");
  const stride = Math.hypot(
    dx * inPanelUnit(steps[x.value.unit]!, x),
    dy * inPanelUnit(steps[y.value.unit]!, y),
  );
  for (let count = 1; count <= mostSteps; ) {
    const [newX, newY] = [moved(x, dx, count), moved(y, dy, count)];
    const at = {
      x: dx === 0 ? placed.at.x : inPanelUnit(newX, x),
      y: dy === 0 ? placed.at.y : inPanelUnit(newY, y),
    };
    const need = stillNeeded(around, at);
    if (need > 0) {
      count += Math.max(1, Math.floor(need / stride));
      continue;
    }
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

/**
 * How far an opening that stands there has to be moved at the very least before all distances can be kept; 0
 * where they are. No distance changes by more than the move does.
 */
function stillNeeded({ placed, panel, fasteners, others }: Surroundings, at: Point): number {
  const there = { ...placed, at };
  const short = (distance: number, least: number) =>
    holds(distance, "at-least", least) ? 0 : least - distance;
  const needs = fasteners.map((fastener) => {
    const found = pointClearance(fastener, there);
    return short(found.kind === "outside" ? found.distance : -found.depth, fastener.least);
  });
  if (panel) {
    const centre = pointClearance(at, panel.placed);
    if (centre.kind === "outside") return Math.max(centre.distance, some, ...needs);
    // One distance that is not kept is enough to go on; the dearer ones are measured where all others are.
    if (needs.some((need) => need > 0)) return Math.max(...needs);
    const found = containment(there, panel.placed);
    const need = found.kind === "inside" ? short(found.distance, panel.least) : some;
    if (need > 0) return need;
  }
  for (const other of others) {
    const found = relation(there, other.placed);
    const need = found.kind === "clear" ? short(found.distance, other.least) : some;
    if (need > 0) return need;
  }
  return Math.max(0, ...needs);
}
