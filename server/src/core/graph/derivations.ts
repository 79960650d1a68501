/**
 * Everything that is derived from a project, each part computed once and only when somebody asks for it.
 */
import type { Project } from "../project";
import { type Air, deriveAir } from "./air";
import { deriveElectrical, type Electrical } from "./electrical";
import { deriveOpenings, type Openings } from "./openings";
import { deriveStructure, type Structure } from "./structure";
import type { Value } from "./value";
import { deriveWeights, type Weights } from "./weights";
import { deriveWiring, type Wiring } from "./wiring";

export const electricalOf: (project: Project) => Electrical = once(deriveElectrical);
export const wiringOf: (project: Project) => Wiring = once(deriveWiring);
export const weightsOf: (project: Project) => Weights = once((project) =>
  deriveWeights(project, wiringOf(project)),
);
export const openingsOf: (project: Project) => Openings = once(deriveOpenings);
export const structureOf: (project: Project) => Structure = once((project) =>
  deriveStructure(project, openingsOf(project)),
);
export const airOf: (project: Project) => Air = once((project) => deriveAir(project, openingsOf(project)));

/** Every derived value of a project, in the order in which a worksheet shows them. */
export function valuesOf(project: Project): Value[] {
  return [
    ...electricalOf(project).values,
    ...wiringOf(project).values,
    ...weightsOf(project).values,
    ...openingsOf(project).values,
    ...structureOf(project).values,
    ...airOf(project).values,
  ];
}

function once<T>(compute: (project: Project) => T): (project: Project) => T {
  const known = new WeakMap<Project, T>();
  return (project) => {
    const found = known.get(project);
    if (found !== undefined) return found;
    const made = compute(project);
    known.set(project, made);
    return made;
  };
}
