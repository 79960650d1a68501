/** What the rules about every permitted loading have in common. */
import type { Assessment } from "../../findings/finding";
import { weightsOf } from "../../graph/derivations";
import {
  type Extreme,
  isLateral,
  type PermittedLoadings,
  type Side,
  type SideResult,
} from "../../graph/weights/permitted-loadings";
import type { Project } from "../../project";
import { formatApart, formatMeasure, type UnitSymbol } from "../../quantities";
import { isBelow } from "../../rounding";
import { keyPlace, linkPlace, placeInAirframe } from "../link-places";
import type { Past } from "./balance-remedies";
import { spelt } from "./loading-words";
import { pullsTo } from "./pull";
import { withOptions } from "./searched-options";

export type ExtremeFacts = {
  readonly side: Side;
  readonly envelope: string;
  readonly loads: readonly string[];
  readonly cg: number;
  readonly limit: number;
  readonly beyond: number;
  readonly weight: number;
  readonly unit: UnitSymbol<"length">;
  readonly weightUnit: UnitSymbol<"mass">;
  /** How far the worst loading was past the limit before; negative where there was room. */
  readonly beforeBeyond?: number | undefined;
  readonly item?: string | undefined;
  readonly options: readonly string[];
};

/** On a limit is inside, but for the noise of arms that are differences of larger ones. */
export function isBeyond(extreme: Extreme | undefined): boolean {
  return extreme !== undefined && isBelow(0, extreme.excess, Math.abs(extreme.limit.value));
}

/** The results of every envelope along the fuselage, or to the side. */
export function* sidesOf(
  project: Project,
  along: "fuselage" | "side",
): Iterable<{ readonly permitted: PermittedLoadings; readonly result: SideResult; readonly after: Extreme }> {
  for (const permitted of weightsOf(project).permitted) {
    for (const result of permitted.sides) {
      if (result.after && isLateral(result.side) === (along === "side"))
        yield { permitted, result, after: result.after };
    }
  }
}

/** Where a finding about a permitted loading points: at the item that brings the CG most to that side. */
export function pointAt(
  project: Project,
  side: Side,
  { limit }: Extreme,
  { envelope, id }: PermittedLoadings,
): Pick<Assessment, "place" | "related"> & { readonly item?: string } {
  const place = envelope.id?.place ?? envelope.place;
  const { items } = weightsOf(project).change;
  const [item] = pullsTo(items, limit.value, side);
  const related = [{ place, words: `envelope ${id}` }];
  const own = isLateral(side) ? item?.ownButtLine : item?.ownArm;
  if (item) return { place: own?.place ?? item.place, related, item: item.subject.id };
  const section = keyPlace(project.install, "placement") ?? keyPlace(project.install, "added");
  return section ? { place: section, related } : placeInAirframe(project, place, `envelope ${id}`);
}

/** @param search for what would bring the loading back; left out where the limit is kept */
export function factsOf(
  project: Project,
  { permitted, result, after }: { permitted: PermittedLoadings; result: SideResult; after: Extreme },
  item: string | undefined,
  search?: () => readonly string[],
): ExtremeFacts {
  const { units } = weightsOf(project);
  return withOptions<ExtremeFacts>(
    {
      side: result.side,
      envelope: permitted.id,
      loads: spelt(after.loads, project, units),
      cg: after.cg.value,
      limit: after.limit.value,
      beyond: after.excess,
      weight: after.weight.value,
      unit: units.arm,
      weightUnit: units.weight,
      beforeBeyond: result.before?.excess,
      item,
    },
    search,
  );
}

/** What the margin of an arm is a share of: the distance between the two limits at its weight, where both are known. */
export function widthOf(
  permitted: PermittedLoadings,
  side: Side,
  { weight }: Extreme,
): { readonly of: number | undefined } {
  return { of: permitted.widthAt(side, weight.value) };
}

/** "CG 92.61 in is 0.28 in aft of the limit of 92.33 in at 2731 lb". */
export function extremeWords({ side, cg, limit, beyond, weight, unit, weightUnit }: ExtremeFacts): string {
  const [there, allowed] = formatApart(cg, limit);
  return (
    `CG ${there} ${unit} is ${formatMeasure(beyond, unit, 3)} ${side} of the limit of ${allowed} ${unit} at ` +
    formatMeasure(weight, weightUnit)
  );
}

/** "crew alone, no fuel, 120 lb in the aft baggage"; a long list is cut, and told in full elsewhere. */
export function loadWords(loads: readonly string[], most = 50): string {
  const all = loads.join(", ");
  if (all.length <= most) return all;
  return `${loads.length} loads`;
}

export function pastOf(permitted: PermittedLoadings, side: Side, after: Extreme): Past {
  return {
    side,
    limit: after.limit.value,
    keepsIf: (what) => {
      const excess = permitted.excessIf(side, what);
      return excess === undefined ? undefined : !isBelow(0, excess, Math.abs(after.limit.value));
    },
    loads: after.loads,
  };
}

/** A place in the install record for what is about the record as a whole. */
export function changePlace(project: Project) {
  const { install } = project;
  return (
    keyPlace(install, "placement") ??
    keyPlace(install, "added") ??
    keyPlace(install, "removed") ??
    linkPlace(project, "airframe")
  );
}
