import { conductorTemperature, resistanceAt, wireMethods } from "../../methods/wires";
import { none } from "../../none";
import { inUnit } from "../../quantities";
import type { Condition, Wire } from "../../records/types";
import { recalled } from "../recall";
import { derived, type Keep, known, type Operand, sumOf, tabled, type Value, written } from "../value";
import type { ElectricalBasis } from "./basis";
import { layoutOf } from "./layout";
import type { LoadCurrents } from "./load-currents";
import { RecurringStates, type StatesOf } from "./recurring-states";
import { traceOf } from "./trace";
import { about, type Gap, resistancePer1000Feet, type WireRating, type WireRatings } from "./wire-ratings";

export interface WireResult {
  readonly wire: Wire;
  readonly id: string;
  /** Whether any load's path leads through it. */
  readonly isUsed: boolean;
  readonly states: readonly WireState[];
  /** Why some of its values can't be had from the tables, what its guards want of them left out. */
  readonly gaps: readonly Gap[];
}

export interface WireState {
  readonly condition: Condition;
  /** Undefined where it carries none, or none that is known. */
  readonly current?: Value | undefined;
  readonly allowed?: Value | undefined;
  readonly temperature?: Value | undefined;
  readonly drop?: Value | undefined;
}

/**
 * Currents, conductor temperatures and drops of every wire, in the order of the record. A result is the same
 * object while the wire's rating and the currents of the loads behind it are.
 */
export function deriveWires(basis: ElectricalBasis, currents: LoadCurrents): Map<Wire, WireResult> {
  const { conditions, states, ratings, project, keep } = basis;
  const { paths, protecting } = traceOf(project);
  const through = pathsThroughOf(project);
  const solutions = conditions.map((condition) => states.get(condition));
  /** By path. */
  const loads = paths.map(({ id }) => currents.get(id));
  const carriedBy = ({ wire, paths: behind }: UsedWire, index: number): Carried => {
    const own: Value[] = [];
    let isWhole = true;
    for (const position of behind) {
      const load = loads[position]?.get(conditions[index]!);
      if (!load) continue;
      own.push(load);
      isWhole &&= paths[position]!.isSingle;
    }
    return { loads: own, isWhole, amps: solutions[index]?.currentIn(wire) };
  };
  const how: StatesOf<UsedWire, WireState, WireResult> = {
    conditions,
    grounds: basis.grounds,
    rests: ({ wire, rating, isUsed, paths: behind }) => {
      const hasOneWay = behind.every((position) => paths[position]!.isSingle);
      const rests: unknown[] = [rating, isUsed, hasOneWay];
      for (const state of solutions) {
        const amps = state?.currentIn(wire);
        rests.push(hasOneWay ? amps === undefined : amps);
      }
      for (const position of behind) rests.push(loads[position], paths[position]!.isSingle);
      return rests;
    },
    restsIn: (of, index) => {
      const { amps, isWhole, loads: own } = carriedBy(of, index);
      return [of.rating.states[index], isWhole, isWhole ? amps === undefined : amps, ...own];
    },
    stateIn: (of, index, own) => {
      const { allowed } = of.rating.states[index]!;
      return wireState(of.wire, conditions[index]!, allowed, carriedBy(of, index), ratings, own);
    },
    whole: ({ wire, isUsed, rating }, own) => ({
      wire,
      id: wire.id!.value,
      isUsed,
      states: own,
      gaps: rating.gaps,
    }),
  };
  const found = new Map<Wire, WireResult>();
  let edge = layoutOf(project).seats;
  for (const wire of project.install.wires ?? []) {
    const own = wire.from && wire.to ? edge++ : undefined;
    if (!wire.id) continue;
    const of: UsedWire = {
      wire,
      rating: ratings.of(wire)!,
      isUsed: own !== undefined && protecting.has(own),
      paths: (own !== undefined && through[own]) || none,
    };
    found.set(wire, results.recall(wire, of, how, keep));
  }
  return found;
}

const results = new RecurringStates<WireState, WireResult>();

/** A wire with all that its states are made of. */
interface UsedWire extends Pick<WireResult, "wire" | "isUsed"> {
  readonly rating: WireRating;
  /** Those that lead through it, by their position, once for each time that it lies on the way. */
  readonly paths: readonly number[];
}

/** By the position of a wire's edge, the paths that lead through it. */
const pathsThroughOf = recalled((project): readonly (readonly number[] | undefined)[] => {
  const { paths } = traceOf(project);
  const through: number[][] = [];
  for (let position = 0; position < paths.length; position++) {
    const { feed, returns } = paths[position]!;
    for (const edge of [...feed, ...returns]) {
      const known = through[edge];
      if (known) known.push(position);
      else through[edge] = [position];
    }
  }
  return through;
});

