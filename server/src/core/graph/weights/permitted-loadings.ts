/**
 * Every loading that the stations, the crew, the tanks and the weight limits permit, held against each envelope:
 * not a few chosen loadings, but the most forward and the most aft one at each weight. Each state that burning
 * fuel leads to is among them, down to empty tanks.
 */
import { type LimitPoint, type LimitSide, limitAt } from "../../methods/envelope";
import { type ExcessPoint, excessAlong } from "../../methods/envelope-excess";
import type { FixedLoad, Loadable, LoadingProblem, LoadStation } from "../../methods/loadable";
import { boundaryCurves } from "../../methods/loadings";
import type { Load } from "../../methods/moment-curve";
import { balanceRange, type UncertainMass } from "../../methods/tolerance";
import type { Project } from "../../project";
import { inUnit } from "../../quantities";
import type { Envelope, Station } from "../../records/types";
import type { Source } from "../../source";
import type { QuantityName } from "../quantity-names";
import { derive, derived, type Keep, type Operand, type Value, type ValueUnit, written } from "../value";
import type { BalanceUnits } from "./balance-units";
import { limitPointsOf } from "./limit-points";
import type { StationLimit } from "./station-limits";
import type { WeightChange } from "./weight-change";

export type Side = LimitSide | "left" | "right";

/** What keeps every loading from being looked at: a key that is not there, or the reason of the method. */
export type Lack =
  | { readonly what: "crew" | "weight-limit" }
  | { readonly what: "station-limit" | "station-butt-line"; readonly station: string }
  | { readonly what: "limit-not-given"; readonly from: number; readonly to: number }
  | { readonly what: LoadingProblem["reason"] };

export interface CarriedLoad {
  readonly station: Station;
  readonly id: string;
  readonly weight: number;
}

/** The loading that is farthest beyond one side's limit, or nearest to it. */
export interface Extreme {
  readonly weight: Value;
  readonly cg: Value;
  readonly limit: Value;
  /** Length beyond the limit; negative while there is room. */
  readonly excess: number;
  readonly loads: readonly CarriedLoad[];
}

export interface SideResult {
  readonly side: Side;
  readonly before: Extreme | undefined;
  readonly after: Extreme | undefined;
  /** With the weights and arms of the change at the worst ends of their tolerances. */
  readonly tolerance: Extreme | undefined;
}

/** A corner of a boundary curve; between two of them weight and moment are straight. */
export interface Corner {
  readonly side: LimitSide;
  readonly weight: number;
  readonly cg: number;
  readonly loads: readonly Load[];
}

/** What a what-if asks for: more weight and moment in the empty aircraft, other limits of stations. */
export interface WhatIf {
  readonly weight: number;
  /** About the datum, or about the centreline where a limit to the side is asked about. */
  readonly moment: number;
  readonly most?: ReadonlyMap<string, number>;
}

export interface PermittedLoadings {
  readonly envelope: Envelope;
  readonly id: string;
  readonly sides: readonly SideResult[];
  readonly lacks: readonly Lack[];
  /** Both boundary curves after the change, the crew in the first of its seats. */
  readonly corners: readonly Corner[];
  /** Length between the limit of a side and the one across from it at a weight; undefined where either is not given. */
  widthAt(side: Side, weight: number): number | undefined;
  /** Length beyond the limit of a side if things were otherwise; undefined if unknown. */
  excessIf(side: Side, what: WhatIf): number | undefined;
}

const source: Source = {
  document: "linear programme over all loadings",
  at: "solved exactly at each weight",
  standing: "derived",
  note: "AC 43.13-1B chapter 10, par. 10-16 to 10-18 tries chosen loadings; here all are covered",
};

/** One for each envelope of the airframe. Pure; values go to `keep`. */
export function derivePermittedLoadings(
  project: Project,
  units: BalanceUnits,
  change: WeightChange,
  stations: ReadonlyMap<string, StationLimit>,
  keep: Keep,
): PermittedLoadings[] {
  return (project.airframe?.envelopes ?? []).flatMap((envelope) =>
    envelope.id
      ? [new Permitted(project, units, change, stations, envelope, envelope.id.value, keep).run()]
      : [],
  );
}

