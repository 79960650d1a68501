/**
 * The published adverse-loading check (AC 43.13-1B chapter 10) of the aircraft after the change, as the sheet that
 * a record has to show. It tries one loading for each side; `permitted-loadings` tries them all.
 */
import {
  type AdverseCase,
  type AdverseItem,
  type AdverseSheet,
  adverseLoading,
  adverseLoadingSource,
} from "../../methods/adverse-loading";
import type { LimitSide } from "../../methods/envelope";
import { minimumFuel, minimumFuelSource } from "../../methods/minimum-fuel";
import type { Project } from "../../project";
import { convert, inUnit } from "../../quantities";
import type { Envelope, Station } from "../../records/types";
import { emptyWeightDefinitions } from "../../tables/empty-weight-definitions";
import type { QuantityName } from "../quantity-names";
import { derive, derived, type Keep, type Operand, type Value, type ValueUnit, written } from "../value";
import type { BalanceUnits } from "./balance-units";
import { limitPointsOf } from "./limit-points";
import type { StationLimit } from "./station-limits";
import { aircraftOf, type WeightChange } from "./weight-change";

export interface AdverseResult {
  readonly envelope: string;
  readonly side: LimitSide;
  readonly sheet: AdverseSheet;
  readonly weight: Value | undefined;
  readonly cg: Value | undefined;
  readonly limit: Value | undefined;
}

export interface AdverseResults {
  readonly sheets: readonly AdverseResult[];
  /** What the airframe record has to say before a sheet can be made; empty when all is there. */
  readonly lacks: readonly ("crew" | "powerplant" | "weight-limit" | "station-limit")[];
  readonly minimumFuel: Value | undefined;
}

/** Both sides of each envelope. Pure; values go to `keep`. */
export function deriveAdverseSheets(
  project: Project,
  units: BalanceUnits,
  change: WeightChange,
  stations: ReadonlyMap<string, StationLimit>,
  keep: Keep,
): AdverseResults {
  const { crew, limits } = project.airframe ?? {};
  const fuel = keep(deriveMinimumFuel(project, units));
  const used = usedStations(stations);
  const lacks = [
    ...(crew?.weight && crew.stations?.length ? [] : (["crew"] as const)),
    ...(fuel ? [] : (["powerplant"] as const)),
    ...(limits?.takeoff ? [] : (["weight-limit"] as const)),
    ...(used.every(({ after }) => after) ? [] : (["station-limit"] as const)),
  ];
  const { emptyWeight, emptyCg } = change;
  if (lacks.length > 0 || !emptyWeight || !emptyCg || !fuel) return { sheets: [], lacks, minimumFuel: fuel };

  const sheets = (project.airframe?.envelopes ?? []).flatMap((envelope) =>
    (["forward", "aft"] as const).flatMap((side): AdverseResult[] => {
      const given = limitPointsOf(envelope, side, units);
      const id = envelope.id?.value;
      if (!given || id === undefined) return [];
      const aircraft = deriveCheckCase(project, units, change, used, envelope, side);
      const sheet = aircraft && adverseLoading({ ...aircraft, minimumFuel: fuel.value }, given.points, side);
      if (!sheet) return [];
      const operands: Readonly<Record<string, Operand | readonly Operand[]>> = {
        W_e: derived("empty weight", emptyWeight),
        x_e: derived("empty CG", emptyCg),
        F: derived("minimum fuel", fuel),
        most: used.map(({ id, after }) => derived(`most at ${id}`, after)),
        x: used.map(({ id, station }) => written(`arm of ${id}`, station.arm, units.arm)),
        W_i: given.weights,
        x_i: given.arms,
      };
      const value = (what: "weight" | "cg" | "limit", unit: ValueUnit, number: number | undefined) =>
        keep(
          derive({
            subject: { kind: "envelope", id },
            quantity: `adverse-${side}-${what}` as QuantityName,
            unit,
            method: `${what === "cg" ? "CG" : what} of the ${side} adverse-loading check, line by line on its sheet`,
            operands,
            compute: () => number ?? Number.NaN,
            sources: [adverseLoadingSource],
          }),
        );
      return [
        {
          envelope: id,
          side,
          sheet,
          weight: value("weight", units.weight, sheet.total.weight),
          cg: value("cg", units.arm, sheet.total.arm),
          limit: value("limit", units.arm, sheet.limit.covered ? sheet.limit.arm : undefined),
        },
      ];
    }),
  );
  return { sheets, lacks, minimumFuel: fuel };
}

