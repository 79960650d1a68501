/**
 * Everything that is derived from a project, each part only when somebody asks for it, and again only when
 * something that it looked at has changed.
 */
import type { Project } from "../project";
import { type Air, deriveAir } from "./air";
import { type ClimateResults, deriveClimate } from "./climate";
import { electricalOf } from "./electrical";
import { deriveEligibility, type Eligibility } from "./eligibility";
import { deriveLines, type Lines } from "./lines";
import { deriveMounts, type Mounts } from "./mounts";
import { deriveOpenings, type Openings } from "./openings";
import { derivePlacements, type Placements } from "./placement";
import { recalled } from "./recall";
import { deriveRoutes, type Routes } from "./routes";
import { deriveStructure, type Structure } from "./structure";
import { type Brackets, deriveBrackets } from "./structure/brackets";
import { sheetItems } from "./structure/sheet-weights";
import type { Value } from "./value";
import { deriveWeights, type Weights } from "./weights";
import { deriveWiring, type Wiring } from "./wiring";

export { electricalOf };
export const wiringOf: (project: Project) => Wiring = recalled(deriveWiring);
export const weightsOf: (project: Project) => Weights = recalled((project) =>
  deriveWeights(project, () => wiringOf(project).harnessWeight, [
    sheetItems(structureOf(project).openings.flatMap(({ changes }) => changes)),
  ]),
);
export const openingsOf: (project: Project) => Openings = recalled(deriveOpenings);
export const linesOf: (project: Project) => Lines = recalled(deriveLines);
export const climateOf: (project: Project) => ClimateResults = recalled((project) =>
  deriveClimate(project, () => electricalOf(project)),
);
export const mountsOf: (project: Project) => Mounts = recalled(deriveMounts);
export const placementsOf: (project: Project) => Placements = recalled(derivePlacements);
export const routesOf: (project: Project) => Routes = recalled((project) =>
  deriveRoutes(project, linesOf(project)),
);
export const eligibilityOf: (project: Project) => Eligibility | undefined = recalled(deriveEligibility);
export const structureOf: (project: Project) => Structure = recalled((project) =>
  deriveStructure(project, openingsOf(project)),
);
export const bracketsOf: (project: Project) => Brackets = recalled(deriveBrackets);
export const airOf: (project: Project) => Air = recalled((project) =>
  deriveAir(project, openingsOf(project)),
);

/** Every derived value of a project, in the order in which a worksheet shows them. */
export function valuesOf(project: Project): Value[] {
  return [
    ...electricalOf(project).values,
    ...wiringOf(project).values,
    ...weightsOf(project).values,
    ...openingsOf(project).values,
    ...linesOf(project).values,
    ...climateOf(project).values,
    ...mountsOf(project).values,
    ...placementsOf(project).values,
    ...routesOf(project).values,
    ...structureOf(project).values,
    ...bracketsOf(project).values,
    ...airOf(project).values,
  ];
}