type When = "before" | "after";

/** What the limit of one side is held against. */
interface Judged {
  readonly points: readonly LimitPoint[];
  /** To the left is as forward, to the right as aft: smaller and larger numbers. */
  readonly direction: LimitSide;
  readonly fixed: Readonly<Record<When, FixedLoad | undefined>>;
  readonly masses: readonly UncertainMass[] | undefined;
  readonly armOf: (station: Station) => number;
}

export function isLateral(side: Side): side is "left" | "right" {
  return side === "left" || side === "right";
}

const across = {
  forward: "aft",
  aft: "forward",
  left: "right",
  right: "left",
} as const satisfies Record<Side, Side>;

class Permitted {
  private readonly lacks: Lack[] = [];
  private readonly used: readonly StationLimit[];

  constructor(
    private readonly project: Project,
    private readonly units: BalanceUnits,
    private readonly change: WeightChange,
    stations: ReadonlyMap<string, StationLimit>,
    private readonly envelope: Envelope,
    private readonly id: string,
    private readonly keep: Keep,
  ) {
    const empty = new Set(envelope.emptyStations?.map(({ value }) => value));
    this.used = [...stations.values()].filter(
      ({ id, station }) => station.kind?.value !== "ballast" && !empty.has(id),
    );
  }

  run(): PermittedLoadings {
    const { envelope, id, lacks } = this;
    const forward = limitPointsOf(envelope, "forward", this.units)?.points;
    const aft = limitPointsOf(envelope, "aft", this.units)?.points;
    const limits = forward && aft && { forward, aft };
    const seats = this.seats();
    const judgedOf = (side: Side) =>
      isLateral(side) ? this.judgedAcross(side) : limits && this.judgedAlong(side, limits[side]);
    if (seats) this.lackAcross();
    const sides = (["forward", "aft", "left", "right"] as const).flatMap((side) => {
      const judged = judgedOf(side);
      return seats && judged ? [this.side(side, judged, seats)] : [];
    });
    const after = this.fixed("after");
    return {
      envelope,
      id,
      sides,
      lacks,
      corners: after && seats?.[0] !== undefined ? this.corners(after, seats[0]) : [],
      widthAt: (side, weight) => {
        const [a, b] = [side, across[side]].map((one) => {
          const judged = judgedOf(one);
          const limit = judged && limitAt(judged.points, judged.direction, weight);
          return limit?.covered ? limit.arm : undefined;
        });
        return a === undefined || b === undefined ? undefined : Math.abs(a - b);
      },
      excessIf: (side, what) => {
        const judged = judgedOf(side);
        const start = judged?.fixed.after;
        if (!judged || !start || !seats) return undefined;
        const fixed = { weight: start.weight + what.weight, moment: start.moment + what.moment };
        return this.worst(fixed, judged, seats, "after", what.most)?.excess;
      },
    };
  }

  /** The stations that the crew may sit at; undefined, and told, where something needed is not given. */
  private seats(): readonly string[] | undefined {
    const { crew, limits } = this.project.airframe ?? {};
    if (!crew?.weight || !crew.stations?.length) this.lacks.push({ what: "crew" });
    if (!limits?.takeoff) this.lacks.push({ what: "weight-limit" });
    for (const { id, before } of this.used) {
      if (!before) this.lacks.push({ what: "station-limit", station: id });
    }
    return this.lacks.length > 0 ? undefined : crew!.stations!.map(({ value }) => value);
  }

  private fixed(when: When): FixedLoad | undefined {
    const { before, emptyMomentBefore, emptyWeight, emptyMoment } = this.change;
    const weight = when === "before" ? before.weight?.value : emptyWeight?.value;
    const moment = when === "before" ? emptyMomentBefore?.value : emptyMoment?.value;
    return weight === undefined || moment === undefined ? undefined : { weight, moment };
  }

  private readonly armAlong = (station: Station): number =>
    written("", station.arm, this.units.arm)?.value ?? Number.NaN;

