/** What the rules of routes have in common: a computed separation beside what has to be kept. */
import { type Assessment, holds } from "../../findings/finding";
import { routesOf } from "../../graph/derivations";
import type { RouteSeparation } from "../../graph/routes";
import type { Project } from "../../project";
import { flammableFluids } from "../../tables/line-installation-limits";
import type { Message } from "../rule";
import { apart } from "./recorded";

export type RouteFacts = {
  route: string;
  passed: string;
  /** What the line carries; none where a control run is passed. */
  fluid?: string;
  from: number;
  to: number;
  separation: number;
  least: number;
};

/** The separations of all bundles, or of all lines, that something has to be kept of. */
export function* heldRoutes(
  rule: string,
  kind: RouteSeparation["kind"],
  project: Project,
): Iterable<Assessment> {
  for (const one of routesOf(project).separations) {
    const { id, passed, fluid, between, place, value, least } = one;
    if (one.kind !== kind || !least) continue;
    const mayOnlyNotTouch = least.value === 0;
    yield {
      rule,
      subject: { kind, id },
      place,
      value,
      limit: least,
      sense: "at-least",
      holds: mayOnlyNotTouch ? value.value > 0 : holds(value.value, "at-least", least.value),
      // What only must not touch has no distance to be a share of.
      ...(mayOnlyNotTouch && { scale: { of: undefined } }),
      facts: {
        route: id,
        passed: passed.id,
        fluid,
        from: between[0],
        to: between[1],
        separation: value.value,
        least: least.value,
      } satisfies { [K in keyof RouteFacts]-?: RouteFacts[K] | undefined },
      related: [{ place: passed.place, words: passed.id }],
    };
  }
}

export function routeWords(
  kind: "Bundle" | "Line",
  { route, passed, fluid, from, to, separation, least }: RouteFacts,
): Message {
  const other = fluid === undefined ? `control run ${passed}` : `${fluid} line ${passed}`;
  const where = `between points ${from} and ${to} of its route`;
  const todo = fluid === undefined ? controlTodo : flammableFluids.has(fluid) ? flammableTodo : lineTodo;
  if (separation <= 0) return { what: `${kind} ${route} runs into ${other} ${where}.`, todo };
  const [is, asked] = apart(separation, least, "in");
  return { what: `${kind} ${route} passes ${other} at ${is} ${where}; ${asked} must be kept.`, todo };
}

const controlTodo =
  "Route it farther away, over the whole travel of the control, or put a guard between and record it with the pass.";
const flammableTodo =
  "Route it farther away, above the line; where that is impracticable, 2 in will do with close clamps, recorded with the pass.";
const lineTodo =
  "Route one clear of the other, or clamp them so that they can't touch, recorded with the pass.";
