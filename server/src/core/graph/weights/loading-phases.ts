/**
 * What else holds for the recorded loadings than take-off weight and CG: ramp, landing and zero-fuel weights, the
 * CG while fuel burns, floors under the loads, and the worst case of the tolerances.
 */
import { armOf } from "../../methods/balance";
import type { LimitPoint, LimitSide } from "../../methods/envelope";
import { type ExcessPoint, excessAlong } from "../../methods/envelope-excess";
import { fuelBurnPath } from "../../methods/fuel-burn";
import type { MomentCurve } from "../../methods/moment-curve";
import { balanceRange } from "../../methods/tolerance";
import type { Project } from "../../project";
import type { StationLoad } from "../../records/types";
import type { Source } from "../../source";
import type { QuantityName } from "../quantity-names";
import { derive, derived, type Keep, type Operand, sumOf, type Value, written } from "../value";
import type { BalanceUnits } from "./balance-units";
import { limitPointsOf } from "./limit-points";
import type { LoadingResult, StationLoadResult } from "./loadings";
import { excessAt, type WhatIf } from "./permitted-loadings";
import { floorUnits } from "./station-limits";
import { aircraftOf, type WeightChange } from "./weight-change";

export type Phase = "ramp" | "landing" | "zero-fuel";

export interface PhaseResult {
  readonly phase: Phase;
  readonly weight: Value;
  readonly limit: Value;
}

/** The farthest beyond one limit between two states, or the nearest to it. */
export interface PathExtreme {
  readonly side: LimitSide;
  readonly cg: Value;
  readonly limit: Value;
  readonly excess: number;
  /** Fuel left, in the unit of weight. */
  readonly weight: number;
}

export interface FloorResult {
  readonly kind: "floor" | "running";
  readonly station: string;
  readonly load: StationLoad;
  readonly value: Value;
  readonly limit: Value;
}

export interface LoadingPhases {
  readonly loading: LoadingResult;
  readonly phases: readonly PhaseResult[];
  /** While fuel burns, take-off left out. */
  readonly burn: readonly PathExtreme[];
  readonly floors: readonly FloorResult[];
  /** In the worst case of the tolerances. */
  readonly tolerance: readonly PathExtreme[];
  readonly heaviest: Value | undefined;
  /** Length beyond a limit anywhere from take-off to empty tanks, if things were otherwise; undefined if unknown. */
  excessIf(side: LimitSide, what: WhatIf): number | undefined;
}

/** Pure; values go to `keep`. */
export function deriveLoadingPhases(
  project: Project,
  units: BalanceUnits,
  change: WeightChange,
  loadings: readonly LoadingResult[],
  keep: Keep,
): LoadingPhases[] {
  const phases = new Phases(project, units, change, keep);
  return loadings.map((loading) => phases.of(loading));
}

const derivedSource: Source = { document: "sum of moments", standing: "derived" };

class Phases {
  private readonly limits: Readonly<Record<Phase, Value | undefined>>;

  constructor(
    private readonly project: Project,
    private readonly units: BalanceUnits,
    private readonly change: WeightChange,
    private readonly keep: Keep,
  ) {
    const { ramp, landing, zeroFuel } = project.airframe?.limits ?? {};
    const limit = (phase: Phase, quantity: QuantityName, weight: typeof ramp) =>
      keep(
        derive({
          subject: aircraftOf(project),
          quantity,
          unit: units.weight,
          formula: "W_limit",
          operands: { W_limit: written(`maximum ${phase} weight`, weight, units.weight) },
          compute: ({ W_limit }) => W_limit,
          sources: [{ document: "airframe record", at: "limits", standing: "record" }],
        }),
      );
    this.limits = {
      ramp: limit("ramp", "ramp-weight-limit", ramp),
      landing: limit("landing", "landing-weight-limit", landing),
      "zero-fuel": limit("zero-fuel", "zero-fuel-weight-limit", zeroFuel),
    };
  }

  of(loading: LoadingResult): LoadingPhases {
    const path = this.path(loading);
    return {
      loading,
      phases: this.weights(loading),
      burn: this.burn(loading, path),
      floors: loading.stations.flatMap((station) => this.floors(loading, station)),
      ...this.tolerance(loading),
      excessIf: (side, { weight, moment }) => {
        const given = loading.envelope && limitPointsOf(loading.envelope, side, this.units);
        const moved = path.map((point) => ({
          ...point,
          weight: point.weight + weight,
          moment: point.moment + moment,
        }));
        return given && excessAlong(moved, given.points, side).worst?.excess;
      },
    };
  }