  private loadable(
    fixed: FixedLoad,
    seat: string,
    when: When,
    most?: ReadonlyMap<string, number>,
    armOf = this.armAlong,
  ): Loadable {
    const { limits, crew } = this.project.airframe!;
    const crewWeight = inUnit(crew!.weight!.value, this.units.weight);
    const stations = this.used.map(({ id, station, [when]: limit }): LoadStation => {
      const whole = limit?.value ?? Number.NaN;
      return {
        id,
        arm: armOf(station),
        least: id === seat ? crewWeight : 0,
        most: Math.min(whole, most?.get(id) ?? whole),
      };
    });
    const zeroFuel = limits?.zeroFuel && inUnit(limits.zeroFuel.value, this.units.weight);
    const dry = this.used.filter(({ station }) => station.kind?.value !== "fuel").map(({ id }) => id);
    const maxima = [limits?.takeoff, this.envelope.maximum].flatMap((limit) =>
      limit ? [inUnit(limit.value, this.units.weight)] : [],
    );
    return {
      fixed,
      stations,
      groups: zeroFuel === undefined ? [] : [{ ids: dry, most: zeroFuel - fixed.weight }],
      maximum: Math.min(...maxima),
    };
  }

  private corners(fixed: FixedLoad, seat: string): Corner[] {
    const result = boundaryCurves(this.loadable(fixed, seat, "after"));
    if (!result.solved) return [];
    return (["forward", "aft"] as const).flatMap((side) =>
      result.curves[side].map(({ weight, moment, loads }) => ({ side, weight, cg: moment / weight, loads })),
    );
  }

  private lack(lack: Lack): void {
    const text = JSON.stringify(lack);
    if (!this.lacks.some((one) => JSON.stringify(one) === text)) this.lacks.push(lack);
  }

  /** Over all seats of the crew. */
  private worst(
    fixed: FixedLoad,
    { direction, points, armOf }: Judged,
    seats: readonly string[],
    when: When,
    most?: ReadonlyMap<string, number>,
  ): ExcessPoint | undefined {
    let worst: ExcessPoint | undefined;
    for (const seat of seats) {
      const result = boundaryCurves(this.loadable(fixed, seat, when, most, armOf));
      if (!result.solved) {
        if (when === "after" && !most) for (const { reason } of result.problems) this.lack({ what: reason });
        continue;
      }
      const report = excessAlong(result.curves[direction], points, direction);
      if (when === "after" && !most) {
        for (const { from, to } of report.uncovered) this.lack({ what: "limit-not-given", from, to });
      }
      if (report.worst && (!worst || report.worst.excess > worst.excess)) worst = report.worst;
    }
    return worst;
  }

  private side(side: Side, judged: Judged, seats: readonly string[]): SideResult {
    const state = (when: When, fixed: FixedLoad | undefined, suffix: "" | "-before" | "-tolerance") => {
      const worst = fixed && this.worst(fixed, judged, seats, when);
      return worst && this.extreme(side, worst, when, suffix);
    };
    const after = state("after", judged.fixed.after, "");
    return {
      side,
      before: state("before", judged.fixed.before, "-before"),
      after,
      tolerance: after && state("after", fixedWithin(judged, after), "-tolerance"),
    };
  }

  private judgedAlong(side: LimitSide, points: readonly LimitPoint[]): Judged {
    return {
      points,
      direction: side,
      fixed: { before: this.fixed("before"), after: this.fixed("after") },
      masses: this.change.tolerance?.masses,
      armOf: this.armAlong,
    };
  }

  private judgedAcross(side: "left" | "right"): Judged | undefined {
    const { envelope, units, used } = this;
    const limit = written(`limit to the ${side}`, envelope.lateral?.[side], units.arm);
    if (!limit || used.some(({ station }) => !station.buttLine)) return undefined;
    const { before, emptyButtLine, emptyWeight, tolerance } = this.change;
    return {
      points: [{ weight: Number.MAX_SAFE_INTEGER, arm: limit.value, orLess: true }],
      direction: side === "left" ? "forward" : "aft",
      fixed: {
        before: before.weight && before.buttLine && lateralLoad(before.weight.value, before.buttLine.value),
        after: emptyWeight && emptyButtLine && lateralLoad(emptyWeight.value, emptyButtLine.value),
      },
      masses: tolerance?.massesAcross,
      armOf: (station) => inUnit(station.buttLine!.value, units.arm),
    };
  }

