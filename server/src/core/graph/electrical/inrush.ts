import type { Condition } from "../../records/types";
import { derive, derived, sumOf, type Value, written } from "../value";
import type { ElectricalBasis } from "./basis";
import { drawIn } from "./running";
import { aircraftIn, type SourceBalance } from "./source-balance";
import type { SourceOutputs } from "./source-outputs";

/** A component that is switched on while all others of the condition run. */
export interface Inrush {
  readonly component: string;
  readonly condition: Condition;
  readonly demand: Value;
  /** What the sources that run are rated for together. */
  readonly capacity: Value;
}

/** For each component with a recorded inrush, the demand at switching it on in each condition. */
export function deriveInrushes(
  basis: ElectricalBasis,
  balances: readonly SourceBalance[],
  outputs: SourceOutputs,
): Inrush[] {
  return balances.flatMap((balance) => {
    const switched = basis.fed.flatMap(({ id, component }) => {
      const inrush = drawIn(component, balance.condition)?.inrush;
      const run = balance.loads.find((load) => load.kind === "component" && load.id === id);
      return inrush && run ? [{ id, inrush, run: run.current }] : [];
    });
    const capacity = switched.length > 0 ? ratedCapacity(balance.condition, basis, outputs) : undefined;
    if (!capacity) return [];
    return switched.flatMap(({ id, inrush, run }) => {
      const demand = basis.keep(
        derive({
          subject: { kind: "component", id },
          quantity: "inrush-demand",
          condition: balance.condition.id?.value,
          unit: "A",
          formula: "I_inrush + I_demand - I_run",
          operands: {
            I_inrush: written("inrush", inrush, "A"),
            I_demand: derived("demand of all loads", balance.demand),
            I_run: derived("its own share of that", run),
          },
          compute: ({ I_inrush, I_demand, I_run }) => I_inrush + I_demand - I_run,
        }),
      );
      return demand ? [{ component: id, condition: balance.condition, demand, capacity }] : [];
    });
  });
}

function ratedCapacity(
  condition: Condition,
  basis: ElectricalBasis,
  outputs: SourceOutputs,
): Value | undefined {
  const running = outputs.running(condition);
  if (running.length === 0) return undefined;
  return basis.keep(
    derive({
      ...aircraftIn(condition, basis),
      quantity: "inrush-capacity",
      unit: "A",
      formula: "sum(I)",
      operands: { I: running.map(({ id, rating }) => written(`rating of ${id!.value}`, rating, "A")) },
      compute: ({ I }) => sumOf(I),
    }),
  );
}