  private weights(loading: LoadingResult): PhaseResult[] {
    const { units } = this;
    const W = derived("take-off weight", loading.after.weight);
    const fuel = loading.stations.filter(isFuel).map(({ id, weight }) => derived(`fuel in ${id}`, weight));
    const taxi = written("taxi fuel", this.project.airframe?.limits?.taxiFuel, units.weight);
    const trip = written("trip fuel", loading.loading.tripFuel, units.weight);
    const make = (
      phase: Phase,
      quantity: QuantityName,
      formula: string,
      operands: Readonly<Record<string, Operand | readonly Operand[]>>,
      change: number,
    ): PhaseResult[] => {
      const limit = this.limits[phase];
      if (!limit || !loading.after.weight) return [];
      const total = loading.after.weight.value + change;
      const weight = this.keep(
        derive({
          subject: { kind: "loading", id: loading.id },
          quantity,
          unit: units.weight,
          formula,
          operands,
          compute: () => total,
          sources: [derivedSource],
        }),
      );
      return weight ? [{ phase, weight, limit }] : [];
    };
    return [
      ...(taxi ? make("ramp", "ramp-weight", "W + F", { W, F: taxi }, taxi.value) : []),
      ...(trip ? make("landing", "landing-weight", "W - F", { W, F: trip }, -trip.value) : []),
      ...(fuel.length > 0
        ? make(
            "zero-fuel",
            "zero-fuel-weight",
            "W - sum(F)",
            { W, F: fuel },
            -sumOf(fuel.map((one) => one?.value ?? Number.NaN)),
          )
        : []),
    ];
  }

  /** From empty tanks to take-off; no points while part of the loading is not known. */
  private path(loading: LoadingResult): MomentCurve {
    const { units } = this;
    const { emptyWeight, emptyMoment } = this.change;
    const takeoff = loading.after.weight?.value;
    if (!emptyWeight || !emptyMoment || takeoff === undefined) return [];
    const loads = loading.stations.map(({ id, station, weight }) => ({
      id,
      arm: written("", station?.arm, units.arm)?.value ?? Number.NaN,
      weight: weight?.value ?? Number.NaN,
    }));
    const fuel = loading.stations.filter(isFuel);
    const order = this.project.airframe?.burnOrder?.map(({ value }) => value);
    const fixed = { weight: emptyWeight.value, moment: emptyMoment.value };
    const path = fuelBurnPath(
      { fixed, loads },
      order ?? fuel.map(({ id }) => id),
      order ? "in-order" : "proportional",
    );
    return path.every(({ moment }) => Number.isFinite(moment)) ? path : [];
  }

  private burn(loading: LoadingResult, path: MomentCurve): PathExtreme[] {
    if (path.length < 2) return [];
    return this.bothSides(loading, (side, points) => {
      const { worst } = excessAlong(path, points, side);
      if (!worst) return undefined;
      const names = [`burn-${side}-cg`, `burn-${side}-limit`] as const;
      return this.extreme(
        loading,
        side,
        worst,
        names,
        "nearest to the limit while fuel burns to empty tanks",
      );
    });
  }

