import { type Carried, carry } from "./carry";
import type { Circuit } from "./circuit";
import type { Condition, InputProblem } from "./model";
import { isResistance } from "./problems";
import { zeros } from "./zeros";

export type ResistancesFound =
  | { readonly kind: "found"; readonly residual: number }
  | { readonly kind: "refused"; readonly carried: Carried; readonly residual: number }
  | { readonly kind: "faulty"; readonly problems: readonly InputProblem[] };

/**
 * Finds the resistances that agree with their own currents: each is asked for at the current found with the
 * ones before, until none changes by more than `ohmsTolerance` of itself. Where the changes grow, or the
 * loads can't be carried on the way, the steps are halved.
 *
 * @param circuit solved with `ohms`
 * @param ohms by branch; left as found
 */
export function findResistances(
  circuit: Circuit,
  resistanceAt: NonNullable<Condition["resistanceAt"]>,
  ohms: Float64Array,
): ResistancesFound {
  const branches = circuit.plan.resistive;
  const { asked, next } = zeros({ asked: ohms.length, next: ohms.length });
  let share = 1;
  let last = Number.POSITIVE_INFINITY;
  for (let round = 0; round < mostRounds; round++) {
    let residual = 0;
    for (const branch of branches) {
      const before = ohms[branch]!;
      const value = resistanceAt(branch, Math.abs(circuit.nodal.voltsAlong(branch)) / before);
      if (!isResistance(value)) return { kind: "faulty", problems: [faulty(branch, value)] };
      asked[branch] = value;
      residual = Math.max(residual, Math.abs(value / before - 1));
    }
    if (residual <= ohmsTolerance) return { kind: "found", residual };
    if (residual > last) share = Math.max(share / 2, leastShare);
    last = residual;

    for (;;) {
      for (const branch of branches) next[branch] = ohms[branch]! + share * (asked[branch]! - ohms[branch]!);
      circuit.setBranches(next);
      const carried = carry(circuit, true);
      if (carried.kind === "carried") {
        for (const branch of branches) ohms[branch] = next[branch]!;
        break;
      }
      if (share <= leastShare) return { kind: "refused", carried, residual };
      share /= 2;
    }
  }
  return { kind: "refused", carried: { kind: "unsettled" }, residual: last };
}

const faulty = (index: number, value: number): InputProblem => ({
  kind: "figure-impossible",
  of: "branch",
  index,
  figure: "resistanceAt",
  value,
});

/** Relative change at which a resistance counts as found: far below what any table of wires is good for. */
const ohmsTolerance = 1e-8;
const leastShare = 1 / 64;
const mostRounds = 100;
