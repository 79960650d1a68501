/** Air through openings and ducts, in each condition. */
import type { Project } from "../../project";
import type { AirPath, Duct, Fan } from "../../records/types";
import { byIdOf } from "../by-id";
import type { Openings } from "../openings";
import { Memory } from "../remember";
import type { Keep } from "../value";
import { type ConditionAir, conditionAirs } from "./conditions";
import { type DuctResult, deriveDuct } from "./ducts";
import { derivePath, type PathResult } from "./paths";

export interface Air {
  readonly conditions: readonly ConditionAir[];
  readonly paths: readonly PathResult[];
  readonly ducts: readonly DuctResult[];
}

/** Pure; nothing is derived, not even the density of the air, in a record without paths and ducts. */
export function deriveAir({ kit, airframe, install }: Project, { cutouts }: Openings, keepValue: Keep): Air {
  if (!install.airPaths?.length && !install.ducts?.length) {
    return { conditions: [], paths: [], ducts: [] };
  }
  const airs = conditionAirs(install.conditions, keepValue);
  const fans = byIdOf(kit?.fans);
  const openings = new Map(cutouts.map((one) => [one.id, one]));
  const components = byIdOf(kit?.components);
  const nominal = airframe?.electrical?.nominal;
  const paths = (install.airPaths ?? []).flatMap((path): PathResult[] => {
    const fan = path.fan && fans.get(path.fan.value);
    const named = (ids: AirPath["inlets"]) => (ids ?? []).map(({ value }) => openings.get(value));
    const sides = [named(path.inlets), named(path.outlets)];
    // An opening that is no figure, or not there, leaves the path open: it is told elsewhere.
    const [inlets, outlets] = sides.map((side) => side.filter((one) => one !== undefined));
    const isWhole = sides.every((side) => side.length > 0 && side.every((one) => one !== undefined));
    if (!path.id || !fan || !inlets || !outlets || !isWhole) return [];
    const cooled = path.cools && components.get(path.cools.value);
    const parts = { path, id: path.id.value, fan, cooled, nominal, inlets, outlets, airs };
    const basis = [cooled, nominal, ...inlets, null, ...outlets, null, ...airs];
    return [knownPaths.recall(path, fan, basis, keepValue, (keep) => derivePath(parts, keep))];
  });
  const ducts = (install.ducts ?? []).flatMap((duct): DuctResult[] => {
    if (!duct.id) return [];
    const fan = duct.fan && fans.get(duct.fan.value);
    const parts = { duct, id: duct.id.value, fan, airs };
    return [knownDucts.recall(duct, fan ?? duct, airs, keepValue, (keep) => deriveDuct(parts, keep))];
  });
  return { conditions: airs, paths, ducts };
}

const knownPaths = new Memory<AirPath, Fan, PathResult>();
const knownDucts = new Memory<Duct, Fan | Duct, DuctResult>();
