/** A part of what is derived from a project, with the values that it makes on the way. */
import type { Project } from "../project";
import { recalled } from "./recall";
import { type Keep, type Keeping, keeping, listOf, type Value } from "./value";

export interface Part<R> {
  /** Derived only when somebody asks, and again only when something that it looked at has changed. */
  (project: Project): R;
  /** In the order in which they were made. */
  values(project: Project): readonly Value[];
}

/** What only looks at the result of a part does nothing again while that comes out the same. */
export function part<R>(derive: (project: Project, keep: Keep) => R): Part<R> {
  const whole = recalled((project, before: Keeping<R> | undefined) =>
    keeping((keep) => derive(project, keep), before?.kept),
  );
  const result = recalled((project) => whole(project).result);
  return Object.assign(result, { values: (project: Project) => listOf(whole(project).kept) });
}

/** All values of several parts, each once. */
export function valuesOfParts(parts: readonly Part<unknown>[], project: Project): Value[] {
  return [...new Set(parts.flatMap((one) => one.values(project)))];
}

/** How each part of several is had from a project. */
type PartsOf<R> = { readonly [K in keyof R]: (project: Project) => R[K] };

/**
 * Several parts under one name, each derived when somebody asks for it.
 *
 * The getters belong to a class. An object with getters of its own has a hidden class of its own in the engine,
 * and that keeps what they close over, here a whole version of a project, alive through every small collection.
 */
export function together<R extends object>(parts: PartsOf<R>): (project: Project) => R {
  class Together {
    constructor(readonly project: Project) {}
  }
  for (const [name, partOf] of Object.entries<(project: Project) => unknown>(parts)) {
    Object.defineProperty(Together.prototype, name, {
      get(this: Together) {
        return partOf(this.project);
      },
    });
  }
  return (project) => new Together(project) as unknown as R;
}
