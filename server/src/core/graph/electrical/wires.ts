import { conductorTemperature, resistanceAt, wireMethods } from "../../methods/wires";
import { inUnit } from "../../quantities";
import type { Condition, Wire } from "../../records/types";
import { Recurring } from "../remember";
import { derived, type Keep, known, type Operand, sumOf, tabled, type Value, written } from "../value";
import type { ElectricalBasis } from "./basis";
import type { LoadPath } from "./circuit";
import type { LoadCurrents } from "./load-currents";
import { type Gap, resistancePer1000Feet } from "./wire-ratings";

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
  const { circuit, conditions, states, ratings, keep: keepAll } = basis;
  const through = pathsThrough(circuit.paths);
  const solutions = conditions.map((condition) => states.get(condition));
  const wires = (basis.project.install.wires ?? []).flatMap((wire): [Wire, WireResult][] => {
    const rating = ratings.of(wire);
    if (!wire.id || !rating) return [];
    const paths = through.get(wire) ?? [];
    const hasOneWay = paths.every(({ isSingle }) => isSingle);
    const solved = solutions.map((state) => state?.currentIn(wire));
    const rests: unknown[] = [rating, circuit.protecting.has(wire)];
    for (const amps of solved) rests.push(hasOneWay ? amps === undefined : amps);
    for (const { id, isSingle } of paths) rests.push(currents.get(id), isSingle);
    return [
      [
        wire,
        results.recall(wire, rests, keepAll, (keep) => ({
          wire,
          id: wire.id!.value,
          isUsed: circuit.protecting.has(wire),
          states: conditions.map((condition, index) =>
            wireState(
              { wire, condition, allowed: rating.states[index]?.allowed, solved: solved[index] },
              loadsOf(paths, condition, currents),
              { ratings, keep },
            ),
          ),
          gaps: rating.gaps,
        })),
      ],
    ];
  });
  return new Map(wires);
}

const results = new Recurring<Wire, WireResult>();

/** For each wire the loads whose current it carries, once for each time that it lies on the way. */
function pathsThrough(paths: readonly LoadPath[]): Map<Wire, LoadPath[]> {
  const through = new Map<Wire, LoadPath[]>();
  for (const path of paths) {
    for (const wire of [...path.feed, ...path.returns]) {
      const known = through.get(wire);
      if (known) known.push(path);
      else through.set(wire, [path]);
    }
  }
  return through;
}

/** What a wire carries in a condition. */
interface Carried {
  readonly loads: readonly Value[];
  /** No other way exists for any of them. */
  readonly isWhole: boolean;
}

function loadsOf(paths: readonly LoadPath[], condition: Condition, currents: LoadCurrents): Carried {
  const loads: Value[] = [];
  let isWhole = true;
  for (const { id, isSingle } of paths) {
    const load = currents.get(id)?.get(condition);
    if (!load) continue;
    loads.push(load);
    isWhole &&= isSingle;
  }
  return { loads, isWhole };
}

const remembered = new Recurring<Condition, WireState>();

function wireState(
  {
    wire,
    condition,
    allowed,
    solved,
  }: { wire: Wire; condition: Condition; allowed: Value | undefined; solved: number | undefined },
  { loads, isWhole }: Carried,
  { ratings, keep }: Pick<ElectricalBasis, "ratings" | "keep">,
): WireState {
  if (loads.length === 0 || solved === undefined) return { condition, allowed };
  const rests = [allowed, ratings.ambientWritten(wire, condition), isWhole ? undefined : solved, ...loads];
  return remembered.recall(condition, rests, keep, (own) => {
    const current = own(
      isWhole ? sumOfLoads(wire, condition, loads) : solvedCurrent(wire, condition, solved),
    );
    if (!current) return { condition, allowed };
    const ambient = ratings.ambient(wire, condition);
    const temperature = wireTemperature(wire, condition, current, allowed, ambient, own);
    const drop = wireDrop(wire, condition, current, temperature, own);
    return { condition, current, allowed, temperature, drop };
  });
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

function about(wire: Wire, condition: Condition) {
  return { subject: { kind: "wire", id: wire.id!.value }, condition: condition.id?.value } as const;
}
