/** Every page of a worksheet, in the order in which it is read. */
import { valuesOf } from "../../graph/derivations";
import type { Project } from "../../project";
import { balancePages } from "./balance";
import { electricalPages } from "./electrical";
import { installationPages } from "./installation";
import { mountPages } from "./mounts";
import type { Page } from "./page";
import { aircraftPage, circuitLayouts, openingLayouts, valuePage } from "./values";

export type { Cell, Page } from "./page";

/** Pages that have something to show. Pure. */
export function pagesOf(project: Project): Page[] {
  const values = valuesOf(project);
  return [
    ...electricalPages(project),
    ...circuitLayouts.map((layout) => valuePage(values, layout)),
    aircraftPage(values),
    ...openingLayouts.map((layout) => valuePage(values, layout)),
    ...installationPages(project),
    ...mountPages(project),
    ...balancePages(project),
  ].filter(({ rows }) => rows.length > 0);
}
