/** Whether a kit may go into an airframe, by what the kit's record says, and what would have to be done first. */
import type { Project } from "../project";
import type { Eligible, SerialRange } from "../records/types";
import type { Place, Written } from "../records/written";
import { isWholeList } from "./entries";

/** A group of aircraft that the kit is for, and what keeps this one out of it. */
export interface GroupResult {
  readonly group: Eligible;
  readonly isType: boolean;
  /** `unknown` where the serial numbers can't be compared. */
  readonly serial: "within" | "outside" | "unknown";
  readonly isBasis: boolean;
  /** Equipment that the aircraft lacks, and what this record takes out of it. */
  readonly equipment: readonly Written<string>[];
  readonly removed: readonly { readonly id: string; readonly place: Place }[];
  readonly modifications: readonly Written<string>[];
  readonly incompatible: readonly Written<string>[];
}

export interface Eligibility {
  readonly groups: readonly GroupResult[];
  /** Of the groups for its type, serial number and basis the one that lacks least; undefined where none is. */
  readonly nearest: GroupResult | undefined;
  /** The others of them. */
  readonly otherWays: readonly GroupResult[];
}

/** Undefined where the kit does not say which aircraft it is for, or not enough is known of this one. */
export function deriveEligibility(project: Project): Eligibility | undefined {
  const { kit, airframe, install } = project;
  const aircraft = airframe?.aircraft;
  const eligibility = kit?.eligibility;
  if (!aircraft?.type || !aircraft.serial || !eligibility || !isWhole(project)) return undefined;
  const owned = new Set(airframe?.equipment?.flatMap(({ id }) => id?.value ?? []));
  const done = new Set([
    ...(airframe?.modifications ?? []).flatMap(({ id }) => id?.value ?? []),
    ...(install.prerequisites ?? []).flatMap(({ modification }) => modification?.value ?? []),
  ]);
  const takenOut = (install.removed ?? []).flatMap(({ equipment }) => equipment ?? []);
  const groups = eligibility.map((group): GroupResult => {
    const needed = group.equipment ?? [];
    return {
      group,
      isType: alike(group.type?.value, aircraft.type!.value),
      serial: serialIn(group.serials, aircraft.serial!.value),
      isBasis:
        group.certificationBases === undefined ||
        group.certificationBases.some(({ value }) => value === aircraft.certificationBasis?.value),
      equipment: needed.filter(({ value }) => !owned.has(value)),
      removed: takenOut.flatMap(({ value, place }) =>
        needed.some((one) => one.value === value) ? [{ id: value, place }] : [],
      ),
      modifications: (group.modifications ?? []).filter(({ value }) => !done.has(value)),
      incompatible: (group.incompatible ?? []).filter(({ value }) => done.has(value)),
    };
  });
  const [nearest, ...otherWays] = groups
    .filter(({ isType, serial, isBasis }) => isType && serial === "within" && isBasis)
    .toSorted((a, b) => lackOf(a) - lackOf(b));
  return { groups, nearest, otherWays };
}

/** An entry that could not be typed is a finding of its own, and may be the one that is asked for. */
function isWhole({ kit, airframe, install }: Project): boolean {
  return (
    (!kit || isWholeList(kit, "eligibility", kit.eligibility)) &&
    (!airframe || isWholeList(airframe, "equipment", airframe.equipment)) &&
    (!airframe || isWholeList(airframe, "modifications", airframe.modifications)) &&
    isWholeList(install, "prerequisites", install.prerequisites)
  );
}

/** How much keeps an aircraft out of a group that is for it. What would have to be undone weighs most. */
export function lackOf({ equipment, removed, modifications, incompatible }: GroupResult): number {
  return equipment.length + removed.length + modifications.length + 100 * incompatible.length;
}

/** What would make the aircraft eligible, in words: "MOD-7 and equipment aft-access-panel". */
export function lackWords({ equipment, removed, modifications, incompatible }: GroupResult): string[] {
  return [
    ...modifications.map(({ value }) => value),
    ...[...equipment.map(({ value }) => value), ...removed.map(({ id }) => id)].map(
      (id) => `equipment ${id}`,
    ),
    ...incompatible.map(({ value }) => `${value} undone`),
  ];
}

/** Names of types are words for people: case and blanks don't count. */
function alike(a: string | undefined, b: string): boolean {
  const bare = (text: string) => text.replace(/\s+/g, " ").trim().toLowerCase();
  return a !== undefined && bare(a) === bare(b);
}

function serialIn(ranges: readonly SerialRange[] | undefined, serial: string): GroupResult["serial"] {
  if (ranges === undefined) return "within";
  const places = ranges.map(({ from, to }): GroupResult["serial"] => {
    const [least, most] = [
      from && compareSerials(serial, from.value),
      to && compareSerials(serial, to.value),
    ];
    if (least === undefined || (to && most === undefined)) return "unknown";
    return least >= 0 && (most === undefined || most <= 0) ? "within" : "outside";
  });
  return places.includes("within") ? "within" : places.includes("unknown") ? "unknown" : "outside";
}

/**
 * Serial numbers count by the last run of digits; what stands around it has to be the same. Negative where `a`
 * comes first, undefined where the two are of different series.
 */
export function compareSerials(a: string, b: string): number | undefined {
  const [first, second] = [partsOf(a), partsOf(b)];
  if (!first || !second || first.around !== second.around) return undefined;
  const [x, y] = [BigInt(first.digits), BigInt(second.digits)];
  return x < y ? -1 : x > y ? 1 : 0;
}

function partsOf(serial: string): { readonly around: string; readonly digits: string } | undefined {
  const text = serial.trim().toLowerCase();
  const digits = /\d+(?=\D*$)/.exec(text);
  if (!digits) return undefined;
  const after = text.slice(digits.index + digits[0].length);
  return { around: `${text.slice(0, digits.index)}#${after}`, digits: digits[0] };
}

/** Where in the install record the aircraft is named. */
export function placeOfAircraft({ install, airframe }: Project): Place {
  const link = install.airframe;
  if (link && "path" in link) return link.path.place;
  return (airframe?.aircraft?.serial ?? airframe?.aircraft ?? install).place;
}
