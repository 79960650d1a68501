import type { BalanceUnits } from "../../graph/weights/balance-units";
import type { LoadingResult } from "../../graph/weights/loadings";
import type { CarriedLoad } from "../../graph/weights/permitted-loadings";
import type { Project } from "../../project";
import { formatMeasure, inUnit, type UnitSymbol } from "../../quantities";
import { sameWithinRounding } from "../../rounding";
import { listWords, shorten } from "../wording";

/** What a loading has on board: "front-seats 340 lb". */
export function loadsOf({ stations }: LoadingResult): string[] {
  return stations.flatMap(({ id, weight }) =>
    weight && weight.value !== 0 ? [`${id} ${formatMeasure(weight.value, weight.unit as UnitSymbol)}`] : [],
  );
}

/** "On board: rear-seats 340 lb and baggage 120 lb." */
export function onBoardWords(loads: readonly string[]): string {
  return `On board: ${loads.length > 0 ? listWords(loads, "and") : "nothing"}.`;
}

/** How a loading stood to its limit before the change; nothing while that is not known, or nothing is changed. */
export type Before = {
  readonly wasKept?: boolean | undefined;
  /** What is held against the limit, as it was. */
  readonly beforeValue?: number | undefined;
  /** How far past the limit it was. */
  readonly beforeBeyond?: number | undefined;
};

/** "; before the change it kept the limit (91.2 in)". */
export function beforeWords({ wasKept, beforeValue, beforeBeyond }: Before, unit: UnitSymbol): string {
  if (wasKept === undefined || beforeValue === undefined || beforeBeyond === undefined) return "";
  return wasKept
    ? `; before the change it kept the limit (${formatMeasure(beforeValue, unit)})`
    : `; before the change it was past the limit too, by ${formatMeasure(beforeBeyond, unit, 3)}`;
}

/** "Any of these may do it: move RACK to 121 in; add 8.4 lb of ballast at nose." */
export function optionWords(options: readonly string[]): string {
  if (options.length === 0) return "Or restrict the loading.";
  const words = options.map((title) => title.charAt(0).toLowerCase() + title.slice(1));
  return `${options.length === 1 ? "This" : "Any of these"} may do it: ${words.join("; ")}.`;
}

/** A loading that the tool found, spelt out: "crew alone, 10 gal, 120 lb in the aft baggage". */
export function spelt(loads: readonly CarriedLoad[], project: Project, units: BalanceUnits): string[] {
  const crew = new Set(project.airframe?.crew?.stations?.map(({ value }) => value));
  const crewWeight = project.airframe?.crew?.weight;
  const kindOf = ({ station }: CarriedLoad) => station.kind?.value;
  const seats = loads.filter((load) => kindOf(load) === "seat" && !isNone(load));
  const [only] = seats;
  const isAlone =
    seats.length === 1 &&
    only !== undefined &&
    crew.has(only.id) &&
    crewWeight !== undefined &&
    sameWithinRounding(only.weight, inUnit(crewWeight.value, units.weight));
  const people = isAlone ? ["crew alone"] : seats.map((load) => weightIn(load, units));
  const tanks = loads.filter((load) => kindOf(load) === "fuel");
  const fuel = tanks.filter((load) => !isNone(load)).map((load) => fuelIn(load, tanks.length === 1, units));
  const rest = loads.filter((load) => !["seat", "fuel"].includes(kindOf(load) ?? "") && !isNone(load));
  return [
    ...people,
    ...(tanks.length > 0 && fuel.length === 0 ? ["no fuel"] : fuel),
    ...rest.map((load) => weightIn(load, units)),
  ];
}

function isNone({ weight }: CarriedLoad): boolean {
  return sameWithinRounding(weight, 0, 1);
}

function weightIn({ id, station, weight }: CarriedLoad, units: BalanceUnits): string {
  return `${formatMeasure(weight, units.weight)} in ${station.name ? shorten(station.name.value) : id}`;
}

function fuelIn({ id, station, weight }: CarriedLoad, isOnly: boolean, units: BalanceUnits): string {
  const density = station.density && inUnit(station.density.value, units.density);
  const amount = density
    ? `${formatMeasure(weight / density, units.volume, 3)}`
    : `${formatMeasure(weight, units.weight)} of fuel`;
  return isOnly ? amount : `${amount} in ${station.name ? shorten(station.name.value) : id}`;
}
