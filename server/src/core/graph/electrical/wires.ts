import { conductorTemperature, resistanceAt, wireMethods } from "../../methods/wires";
import { inUnit } from "../../quantities";
import type { Condition, Wire } from "../../records/types";
import { aluminiumResistance } from "../../tables/aluminium-wire";
import { copperConductor } from "../../tables/copper-wire";
import { covered, type Lookup } from "../../tables/lookup";
import { derive, derived, type Operand, sumOf, tabled, type Value, written } from "../value";
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
  const ambient = ratings.ambient(wire, condition);
  if (!wire.gauge || !wire.length || !wire.rating || !ambient) return undefined;
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
    ambientCelsius: ambient.value,
    ratingCelsius: inUnit(wire.rating.value, "degC"),
    allowedAmps,
  };
}

/** Loads that a wire carries in each condition; `isWhole` where no other way exists for any of them. */
interface Carried {
  readonly loads: Operand[];
  isWhole: boolean;
}

function loadsBehind(basis: ElectricalBasis, currents: LoadCurrents): Map<Wire, Map<Condition, Carried>> {
  const carried = new Map<Wire, Map<Condition, Carried>>();
  for (const path of basis.circuit.paths) {
    for (const [condition, current] of currents.get(path.id) ?? []) {
      for (const wire of [...path.feed, ...path.returns]) {
        const byCondition = carried.get(wire) ?? new Map<Condition, Carried>();
        carried.set(wire, byCondition);
        const known = byCondition.get(condition) ?? { loads: [], isWhole: true };
        byCondition.set(condition, known);
        known.loads.push(derived(`current of ${path.id}`, current));
        known.isWhole &&= path.isSingle;
      }
    }
  }
  return carried;
}

function wireState(
  wire: Wire,
  condition: Condition,
  carried: Carried | undefined,
  basis: ElectricalBasis,
): WireState {
  const allowed = basis.allowed(wire, condition);
  const current = carried && wireCurrent(wire, condition, carried, basis);
  if (!current) return { condition, allowed };
  const temperature = wireTemperature(wire, condition, current, allowed, basis);
  const drop = wireDrop(wire, condition, current, temperature, basis);
  return { condition, current, allowed, temperature, drop };
}

function wireCurrent(
  wire: Wire,
  condition: Condition,
  carried: Carried,
  basis: ElectricalBasis,
): Value | undefined {
  const common = {
    ...about(wire, condition),
    quantity: "wire-current",
    unit: "A",
  } as const;
  const solved = basis.states.get(condition)?.currentIn(wire);
  if (solved === undefined) return undefined;
  if (carried.isWhole) {
    return basis.keep(
      derive({ ...common, formula: "sum(I)", operands: { I: carried.loads }, compute: ({ I }) => sumOf(I) }),
    );
  }
  return basis.keep(
    derive({
      ...common,
      method: "solution of the whole network: the current has more than one way",
      operands: {
        gauge: written("gauge", wire.gauge, "AWG"),
        length: written("length of the run", wire.length, "ft"),
      },
      compute: () => Math.abs(solved),
    }),
  );
}

function wireTemperature(
  wire: Wire,
  condition: Condition,
  current: Value,
  allowed: Value | undefined,
  basis: ElectricalBasis,
): Value | undefined {
  const common = { ...about(wire, condition), quantity: "conductor-temperature", unit: "degC" } as const;
  const T_R = written("wire rating", wire.rating, "degC");
  if (!allowed) {
    return basis.keep(
      derive({
        ...common,
        formula: "T_R",
        operands: { T_R },
        compute: (numbers) => numbers.T_R,
        notes: ["No allowed current is known, so the conductor is taken at its rating, the safe way."],
      }),
    );
  }
  return basis.keep(
    derive({
      ...common,
      formula: "T_1 + (T_R - T_1) * sqrt(I / I_max)",
      operands: {
        T_1: basis.ratings.ambient(wire, condition),
        T_R,
        I: derived("current", current),
        I_max: derived("allowed current", allowed),
      },
      compute: (numbers) =>
        conductorTemperature({
          ambientCelsius: numbers.T_1,
          ratingCelsius: numbers.T_R,
          amps: numbers.I,
          allowedAmps: numbers.I_max,
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
  basis: ElectricalBasis,
): Value | undefined {
  if (!wire.gauge) return undefined;
  const material = wire.material?.value ?? "copper";
  const per1000Feet = resistancePer1000Feet(wire.gauge.value.si, material);
  const resistance = basis.keep(
    derive({
      ...about(wire, condition),
      quantity: "wire-resistance",
      unit: "ohm",
      formula:
        material === "copper"
          ? "R_20 * L / 1000 * (234.5 + T_2) / 254.5"
          : "R_20 * L / 1000 * (238.1 + T_2) / 258.1",
      operands: {
        R_20: tabled("resistance at 20 degC", per1000Feet, "ohm/1000 ft", [
          wire.gauge.place,
          wire.material?.place,
        ]),
        L: written("length of the run", wire.length, "ft"),
        T_2: derived("conductor temperature", temperature),
      },
      compute: ({ R_20, L, T_2 }) =>
        (resistanceAt({ material, resistanceAt20Celsius: R_20, conductorCelsius: T_2 }) * L) / 1000,
      sources: [wireMethods.resistanceAt.source],
    }),
  );
  return basis.keep(
    derive({
      ...about(wire, condition),
      quantity: "wire-drop",
      unit: "V",
      formula: "I * R",
      operands: { I: derived("current", current), R: derived("resistance of the run", resistance) },
      compute: ({ I, R }) => I * R,
      sources: [wireMethods.voltageDrop.source],
    }),
  );
}

function resistancePer1000Feet(gauge: number, material: "copper" | "aluminium"): Lookup<number> {
  if (material === "aluminium") return aluminiumResistance(gauge);
  const conductor = copperConductor(gauge);
  return conductor.covered
    ? covered(conductor.value.ohmsPer1000Feet, conductor.source, conductor.notes)
    : conductor;
}

function about(wire: Wire, condition: Condition) {
  return { subject: { kind: "wire", id: wire.id!.value }, condition: condition.id?.value } as const;
}