/** What a wire carries in a condition. */
interface Carried {
  readonly loads: readonly Value[];
  /** No other way exists for any of them. */
  readonly isWhole: boolean;
  /** By the network's solution; undefined where nothing determines it. */
  readonly amps: number | undefined;
}

function wireState(
  wire: Wire,
  condition: Condition,
  allowed: Value | undefined,
  { loads, isWhole, amps }: Carried,
  ratings: WireRatings,
  keep: Keep,
): WireState {
  if (loads.length === 0 || amps === undefined) return { condition, allowed };
  const current = keep(isWhole ? sumOfLoads(wire, condition, loads) : solvedCurrent(wire, condition, amps));
  if (!current) return { condition, allowed };
  if (ratings.isAstray(wire)) return { condition, current, allowed };
  const ambient = ratings.ambient(wire, condition);
  const temperature = wireTemperature(wire, condition, current, allowed, ambient, keep);
  const drop = wireDrop(wire, condition, current, temperature, keep);
  return { condition, current, allowed, temperature, drop };
}

function sumOfLoads(wire: Wire, condition: Condition, loads: readonly Value[]): Value | undefined {
  return known(sumOf(loads.map((load) => load.value)), "A", () => ({
    ...about(wire, condition),
    quantity: "wire-current",
    formula: "sum(I)",
    operands: { I: loads.map((load) => derived(`current of ${load.subject.id}`, load)) },
  }));
}

function solvedCurrent(wire: Wire, condition: Condition, amps: number): Value | undefined {
  return known(Math.abs(amps), "A", () => ({
    ...about(wire, condition),
    quantity: "wire-current",
    method: "solution of the whole network: the current has more than one way",
    operands: {
      gauge: written("gauge", wire.gauge, "AWG"),
      length: written("length of the run", wire.length, "ft"),
    },
  }));
}

function wireTemperature(
  wire: Wire,
  condition: Condition,
  current: Value,
  allowed: Value | undefined,
  ambient: Operand,
  keep: Keep,
): Value | undefined {
  if (!wire.rating || !ambient) return undefined;
  const ratingCelsius = inUnit(wire.rating.value, "degC");
  const T_R = () => written("wire rating", wire.rating, "degC");
  if (!allowed) {
    return keep(
      known(ratingCelsius, "degC", () => ({
        ...about(wire, condition),
        quantity: "conductor-temperature",
        formula: "T_R",
        operands: { T_R: T_R() },
        notes: ["No allowed current is known, so the conductor is taken at its rating, the safe way."],
      })),
    );
  }
  return keep(
    known(
      conductorTemperature({
        ambientCelsius: ambient.value,
        ratingCelsius,
        amps: current.value,
        allowedAmps: allowed.value,
      }),
      "degC",
      () => ({
        ...about(wire, condition),
        quantity: "conductor-temperature",
        formula: "T_1 + (T_R - T_1) * sqrt(I / I_max)",
        operands: {
          T_1: ambient,
          T_R: T_R(),
          I: derived("current", current),
          I_max: derived("allowed current", allowed),
        },
        sources: [wireMethods.conductorTemperature.source],
      }),
    ),
  );
}

function wireDrop(
  wire: Wire,
  condition: Condition,
  current: Value,
  temperature: Value | undefined,
  keep: Keep,
): Value | undefined {
  if (!wire.gauge || !wire.length || !temperature) return undefined;
  const material = wire.material?.value ?? "copper";
  const per1000Feet = resistancePer1000Feet(wire.gauge.value.si, material);
  if (!per1000Feet.covered) return undefined;
  const conductor = {
    material,
    resistanceAt20Celsius: per1000Feet.value,
    conductorCelsius: temperature.value,
  };
  const resistance = keep(
    known((resistanceAt(conductor) * inUnit(wire.length.value, "ft")) / 1000, "ohm", () => ({
      ...about(wire, condition),
      quantity: "wire-resistance",
      formula:
        material === "copper"
          ? "R_20 * L / 1000 * (234.5 + T_2) / 254.5"
          : "R_20 * L / 1000 * (238.1 + T_2) / 258.1",
      operands: {
        R_20: tabled("resistance at 20 degC", per1000Feet, "ohm/1000 ft", [
          wire.gauge?.place,
          wire.material?.place,
        ]),
        L: written("length of the run", wire.length, "ft"),
        T_2: derived("conductor temperature", temperature),
      },
      sources: [wireMethods.resistanceAt.source],
    })),
  );
  return (
    resistance &&
    keep(
      known(current.value * resistance.value, "V", () => ({
        ...about(wire, condition),
        quantity: "wire-drop",
        formula: "I * R",
        operands: { I: derived("current", current), R: derived("resistance of the run", resistance) },
        sources: [wireMethods.voltageDrop.source],
      })),
    )
  );
}
