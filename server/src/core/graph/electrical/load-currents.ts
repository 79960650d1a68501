import type { Component, Condition } from "../../records/types";
import { derive, derived, type Input, type Operand, type Value, written } from "../value";
import type { LoadPath } from "./circuit";
import type { ElectricalBasis } from "./index";
import { drawIn } from "./network";

/** Current of each component in each condition in which it runs, by component id. */
export type LoadCurrents = ReadonlyMap<string, ReadonlyMap<Condition, Value>>;

/**
 * What each component draws. A constant current is as written; a power or a resistance takes the voltage that
 * the solved network leaves at the component.
 */
export function deriveLoadCurrents(basis: ElectricalBasis): LoadCurrents {
  const currents = new Map<string, Map<Condition, Value>>();
  for (const path of basis.circuit.paths) {
    const byCondition = new Map<Condition, Value>();
    for (const condition of basis.conditions) {
      const current = loadCurrent(path.component, path, condition, basis);
      if (current) byCondition.set(condition, current);
    }
    currents.set(path.id, byCondition);
  }
  return currents;
}

function loadCurrent(
  component: Component,
  path: LoadPath,
  condition: Condition,
  basis: ElectricalBasis,
): Value | undefined {
  const draw = drawIn(component, condition);
  if (!draw) return undefined;
  const common = {
    subject: { kind: "component", id: path.id },
    quantity: "load-current",
    condition: condition.id?.value,
    unit: "A",
  } as const;
  if (draw.current) {
    return basis.keep(
      derive({
        ...common,
        formula: "I",
        operands: { I: written(`current in mode ${draw.mode?.value}`, draw.current, "A") },
        compute: ({ I }) => I,
      }),
    );
  }
  const V = derived("voltage at the load", loadVoltage(path, condition, basis));
  return basis.keep(
    draw.power
      ? derive({
          ...common,
          formula: "P / V",
          operands: { P: written(`power in mode ${draw.mode?.value}`, draw.power, "W"), V },
          compute: (numbers) => numbers.P / numbers.V,
        })
      : derive({
          ...common,
          formula: "V / R",
          operands: { V, R: written(`resistance in mode ${draw.mode?.value}`, draw.resistance, "ohm") },
          compute: (numbers) => numbers.V / numbers.R,
        }),
  );
}

/** Voltage between a component's two ends, by the solved network. */
export function loadVoltage(path: LoadPath, condition: Condition, basis: ElectricalBasis): Value | undefined {
  const state = basis.states.get(condition);
  const volts = state?.voltageAt(path.id);
  if (volts === undefined) return undefined;
  return basis.keep(
    derive({
      subject: { kind: "component", id: path.id },
      quantity: "load-voltage",
      condition: condition.id?.value,
      unit: "V",
      method: "solution of the whole network: Kirchhoff's laws, with wires at their temperature",
      operands: {
        nominal: written("nominal voltage", basis.project.airframe?.electrical?.nominal, "V"),
        ...runOperands(path, condition, basis),
      },
      compute: () => volts,
    }),
  );
}

/** Resistances of the wires on a path as the solution left them, with the places that decide them. */
function runOperands(path: LoadPath, condition: Condition, basis: ElectricalBasis): Record<string, Operand> {
  const operands: Record<string, Operand> = {};
  for (const wire of [...path.feed, ...path.returns]) {
    const ohms = basis.states.get(condition)?.resistanceOf(wire);
    if (ohms === undefined || !wire.id) continue;
    const places = [wire.gauge, wire.length, wire.rating].flatMap((one) => (one ? [one.place] : []));
    const input: Omit<Input, "symbol"> = {
      name: `run ${wire.id.value}`,
      value: ohms,
      unit: "ohm",
      places,
      notes: [],
    };
    operands[wire.id.value] = input;
  }
  return operands;
}
