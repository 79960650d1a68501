import { conductorTemperature, resistanceAt, wireMethods } from "../../methods/wires";
import { none } from "../../none";
import { inUnit } from "../../quantities";
import type { Bundle, Condition, Wire } from "../../records/types";
import { recalled } from "../recall";
import { derived, type KeepOne, known, sumOf, tabled, type Value, written } from "../value";
import { type ElectricalBasis, networkOf } from "./basis";
import { layoutOf } from "./layout";
import type { LoadCurrents } from "./load-currents";
import { RecurringStates, type StatesOf } from "./recurring-states";
import { traceOf } from "./trace";
import { about, ambientOf, celsiusOf, type Gap, resistancePer1000Feet } from "./wire-ratings";

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
  const { conditions, states, ratings, keep } = basis;
  const { paths } = traceOf(basis.project);
  const solutions = conditions.map((condition) => states.get(condition));
  const carriedBy = ({ branch, paths: behind }: UsedWire, index: number): Carried => {
    const loads: Value[] = [];
    let isWhole = true;
    for (const position of behind) {
      const load = currents[position]![index];
      if (!load) continue;
      loads.push(load);
      isWhole &&= paths[position]!.isSingle;
    }
    return { loads, isWhole, amps: solutions[index]?.currentIn(branch) };
  };
  const how: StatesOf<UsedWire, WireState, WireResult> = {
    things: usedWiresOf(basis.project),
    entryOf: ({ wire }) => wire,
    conditions,
    grounds: basis.grounds,
    rests: ({ position: own, branch, isUsed, paths: behind }) => {
      const hasOneWay = behind.every((position) => paths[position]!.isSingle);
      const rests: unknown[] = [ratings[own], isUsed, hasOneWay];
      for (const state of solutions) {
        const amps = state?.currentIn(branch);
        rests.push(hasOneWay ? amps === undefined : amps);
      }
      for (const position of behind) rests.push(currents[position], paths[position]!.isSingle);
      return rests;
    },
    restsIn: (of, index) => {
      const { amps, isWhole, loads } = carriedBy(of, index);
      return [ratings[of.position]!.states[index], isWhole, isWhole ? amps === undefined : amps, ...loads];
    },
    stateIn: (of, index, own) => {
      const { bundle, states: rated } = ratings[of.position]!;
      const condition = conditions[index]!;
      const { allowed } = rated[index]!;
      return wireState({ wire: of.wire, condition, bundle, allowed }, carriedBy(of, index), own);
    },
    whole: ({ wire, position, isUsed }, own) => ({
      wire,
      id: wire.id!.value,
      isUsed,
      states: own,
      gaps: ratings[position]!.gaps,
    }),
  };
  return new Map(results.recall(how, keep).map((result) => [result.wire, result]));
}

const results = new RecurringStates<WireState, WireResult>();

/** A wire with its place in the circuit, whatever the condition. */
interface UsedWire extends Pick<WireResult, "wire" | "isUsed"> {
  /** In the record. */
  readonly position: number;
  /** In the network; undefined while an end of it is missing. */
  readonly branch: number | undefined;
  /** Those that lead through it, by their position, once for each time that it lies on the way. */
  readonly paths: readonly number[];
}

/** Those that have a name. */
const usedWiresOf = recalled((project): readonly UsedWire[] => {
  const { protecting } = traceOf(project);
  const { firstWire } = networkOf(project);
  const through = pathsThroughOf(project);
  const { seats } = layoutOf(project);
  const used: UsedWire[] = [];
  let edge = seats;
  (project.install.wires ?? []).forEach((wire, position) => {
    const own = wire.from && wire.to ? edge++ : undefined;
    if (!wire.id) return;
    used.push({
      wire,
      position,
      isUsed: own !== undefined && protecting.has(own),
      branch: own === undefined ? undefined : firstWire + own - seats,
      paths: (own !== undefined && through[own]) || none,
    });
  });
  return used;
});

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

/** A wire in a condition, with what it may carry there. */
interface RatedWire extends Pick<WireState, "condition" | "allowed"> {
  readonly wire: Wire;
  readonly bundle: Bundle | undefined;
}

function wireState(rated: RatedWire, { loads, isWhole, amps }: Carried, keep: KeepOne): WireState {
  const { wire, condition, allowed } = rated;
  if (loads.length === 0 || amps === undefined) return { condition, allowed };
  const current = keep(isWhole ? sumOfLoads(wire, condition, loads) : solvedCurrent(wire, condition, amps));
  if (!current) return { condition, allowed };
  // Nothing is known of the heat around a wire whose bundle is not there.
  if (wire.bundle && !rated.bundle) return { condition, current, allowed };
  const temperature = keep(wireTemperature(rated, current));
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

function wireTemperature({ wire, condition, bundle, allowed }: RatedWire, current: Value): Value | undefined {
  const ambientCelsius = celsiusOf(bundle, condition);
  if (!wire.rating || ambientCelsius === undefined) return undefined;
  const ratingCelsius = inUnit(wire.rating.value, "degC");
  const T_R = () => written("wire rating", wire.rating, "degC");
  if (!allowed) {
    return known(ratingCelsius, "degC", () => ({
      ...about(wire, condition),
      quantity: "conductor-temperature",
      formula: "T_R",
      operands: { T_R: T_R() },
      notes: ["No allowed current is known, so the conductor is taken at its rating, the safe way."],
    }));
  }
  return known(
    conductorTemperature({
      ambientCelsius,
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
        T_1: ambientOf(bundle, condition),
        T_R: T_R(),
        I: derived("current", current),
        I_max: derived("allowed current", allowed),
      },
      sources: [wireMethods.conductorTemperature.source],
    }),
  );
}

function wireDrop(
  wire: Wire,
  condition: Condition,
  current: Value,
  temperature: Value | undefined,
  keep: KeepOne,
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