/** The maker's figure, or half a pound for each horsepower of a piston engine. */
function deriveMinimumFuel(project: Project, units: BalanceUnits): Value | undefined {
  const { powerplant } = project.airframe ?? {};
  const common = { subject: aircraftOf(project), quantity: "minimum-fuel", unit: units.weight } as const;
  if (powerplant?.minimumFuel) {
    return derive({
      ...common,
      formula: "F",
      operands: { F: written("minimum fuel of the maker", powerplant.minimumFuel, units.weight) },
      compute: ({ F }) => F,
      sources: [{ document: "airframe record", at: "powerplant", standing: "record" }],
    });
  }
  if (powerplant?.kind?.value !== "piston" || !powerplant.power) return undefined;
  const engines = powerplant.engines?.value ?? 1;
  const found = minimumFuel(inUnit(powerplant.power.value, "hp"), engines, powerplant.powerCounted?.value);
  return derive({
    ...common,
    method: `half a pound for each METO horsepower of ${found.counted === "one-engine" ? "one engine" : "all engines"}`,
    operands: { P: written("METO power of one engine", powerplant.power, "hp") },
    compute: () => convert(found.pounds, "lb", units.weight, "mass"),
    sources: [minimumFuelSource],
    notes: found.otherReading
      ? ["Documents differ whether a twin counts one engine or both: one is counted, which is less fuel."]
      : [],
  });
}

/** A seat, a compartment or another station, and what it may carry besides the crew. */
export interface CheckItem extends AdverseItem {
  readonly kind: StationKind | undefined;
  /** How many persons besides the crew sit here; undefined where the record does not count its seats. */
  readonly seats?: number;
}

type StationKind = NonNullable<Station["kind"]>["value"];

/** What the published checks are worked from, but for the minimum fuel. */
export interface CheckCase extends Omit<AdverseCase, "minimumFuel"> {
  readonly items: readonly CheckItem[];
}

/** Ballast counts in the empty weight: its stations are loaded with nothing else. */
export function usedStations(stations: ReadonlyMap<string, StationLimit>): StationLimit[] {
  return [...stations.values()].filter(({ station }) => station.kind?.value !== "ballast");
}

/**
 * The aircraft after the change, its crew in the seat that is farthest to one side. Undefined while the crew, the
 * maximum weight or what a station may carry is not known, or the change is not.
 */
export function deriveCheckCase(
  project: Project,
  units: BalanceUnits,
  change: WeightChange,
  stations: readonly StationLimit[],
  envelope: Envelope,
  side: LimitSide,
): CheckCase | undefined {
  const { crew, limits, oil, aircraft } = project.airframe ?? {};
  if (!crew?.weight || !limits?.takeoff || !stations.every(({ after }) => after)) return undefined;
  const closed = new Set(envelope.emptyStations?.map(({ value }) => value));
  const open = stations.flatMap(({ id, station, after }) => {
    const arm = written("", station.arm, units.arm)?.value;
    return closed.has(id) || arm === undefined || !after
      ? []
      : [{ id, kind: station.kind?.value, arm, most: after.value, seats: station.seats?.value }];
  });
  const seats = open.filter(({ id }) => crew.stations?.some(({ value }) => value === id));
  const [first, ...others] = seats
    .map(({ arm }) => arm)
    .toSorted((a, b) => (side === "forward" ? a - b : b - a));
  const { emptyWeight, emptyCg } = change;
  if (first === undefined || !emptyWeight || !emptyCg) return undefined;
  const crewWeight = inUnit(crew.weight.value, units.weight);
  const pilotSeat = seats.find(({ arm }) => arm === first)!;
  const basis = aircraft?.certificationBasis?.value;
  const leavesOilOut = basis && !emptyWeightDefinitions[basis].includes.includes("drainable-oil");
  const maxima = [limits.takeoff, envelope.maximum].flatMap((one) =>
    one ? [inUnit(one.value, units.weight)] : [],
  );
  return {
    empty: { weight: emptyWeight.value, arm: emptyCg.value },
    pilot: { id: `crew in ${pilotSeat.id}`, weight: crewWeight, arms: [first, ...others] },
    ...(oil?.weight &&
      oil.arm &&
      leavesOilOut && {
        oil: {
          id: "oil",
          weight: inUnit(oil.weight.value, units.weight),
          arm: inUnit(oil.arm.value, units.arm),
        },
      }),
    items: open
      .filter(({ kind }) => kind !== "fuel")
      .map(({ id, kind, arm, most, seats }): CheckItem => {
        const isCrewSeat = id === pilotSeat.id;
        return {
          id: isCrewSeat ? `rest of ${id}` : id,
          kind,
          arm,
          most: isCrewSeat ? Math.max(0, most - crewWeight) : most,
          ...(seats !== undefined && { seats: isCrewSeat ? Math.max(0, seats - 1) : seats }),
        };
      }),
    tanks: open
      .filter(({ kind }) => kind === "fuel")
      .map(({ id, arm, most }) => ({ id, arm, capacity: most })),
    maximumWeight: Math.min(...maxima),
  };
}
