import { conductorTemperature, resistanceAt, wireMethods } from "../../methods/wires";
import { inUnit } from "../../quantities";
import type { Condition, Wire } from "../../records/types";
import { aluminiumResistance } from "../../tables/aluminium-wire";
import { copperConductor } from "../../tables/copper-wire";
import { covered, type Lookup } from "../../tables/lookup";
import { Memory } from "../remember";
import { derived, type Keep, known, type Operand, sumOf, tabled, type Value, written } from "../value";
import type { ElectricalBasis } from "./index";
import type { LoadCurrents } from "./load-currents";
import type { WireNumbers } from "./network";
import type { Gap, WireRatings } from "./wire-ratings";

export interface WireResult {
  readonly wire: Wire;
  readonly id: string;
  /** Whether any load's path leads through it. */
  readonly isUsed: boolean;
  readonly states: readonly WireState[];
  /** Why some of its values can't be had from the tables. */
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

/** Currents, conductor temperatures and drops of every wire, in the order of the record. */
export function deriveWires(basis: ElectricalBasis, currents: LoadCurrents): Map<Wire, WireResult> {
  const carried = loadsBehind(basis, currents);
  const results = new Map<Wire, WireResult>();
  for (const wire of basis.project.install.wires ?? []) {
    if (!wire.id) continue;
    const states = basis.conditions.map((condition) =>
      wireState(wire, condition, carried.get(wire)?.get(condition), basis),
    );
    results.set(wire, {
      wire,
      id: wire.id.value,
      isUsed: basis.circuit.protecting.has(wire),
      states,
      gaps: basis.ratings.gapsOf(wire),
    });
  }
  return results;
}

/** What the network's solution needs of a wire; undefined while too little of it is known. */
export function numbersOf(
  wire: Wire,
  condition: Condition,
  ratings: WireRatings,
  allowedAmps: number | undefined,
): WireNumbers | undefined {
  const material = wire.material?.value ?? "copper";
  const ambientCelsius = ratings.ambientCelsius(wire, condition);
  if (!wire.gauge || !wire.length || !wire.rating || ambientCelsius === undefined) return undefined;
  const resistance = ratings.note(
    wire,
    "wire resistance",
    resistancePer1000Feet(wire.gauge.value.si, material),
  );
  if (!resistance.covered) return undefined;
  return {
    material,
    ohmsPer1000FeetAt20: resistance.value,
    lengthFeet: inUnit(wire.length.value, "ft"),
    ambientCelsius,
    ratingCelsius: inUnit(wire.rating.value, "degC"),
    allowedAmps,
  };
}

/** Loads that a wire carries in each condition; `isWhole` where no other way exists for any of them. */
interface Carried {
  readonly loads: Value[];
  isWhole: boolean;
}

function loadsBehind(basis: ElectricalBasis, currents: LoadCurrents): Map<Wire, Map<Condition, Carried>> {
  const carried = new Map<Wire, Map<Condition, Carried>>();
  for (const path of basis.circuit.paths) {
    for (const [condition, current] of currents.get(path.id) ?? []) {
      for (const wire of [...path.feed, ...path.returns]) {
        const byCondition = carried.get(wire) ?? new Map<Condition, Carried>();
        carried.set(wire, byCondition);
        const before = byCondition.get(condition) ?? { loads: [], isWhole: true };
        byCondition.set(condition, before);
        before.loads.push(current);
        before.isWhole &&= path.isSingle;
      }
    }
  }
  return carried;
}

const remembered = new Memory<Wire, Condition, WireState>();

function wireState(
  wire: Wire,
  condition: Condition,
  carried: Carried | undefined,
  { ratings, states, ...basis }: ElectricalBasis,
): WireState {
  const allowed = basis.allowed(wire, condition);
  const solved = carried && states.get(condition)?.currentIn(wire);
  if (!carried || solved === undefined) return { condition, allowed };
  const ambient = ratings.ambient(wire, condition);
  const { isWhole, loads } = carried;
  const rests = [allowed, ambient?.places[0], isWhole ? undefined : solved, ...loads];
  return remembered.recall(wire, condition, rests, basis.keep, (keep) => {
    const current = keep(
      isWhole ? sumOfLoads(wire, condition, loads) : solvedCurrent(wire, condition, solved),
    );
    if (!current) return { condition, allowed };
    const temperature = wireTemperature(wire, condition, current, allowed, ambient, keep);
    const drop = wireDrop(wire, condition, current, temperature, keep);
    return { condition, current, allowed, temperature, drop };
  });
}

function sumOfLoads(wire: Wire, condition: Condition, loads: readonly Value[]): Value | undefined {
  return known({
    ...about(wire, condition),
    quantity: "wire-current",
    unit: "A",
    formula: "sum(I)",
    value: sumOf(loads.map((load) => load.value)),
    operands: () => ({ I: loads.map((load) => derived(`current of ${load.subject.id}`, load)) }),
  });
}

function solvedCurrent(wire: Wire, condition: Condition, amps: number): Value | undefined {
  return known({
    ...about(wire, condition),
    quantity: "wire-current",
    unit: "A",
    method: "solution of the whole network: the current has more than one way",
    value: Math.abs(amps),
    operands: () => ({
      gauge: written("gauge", wire.gauge, "AWG"),
      length: written("length of the run", wire.length, "ft"),
    }),
  });
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
  const common = { ...about(wire, condition), quantity: "conductor-temperature", unit: "degC" } as const;
  const T_R = () => written("wire rating", wire.rating, "degC");
  if (!allowed) {
    return keep(
      known({
        ...common,
        formula: "T_R",
        value: ratingCelsius,
        operands: () => ({ T_R: T_R() }),
        notes: ["No allowed current is known, so the conductor is taken at its rating, the safe way."],
      }),
    );
  }
  return keep(
    known({
      ...common,
      formula: "T_1 + (T_R - T_1) * sqrt(I / I_max)",
      value: conductorTemperature({
        ambientCelsius: ambient.value,
        ratingCelsius,
        amps: current.value,
        allowedAmps: allowed.value,
      }),
      operands: () => ({
        T_1: ambient,
        T_R: T_R(),
        I: derived("current", current),
        I_max: derived("allowed current", allowed),
      }),
      sources: [wireMethods.conductorTemperature.source],
    }),
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
    known({
      ...about(wire, condition),
      quantity: "wire-resistance",
      unit: "ohm",
      formula:
        material === "copper"
          ? "R_20 * L / 1000 * (234.5 + T_2) / 254.5"
          : "R_20 * L / 1000 * (238.1 + T_2) / 258.1",
      value: (resistanceAt(conductor) * inUnit(wire.length.value, "ft")) / 1000,
      operands: () => ({
        R_20: tabled("resistance at 20 degC", per1000Feet, "ohm/1000 ft", [
          wire.gauge?.place,
          wire.material?.place,
        ]),
        L: written("length of the run", wire.length, "ft"),
        T_2: derived("conductor temperature", temperature),
      }),
      sources: [wireMethods.resistanceAt.source],
    }),
  );
  return (
    resistance &&
    keep(
      known({
        ...about(wire, condition),
        quantity: "wire-drop",
        unit: "V",
        formula: "I * R",
        value: current.value * resistance.value,
        operands: () => ({ I: derived("current", current), R: derived("resistance of the run", resistance) }),
        sources: [wireMethods.voltageDrop.source],
      }),
    )
  );
}

/** Largest resistance of a conductor at 20 degC, in ohm per 1000 ft, by its gauge. */
export function resistancePer1000Feet(gauge: number, material: "copper" | "aluminium"): Lookup<number> {
  if (material === "aluminium") return aluminiumResistance(gauge);
  const conductor = copperConductor(gauge);
  return conductor.covered
    ? covered(conductor.value.ohmsPer1000Feet, conductor.source, conductor.notes)
    : conductor;
}

function about(wire: Wire, condition: Condition) {
  return { subject: { kind: "wire", id: wire.id!.value }, condition: condition.id?.value } as const;
}
