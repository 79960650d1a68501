import type { Balance } from "./balance";

/** A weight at an arm, each with how far it may be off either way. A negative weight is taken away. */
export interface UncertainMass {
  readonly weight: number;
  readonly arm: number;
  /** Zero or more. */
  readonly weightTolerance: number;
  readonly armTolerance: number;
}

/** What every sum of tolerances notes. */
export const addedUpNote = "Tolerances are added up as they stand: the worst case, not the likely one.";

/** The ends of what weights and arms within their tolerances can come to. */
export interface BalanceRange {
  /** With the lowest and with the highest arm of the sum: whole states, each with its own weight. */
  readonly foremost: Balance & { readonly arm: number };
  readonly aftmost: Balance & { readonly arm: number };
  /** Heaviest less nominal, and nominal less lightest: the tolerances of the weights, added up. */
  readonly weightTolerance: number;
}

/**
 * The exact worst case: the lowest and the highest arm that the sum can have while every weight and every arm
 * stays within its tolerance. Undefined unless every state weighs something.
 *
 * For given weights the arm of the sum is lowest with every arm at the end of its tolerance that its weight's
 * sign says. For given arms, sum(w x) / sum(w) is lowest with each weight at one end of its tolerance: heavy
 * ahead of the sum's own arm, light behind it. So weights are chosen by the arm so far, and the arm computed
 * again, until nothing changes: each turn lowers it, and there are finitely many choices (derived; a
 * linear-fractional function over a box has its extremes at corners).
 */
export function balanceRange(masses: readonly UncertainMass[]): BalanceRange | undefined {
  const weightTolerance = masses.reduce((sum, one) => sum + one.weightTolerance, 0);
  const lightest = masses.reduce((sum, one) => sum + one.weight - one.weightTolerance, 0);
  if (!(lightest > 0)) return undefined;
  return { foremost: extreme(masses, -1), aftmost: extreme(masses, 1), weightTolerance };
}

function extreme(masses: readonly UncertainMass[], side: 1 | -1): BalanceRange["foremost"] {
  let best = sumAt(masses, 0, side);
  for (let turn = 0; turn <= masses.length; turn++) {
    const next = sumAt(masses, best.arm, side);
    if (side * (next.arm - best.arm) <= 0) break;
    best = next;
  }
  return best;
}

/** The sum with each weight at the end of its tolerance that pulls to one side of `about`, and each arm so too. */
function sumAt(masses: readonly UncertainMass[], about: number, side: 1 | -1): BalanceRange["foremost"] {
  let weight = 0;
  let moment = 0;
  for (const one of masses) {
    const arm = one.arm + side * Math.sign(one.weight) * one.armTolerance;
    const own = one.weight + side * Math.sign(arm - about) * one.weightTolerance;
    weight += own;
    moment += own * arm;
  }
  return { weight, moment, arm: moment / weight };
}
