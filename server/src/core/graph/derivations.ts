/**
 * Everything that is derived from a project, each part only when somebody asks for it, and again only when
 * something that it looked at has changed.
 */
import type { Project } from "../project";
import { type Air, deriveAir } from "./air";
import { type ClimateResults, deriveClimate } from "./climate";
import { electricalOf, electricalParts } from "./electrical";
import { deriveEligibility, type Eligibility } from "./eligibility";
import { deriveLines, type Lines } from "./lines";
import { deriveMounts, type Mounts } from "./mounts";
import { deriveOpenings, type Openings } from "./openings";
import { type Part, part, valuesOfParts } from "./part";
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
export const wiringOf: Part<Wiring> = part(deriveWiring);
export const weightsOf: Part<Weights> = part((project, keep) =>
  deriveWeights(
    project,
    () => wiringOf(project).harnessWeight,
    [sheetItems(structureOf(project).openings.flatMap(({ changes }) => changes))],
    keep,
  ),
);
export const openingsOf: Part<Openings> = part(deriveOpenings);
export const linesOf: Part<Lines> = part(deriveLines);
export const climateOf: Part<ClimateResults> = part((project, keep) =>
  deriveClimate(project, () => electricalOf(project), keep),
);
export const mountsOf: Part<Mounts> = part(deriveMounts);
export const placementsOf: Part<Placements> = part(derivePlacements);
export const routesOf: Part<Routes> = part((project, keep) => deriveRoutes(project, linesOf(project), keep));
export const eligibilityOf: (project: Project) => Eligibility | undefined = recalled(deriveEligibility);
export const structureOf: Part<Structure> = part((project, keep) =>
  deriveStructure(project, openingsOf(project), keep),
);
export const bracketsOf: Part<Brackets> = part(deriveBrackets);
export const airOf: Part<Air> = part((project, keep) => deriveAir(project, openingsOf(project), keep));

/** In the order in which a worksheet shows their values. */
const parts = [
  ...electricalParts,
  wiringOf,
  weightsOf,
  openingsOf,
  linesOf,
  climateOf,
  mountsOf,
  placementsOf,
  routesOf,
  structureOf,
  bracketsOf,
  airOf,
];

/** Every derived value of a project, each once. */
export function valuesOf(project: Project): Value[] {
  return valuesOfParts(parts, project);
}