  private floors(loading: LoadingResult, { id, station, loads }: StationLoadResult): FloorResult[] {
    const { units } = this;
    const floor = floorUnits(units);
    if (!station) return [];
    return loads.flatMap((load, index) => {
      const weight = written("weight of the load", load.weight, units.weight);
      const common = {
        subject: { kind: "station", id },
        condition: loads.length > 1 ? `${loading.id}, load ${index + 1}` : loading.id,
      } as const;
      const record: Source = { document: "airframe record", at: `station ${id}`, standing: "record" };
      const value = this.keep(
        derive({
          ...common,
          quantity: "floor-load",
          unit: floor.areaLoad,
          formula: "w / A",
          operands: { w: weight, A: written("area", load.area ?? station.floorArea, floor.area) },
          compute: ({ w, A }) => w / A,
          sources: [derivedSource],
        }),
      );
      const limit = this.keep(
        derive({
          ...common,
          quantity: "floor-load-limit",
          unit: floor.areaLoad,
          formula: "p",
          operands: { p: written("floor limit", station.floorLimit, floor.areaLoad) },
          compute: ({ p }) => p,
          sources: [record],
        }),
      );
      const running = this.keep(
        derive({
          ...common,
          quantity: "running-load",
          unit: floor.lineLoad,
          formula: "w / L",
          operands: { w: weight, L: written("length", load.length ?? station.floorLength, floor.length) },
          compute: ({ w, L }) => w / L,
          sources: [derivedSource],
        }),
      );
      const runningLimit = this.keep(
        derive({
          ...common,
          quantity: "running-load-limit",
          unit: floor.lineLoad,
          formula: "q",
          operands: { q: written("running limit", station.runningLimit, floor.lineLoad) },
          compute: ({ q }) => q,
          sources: [record],
        }),
      );
      const results: FloorResult[] = [];
      if (value && limit) results.push({ kind: "floor", station: id, load, value, limit });
      if (running && runningLimit) {
        results.push({ kind: "running", station: id, load, value: running, limit: runningLimit });
      }
      return results;
    });
  }

  private tolerance(loading: LoadingResult): Pick<LoadingPhases, "tolerance" | "heaviest"> {
    const { units } = this;
    const within = this.change.tolerance;
    const { weight } = loading.after;
    if (!within || !weight) return { tolerance: [], heaviest: undefined };
    const carried = loading.stations.map(({ station, weight }) => ({
      weight: weight?.value ?? Number.NaN,
      arm: written("", station?.arm, units.arm)?.value ?? Number.NaN,
      weightTolerance: 0,
      armTolerance: 0,
    }));
    const range = balanceRange([...within.masses, ...carried]);
    const heaviest = this.keep(
      derive({
        subject: { kind: "loading", id: loading.id },
        quantity: "loading-weight-most",
        unit: units.weight,
        formula: "W + t",
        operands: {
          W: derived("weight of the loading", weight),
          t: derived("tolerance of the empty weight", within.weight),
        },
        compute: ({ W, t }) => W + t,
        sources: [derivedSource],
      }),
    );
    if (!range) return { tolerance: [], heaviest };
    const tolerance = this.bothSides(loading, (side, points) => {
      const end = side === "forward" ? range.foremost : range.aftmost;
      const excess = excessAt(points, side, end.weight, end.arm);
      const cg = armOf(end.weight, end.moment);
      if (excess === undefined || cg === undefined) return undefined;
      const limit = side === "aft" ? cg - excess : cg + excess;
      const names = [`tolerance-${side}-cg`, `tolerance-${side}-limit`] as const;
      return this.extreme(
        loading,
        side,
        { weight: end.weight, cg, limit, excess },
        names,
        "with every weight and arm of the change at the worst end of its tolerance",
      );
    });
    return { tolerance, heaviest };
  }

  private bothSides(
    { envelope }: LoadingResult,
    judge: (side: LimitSide, points: readonly LimitPoint[]) => PathExtreme | undefined,
  ): PathExtreme[] {
    return (["forward", "aft"] as const).flatMap((side) => {
      const given = envelope && limitPointsOf(envelope, side, this.units);
      return (given && judge(side, given.points)) ?? [];
    });
  }

  private extreme(
    loading: LoadingResult,
    side: LimitSide,
    { weight, cg, limit, excess }: Omit<ExcessPoint, "loads">,
    [cgName, limitName]: readonly [QuantityName, QuantityName],
    how: string,
  ): PathExtreme | undefined {
    const common = {
      subject: { kind: "loading", id: loading.id },
      unit: this.units.arm,
      operands: {
        W: derived("weight of the loading", loading.after.weight),
        M: derived("moment of the loading", loading.after.moment),
      },
      sources: [derivedSource],
    } as const;
    const cgValue = this.keep(
      derive({ ...common, quantity: cgName, method: `CG ${how}`, compute: () => cg }),
    );
    const limitValue = this.keep(
      derive({
        ...common,
        quantity: limitName,
        method: `${side} limit at the weight of that state`,
        compute: () => limit,
      }),
    );
    return cgValue && limitValue && { side, cg: cgValue, limit: limitValue, excess, weight };
  }
}

function isFuel({ station }: StationLoadResult): boolean {
  return station?.kind?.value === "fuel";
}
