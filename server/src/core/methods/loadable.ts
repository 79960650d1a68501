import { isAtMost, isBelow } from "../rounding";

/**
 * What an aircraft can carry, as limits on its stations. Plain numbers in any one consistent set of units; arms
 * positive aft of the datum.
 *
 * Loads count as continuous: a seat may hold any weight between its least and its most. Whole persons are
 * among these loadings, so that no limit found respected by all of them is broken by a whole person.
 */

/** What is always on board: the empty aircraft, with whatever no loading changes. */
export interface FixedLoad {
  readonly weight: number;
  readonly moment: number;
}

/** A seat, a baggage compartment or a fuel tank. */
export interface LoadStation {
  readonly id: string;
  readonly arm: number;
  /** Weight that is always there: a required pilot, the minimum fuel. Zero or more. */
  readonly least: number;
  /** Limit of the compartment; capacity x density of a tank. */
  readonly most: number;
}

/**
 * A limit on several stations together. Groups must lie inside each other or apart. A maximum zero-fuel
 * weight is such a group too: all stations but the tanks, at most that weight less the fixed one.
 */
export interface LoadGroup {
  readonly ids: readonly string[];
  readonly most: number;
}

export interface Loadable {
  readonly fixed: FixedLoad;
  readonly stations: readonly LoadStation[];
  readonly groups?: readonly LoadGroup[];
  /** Take-off or ramp weight that no loading goes above. */
  readonly maximum?: number;
}

/**
 * Why the loadings of an aircraft cannot be found. Stations are named by id, groups by their place in the list.
 *
 * - `not-finite`: a number is missing or without end; `station` and `group` say whose, neither: the aircraft's
 * - `crossing-groups`: two groups share stations and neither holds the other; not supported
 */
export type LoadingProblem =
  | { readonly reason: "not-finite"; readonly station?: string; readonly group?: number }
  | { readonly reason: "no-weight" }
  | { readonly reason: "repeated-station" | "negative-load" | "least-above-most"; readonly station: string }
  | { readonly reason: "unknown-station"; readonly station: string; readonly group: number }
  | { readonly reason: "least-above-group"; readonly group: number }
  | { readonly reason: "crossing-groups"; readonly groups: readonly [number, number] }
  | { readonly reason: "lightest-above-maximum"; readonly lightest: number; readonly maximum: number };

/** Everything that keeps the loadings from being found; empty when nothing does. */
export function loadableProblems(loadable: Loadable): LoadingProblem[] {
  const notFinite = notFiniteProblems(loadable);
  if (notFinite.length > 0) return notFinite;
  return [...stationProblems(loadable), ...groupProblems(loadable), ...totalProblems(loadable)];
}

function notFiniteProblems({ fixed, stations, groups = [], maximum = 0 }: Loadable): LoadingProblem[] {
  const problems: LoadingProblem[] = [];
  const areFinite = (...numbers: number[]) => numbers.every(Number.isFinite);
  if (!areFinite(fixed.weight, fixed.moment, maximum)) problems.push({ reason: "not-finite" });
  for (const { id, arm, least, most } of stations) {
    if (!areFinite(arm, least, most)) problems.push({ reason: "not-finite", station: id });
  }
  groups.forEach(({ most }, group) => {
    if (!areFinite(most)) problems.push({ reason: "not-finite", group });
  });
  return problems;
}

function stationProblems({ stations }: Loadable): LoadingProblem[] {
  const seen = new Set<string>();
  return stations.flatMap(({ id: station, least, most }) => {
    const problems: LoadingProblem[] = [];
    if (seen.has(station)) problems.push({ reason: "repeated-station", station });
    seen.add(station);
    if (least < 0) problems.push({ reason: "negative-load", station });
    if (!isAtMost(least, most)) problems.push({ reason: "least-above-most", station });
    return problems;
  });
}

function groupProblems({ stations, groups = [] }: Loadable): LoadingProblem[] {
  const least = new Map(stations.map((station) => [station.id, station.least]));
  return groups.flatMap(({ ids, most }, group) => {
    const members = [...new Set(ids)];
    const unknown = members.filter((id) => !least.has(id));
    const sum = members.reduce((total, id) => total + (least.get(id) ?? 0), 0);
    const problems: LoadingProblem[] = unknown.map((station) => ({
      reason: "unknown-station",
      station,
      group,
    }));
    if (!isAtMost(sum, most)) problems.push({ reason: "least-above-group", group });
    const crossed = groups.findIndex((other, index) => index < group && doCross(groups[group]!, other));
    if (crossed >= 0) problems.push({ reason: "crossing-groups", groups: [crossed, group] });
    return problems;
  });
}

function totalProblems({ fixed, stations, maximum }: Loadable): LoadingProblem[] {
  const lightest = stations.reduce((sum, { least }) => sum + least, fixed.weight);
  if (lightest <= 0) return [{ reason: "no-weight" }];
  return maximum !== undefined && isBelow(maximum, lightest)
    ? [{ reason: "lightest-above-maximum", lightest, maximum }]
    : [];
}

function doCross(one: LoadGroup, other: LoadGroup): boolean {
  const [a, b] = [new Set(one.ids), new Set(other.ids)];
  const shared = [...a].filter((id) => b.has(id)).length;
  return shared > 0 && shared < a.size && shared < b.size;
}