  private lackAcross(): void {
    if (!this.envelope.lateral) return;
    for (const { id, station } of this.used) {
      if (!station.buttLine) this.lack({ what: "station-butt-line", station: id });
    }
  }

  private extreme(
    side: Side,
    worst: ExcessPoint,
    when: When,
    suffix: "" | "-before" | "-tolerance",
  ): Extreme | undefined {
    const { units } = this;
    const byId = new Map(this.used.map(({ id, station }) => [id, station]));
    const loads = worst.loads.flatMap(({ id, weight }) => {
      const station = byId.get(id);
      return station ? [{ station, id, weight }] : [];
    });
    const operands = this.operandsOf(side, when);
    const make = (what: "weight" | "cg" | "limit", unit: ValueUnit, method: string, number: number) =>
      this.keep(
        derive({
          subject: { kind: "envelope", id: this.id },
          quantity: `extreme-${side}-${what}${suffix}` as QuantityName,
          unit,
          method,
          operands,
          compute: () => number,
          sources: [source],
        }),
      );
    const way = isLateral(side) ? `to the ${side}` : side;
    const which = `the permitted loading nearest to the ${way} limit, or farthest beyond it`;
    const weight = make("weight", units.weight, `weight of ${which}`, worst.weight);
    const cg = make("cg", units.arm, `CG of ${which}: a linear programme at each weight`, worst.cg);
    const limit = make("limit", units.arm, `${way} limit at the weight of that loading`, worst.limit);
    return weight && cg && limit && { weight, cg, limit, excess: worst.excess, loads };
  }

  /** Everything that the programme rests on. */
  private operandsOf(side: Side, when: When): Readonly<Record<string, Operand | readonly Operand[]>> {
    const { units, change } = this;
    const { limits, crew } = this.project.airframe!;
    const isAcross = isLateral(side);
    const points = isLateral(side) ? undefined : limitPointsOf(this.envelope, side, units);
    return {
      W_e: when === "before" ? change.before.weight : derived("empty weight", change.emptyWeight),
      M_e: isAcross
        ? when === "before"
          ? change.before.buttLine
          : derived("empty butt line", change.emptyButtLine)
        : derived("empty moment", when === "before" ? change.emptyMomentBefore : change.emptyMoment),
      crew: written("weight of the crew", crew?.weight, units.weight),
      W_max: written("maximum take-off weight", limits?.takeoff, units.weight),
      most: this.used.map(({ id, [when]: limit }) => derived(`most at ${id}`, limit)),
      x: this.used.map(({ id, station }) =>
        written(
          `${isAcross ? "butt line" : "arm"} of ${id}`,
          isAcross ? station.buttLine : station.arm,
          units.arm,
        ),
      ),
      ...(points && { W_i: points.weights, x_i: points.arms }),
      ...(isAcross && {
        limit: written(`limit to the ${side}`, this.envelope.lateral?.[side], units.arm),
      }),
    };
  }
}

/** The empty aircraft with the tolerances at the ends that are worst beside the loads of the extreme loading. */
function fixedWithin({ direction, masses, armOf }: Judged, { loads }: Extreme): FixedLoad | undefined {
  if (!masses) return undefined;
  const carried = loads.map(({ station, weight }) => ({
    weight,
    arm: armOf(station),
    weightTolerance: 0,
    armTolerance: 0,
  }));
  const range = balanceRange([...masses, ...carried]);
  const end = range && (direction === "forward" ? range.foremost : range.aftmost);
  return (
    end && {
      weight: carried.reduce((rest, one) => rest - one.weight, end.weight),
      moment: carried.reduce((rest, one) => rest - one.weight * one.arm, end.moment),
    }
  );
}

function lateralLoad(weight: number, buttLine: number): FixedLoad {
  return { weight, moment: weight * buttLine };
}

/** How far a CG at a weight is past one side of an envelope; undefined where the limit is not given. */
export function excessAt(
  points: readonly LimitPoint[],
  side: LimitSide,
  weight: number,
  cg: number,
): number | undefined {
  const limit = limitAt(points, side, weight);
  if (!limit.covered) return undefined;
  return side === "aft" ? cg - limit.arm : limit.arm - cg;
}
