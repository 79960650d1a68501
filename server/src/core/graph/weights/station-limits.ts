/** What each station may carry at most: its own limit, its tank, its floor, and a placard of the modification. */
import type { Project } from "../../project";
import type { Ballast, Placard, Station } from "../../records/types";
import { isWholeList } from "../entries";
import { groupBy } from "../group-by";
import type { QuantityName } from "../quantity-names";
import { derive, type Keep, type Operand, sumOf, type Value, written } from "../value";
import type { BalanceUnits } from "./balance-units";

export interface StationLimit {
  readonly id: string;
  readonly station: Station;
  /** Undefined where nothing limits the station. */
  readonly before: Value | undefined;
  /** The same value, unless a placard lowers it. */
  readonly after: Value | undefined;
  readonly placards: readonly Placard[];
  /** What the modification bolts there. */
  readonly ballast: readonly Ballast[];
  /** Weight of all of it; undefined where there is none, or one weight is not known. */
  readonly ballastWeight: Value | undefined;
}

/** Units in which a floor's limits give a weight in the units of the derivation. */
export function floorUnits(units: BalanceUnits) {
  return units.weight === "lb"
    ? ({ area: "ft2", areaLoad: "lb/ft2", length: "ft", lineLoad: "lb/ft" } as const)
    : ({ area: "m2", areaLoad: "kg/m2", length: "m", lineLoad: "kg/m" } as const);
}

/** By id; of two with one id the first counts. Pure; values go to `keep`. */
export function deriveStationLimits(
  project: Project,
  units: BalanceUnits,
  keep: Keep,
): ReadonlyMap<string, StationLimit> {
  const { airframe, install } = project;
  const placards = groupBy(install.placards ?? [], (placard) => placard.station?.value);
  const ballastAt = groupBy(install.ballast ?? [], ({ station }) => station?.value);
  const limits = new Map<string, StationLimit>();
  for (const station of airframe?.stations ?? []) {
    const id = station.id?.value;
    if (id === undefined || limits.has(id)) continue;
    const own = placards.get(id) ?? [];
    const before = keep(
      mostOf(station, id, own.length > 0 ? "station-most-before" : "station-most", [], units),
    );
    const after = own.length > 0 ? keep(mostOf(station, id, "station-most", own, units)) : before;
    const ballast = ballastAt.get(id) ?? [];
    limits.set(id, {
      id,
      station,
      before,
      after,
      placards: own,
      ballast,
      ballastWeight: ballast.length > 0 ? keep(weightOf(ballast, id, project, units)) : undefined,
    });
  }
  return limits;
}

function weightOf(
  ballast: readonly Ballast[],
  id: string,
  { install }: Project,
  units: BalanceUnits,
): Value | undefined {
  const unknown: readonly Operand[] = isWholeList(install, "ballast", install.ballast) ? [] : [undefined];
  return derive({
    subject: { kind: "station", id },
    quantity: "ballast-weight",
    unit: units.weight,
    formula: "sum(w)",
    operands: {
      w: [...unknown, ...ballast.map((one) => written("weight of the ballast", one.weight, units.weight))],
    },
    compute: ({ w }) => sumOf(w),
  });
}

function mostOf(
  station: Station,
  id: string,
  quantity: QuantityName,
  placards: readonly Placard[],
  units: BalanceUnits,
): Value | undefined {
  const floor = floorUnits(units);
  const operands: Record<string, Operand> = {};
  const factors: string[][] = [];
  const add = (...named: (readonly [symbol: string, operand: Operand])[]) => {
    if (named.some(([, operand]) => operand === undefined)) return;
    for (const [symbol, operand] of named) operands[symbol] = operand;
    factors.push(named.map(([symbol]) => symbol));
  };
  add(["W_limit", written("limit of the station", station.limit, units.weight)]);
  add(
    ["V", written("capacity of the tank", station.capacity, units.volume)],
    ["rho", written("density at the station", station.density, units.density)],
  );
  add(
    ["p", written("floor limit", station.floorLimit, floor.areaLoad)],
    ["A", written("floor area", station.floorArea, floor.area)],
  );
  add(
    ["q", written("running limit", station.runningLimit, floor.lineLoad)],
    ["L", written("floor length", station.floorLength, floor.length)],
  );
  for (const [index, placard] of placards.entries()) {
    add([`P_${index + 1}`, written("limit of the placard", placard.limit, units.weight)]);
  }
  if (factors.length === 0) return undefined;
  const products = factors.map((symbols) => symbols.join(" * "));
  return derive({
    subject: { kind: "station", id },
    quantity,
    unit: units.weight,
    formula: products.length === 1 ? products[0]! : `min(${products.join(", ")})`,
    operands,
    compute: (numbers) =>
      Math.min(
        ...factors.map((symbols) => symbols.reduce((product, symbol) => product * numbers[symbol]!, 1)),
      ),
    sources: [{ document: "airframe record", at: `station ${id}`, standing: "record" }],
  });
}
