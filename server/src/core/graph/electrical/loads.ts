import { wireMethods } from "../../methods/wires";
import type { Component, Condition, Wire } from "../../records/types";
import { voltageDropLimit } from "../../tables/voltage-drop-limits";
import { Memory } from "../remember";
import { derive, derived, type Operand, sumOf, tabled, type Value } from "../value";
import type { LoadPath } from "./circuit";
import type { ElectricalBasis } from "./index";
import { holdersOn, type LoadCurrents, type LoadVoltages } from "./load-currents";
import type { WireResult } from "./wires";

export interface LoadResult {
  readonly path: LoadPath;
  readonly states: readonly LoadState[];
}

/** One component in a condition in which it runs. */
export interface LoadState {
  readonly condition: Condition;
  readonly current: Value;
  readonly voltage: Value | undefined;
  readonly drop: Value | undefined;
  readonly limit: Value | undefined;
  /** The wires of the path, the one that drops most first. */
  readonly worst: readonly WireResult[];
}

/** Up to this long a current counts as intermittent. AC 43.13-1B par. 11-66; the time itself is from memory. */
const intermittentUpToSeconds = 120;

/**
 * Voltage at each load, and what is lost on the way there and back. A result is the same object while all that
 * it rests on is.
 */
export function deriveLoads(
  basis: ElectricalBasis,
  currents: LoadCurrents,
  voltages: LoadVoltages,
  wires: ReadonlyMap<Wire, WireResult>,
): LoadResult[] {
  return basis.circuit.paths.map((path) => {
    const ofPath = {
      currents: currents.get(path.id),
      voltages: voltages.get(path.id),
      wires: [...path.feed, ...path.returns].flatMap((wire) => wires.get(wire) ?? []),
    };
    const holders = holdersOn(path, basis);
    const resistive = path.through.filter((_, index) => holders[index]?.resistance);
    const rests = [
      path,
      basis.project.airframe?.electrical?.nominal,
      ofPath.currents,
      ofPath.voltages,
      ...ofPath.wires,
      ...holders,
      ...resistive.flatMap(({ id }) =>
        basis.conditions.map((condition) => basis.states.get(condition)?.currentThrough(id)),
      ),
    ];
    return results.recall(path.component, path.component, rests, basis.keep, (keep) => ({
      path,
      states: [...(ofPath.currents ?? [])].map(([condition, current]) =>
        loadState(
          path,
          condition,
          current,
          ofPath.voltages?.get(condition),
          { ...basis, keep },
          ofPath.wires,
        ),
      ),
    }));
  });
}

const results = new Memory<Component, Component, LoadResult>();

function loadState(
  path: LoadPath,
  condition: Condition,
  current: Value,
  voltage: Value | undefined,
  basis: ElectricalBasis,
  wires: readonly WireResult[],
): LoadState {
  const index = basis.conditions.indexOf(condition);
  const drops = wires.map((result) => ({ result, drop: result.states[index]?.drop }));
  const worst = drops
    .toSorted((a, b) => (b.drop?.value ?? 0) - (a.drop?.value ?? 0))
    .map(({ result }) => result);
  const inDevices = dropsInDevices(path, condition, basis);
  const rests = [
    basis.project.airframe?.electrical?.nominal,
    voltage,
    ...drops.map(({ drop }) => drop),
    ...inDevices.map((drop) => drop?.value),
    ...holdersOn(path, basis),
  ];
  const { drop, limit } = remembered.recall(path.component, condition, rests, basis.keep, (keep) => ({
    drop: path.isSingle
      ? keep(sumOfDrops(path, condition, drops, inDevices))
      : keep(differenceOfVoltages(path, condition, voltage, basis)),
    limit: keep(dropLimit(path, condition, basis)),
  }));
  return { condition, current, voltage, drop, limit, worst };
}

const remembered = new Memory<Component, Condition, Pick<LoadState, "drop" | "limit">>();

const throughStructure =
  "Returns through the structure: its drop counts as none where the bond is 0.005 ohm or less (AC 43.13-1B par. 11-66).";

/** Where the current has one way only, what each wire and each device on it drops. */
function sumOfDrops(
  path: LoadPath,
  condition: Condition,
  drops: readonly { readonly result: WireResult; readonly drop: Value | undefined }[],
  inDevices: readonly Operand[],
): Value | undefined {
  const inWires = drops.map(({ result, drop }) => derived(`drop of wire ${result.id}`, drop));
  if (inWires.length + inDevices.length === 0) return undefined;
  return derive({
    ...about(path, condition),
    quantity: "path-drop",
    unit: "V",
    formula: "sum(V)",
    operands: { V: [...inWires, ...inDevices] },
    compute: ({ V }) => sumOf(V),
    sources: [wireMethods.voltageDrop.source],
    notes: path.returns.length > 0 ? [] : [throughStructure],
  });
}

function dropsInDevices(path: LoadPath, condition: Condition, basis: ElectricalBasis): Operand[] {
  const holders = holdersOn(path, basis);
  return path.through.flatMap(({ id }, index) => {
    const holder = holders[index];
    const amps = basis.states.get(condition)?.currentThrough(id);
    if (!holder?.resistance || amps === undefined) return [];
    const volts = holder.resistance.value.si * Math.abs(amps);
    return [{ name: `drop in ${id}`, value: volts, unit: "V", places: [holder.resistance.place], notes: [] }];
  });
}

function differenceOfVoltages(
  path: LoadPath,
  condition: Condition,
  voltage: Value | undefined,
  basis: ElectricalBasis,
): Value | undefined {
  const state = basis.states.get(condition);
  const potentials = path.buses.map((bus) => state?.potentialOf(bus)).filter((volts) => volts !== undefined);
  if (potentials.length === 0) return undefined;
  return derive({
    ...about(path, condition),
    quantity: "path-drop",
    unit: "V",
    formula: "V_bus - V_load",
    operands: {
      V_bus: {
        name: "highest voltage of its buses, by the network's solution",
        value: Math.max(...potentials),
        unit: "V",
        places: [],
        notes: [],
      },
      V_load: derived("voltage at the load", voltage),
    },
    compute: ({ V_bus, V_load }) => V_bus - V_load,
    sources: [wireMethods.voltageDrop.source],
  });
}

function dropLimit(path: LoadPath, condition: Condition, basis: ElectricalBasis): Value | undefined {
  const nominal = basis.project.airframe?.electrical?.nominal;
  if (!nominal) return undefined;
  const isShort = condition.duration !== undefined && condition.duration.value.si <= intermittentUpToSeconds;
  const lookup = voltageDropLimit(nominal.value.si, isShort ? "intermittent" : "continuous");
  return derive({
    ...about(path, condition),
    quantity: "drop-limit",
    unit: "V",
    formula: "V_allowed",
    operands: {
      V_allowed: tabled(isShort ? "allowed, intermittent" : "allowed, continuous", lookup, "V", [
        nominal.place,
        condition.duration?.place,
      ]),
    },
    compute: ({ V_allowed }) => V_allowed,
    sources: [lookup.source],
  });
}

function about(path: LoadPath, condition: Condition) {
  return { subject: { kind: "component", id: path.id }, condition: condition.id?.value } as const;
}
