/** A part of what is derived from a project, with the values that it makes on the way. */
import type { Project } from "../project";
import { recalled } from "./recall";
import { type Keep, keeper, listOf, type Value } from "./value";

export interface Part<R> {
  /** Derived only when somebody asks, and again only when something that it looked at has changed. */
  (project: Project): R;
  /** In the order in which they were made. */
  values(project: Project): readonly Value[];
}

/** What only looks at the result of a part does nothing again while that comes out the same. */
export function part<R>(derive: (project: Project, keep: Keep) => R): Part<R> {
  const whole = recalled((project) => {
    const { keep, kept } = keeper();
    return { result: derive(project, keep), kept };
  });
  const result = recalled((project) => whole(project).result);
  return Object.assign(result, { values: (project: Project) => listOf(whole(project).kept) });
}

/** All values of several parts, each once. */
export function valuesOfParts(parts: readonly Part<unknown>[], project: Project): Value[] {
  return [...new Set(parts.flatMap((one) => one.values(project)))];
}
