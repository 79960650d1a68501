/**
 * Where components are: their boxes in the aircraft, how near they come to each other and to what must be kept
 * free, whether controls are within reach, whether they pass through their panel, and can be serviced through one.
 */
import type { Project } from "../../project";
import type { KeepOut } from "../../records/types";
import { byIdOf } from "../by-id";
import type { Keep } from "../value";
import { boxOf, type NamedPlacement, type PlacedComponent, type Unit, unitOf } from "./boxes";
import { type ClearanceResult, clearancesOf, type Neighbour } from "./clearances";
import { keepOutNeighbour } from "./keep-outs";
import { type PassageResult, passageOf } from "./passages";
import { type ReachResult, reachesOf } from "./reaches";
import { isServiced, type ServiceResult, servicesOf } from "./servicing";

export interface Placements {
  readonly components: readonly PlacedComponent[];
  readonly clearances: readonly ClearanceResult[];
  readonly reaches: readonly ReachResult[];
  readonly passages: readonly PassageResult[];
  /** Each job of each component that has a place and names panels. */
  readonly services: readonly ServiceResult[];
  /** Components that would have a place but for data that is not recorded, with the keys. */
  readonly unplaced: readonly (NamedPlacement & { readonly missing: readonly string[] })[];
  /** Keep-outs whose size is not recorded. */
  readonly shapeless: readonly KeepOut[];
  /** Unit of all lengths here. */
  readonly unit: Unit;
}

/** All values of a project's placement. Pure. */
export function derivePlacements(project: Project, keep: Keep): Placements {
  const { kit, airframe, install } = project;
  const unit = unitOf(install);
  const byId = byIdOf(kit?.components);
  const placements = (install.placement ?? []).flatMap((placement): NamedPlacement[] => {
    const component = placement.component && byId.get(placement.component.value);
    return component?.id ? [{ placement, component, id: component.id.value }] : [];
  });

  const keepOuts: Neighbour[] = [];
  const shapeless: KeepOut[] = [];
  for (const keepOut of airframe?.keepOuts ?? []) {
    const neighbour = keepOutNeighbour(keepOut, unit);
    if (neighbour) keepOuts.push(neighbour);
    else if (keepOut.id) shapeless.push(keepOut);
  }

  const components: PlacedComponent[] = [];
  const unplaced: Placements["unplaced"][number][] = [];
  for (const one of placements) {
    const box = boxOf(one, unit);
    if (!("missing" in box)) components.push({ ...one, box });
    // Told where something is to be kept clear of it, or somebody began to say how large it is.
    else if (keepOuts.length > 0 || one.component.size || isServiced(one)) {
      unplaced.push({ ...one, missing: box.missing });
    }
  }

  const panels = airframe?.panels ?? [];
  return {
    components,
    clearances: clearancesOf(components, keepOuts, unit, keep),
    reaches: reachesOf(project, unit, keep),
    passages: placements.flatMap((one) => passageOf(one, panels, unit) ?? []),
    services: components.flatMap((one) => servicesOf(one, panels, unit, keep)),
    unplaced,
    shapeless,
    unit,
  };
}
