import { readAnswer } from "./answer";
import { carry } from "./carry";
import { Circuit } from "./circuit";
import type { Condition, NetworkAnswer, Solved } from "./model";
import type { Plan } from "./plan";
import type { Reach } from "./reach";
import { findResistances } from "./resistances";
import { makeTies } from "./ties";

/** Solves one condition that has no problems, with the plan and the reach of its shape. */
export function solveCondition(condition: Condition, plan: Plan, reach: Reach): NetworkAnswer {
  const tied = makeTies(condition.sources, plan.fed);
  if (tied.kind === "unlimited-current") {
    return { kind: "no-solution", reason: tied.kind, sources: tied.sources };
  }
  const circuit = new Circuit(condition, plan, tied.ties, reach);
  const ohms = new Float64Array(condition.ohms);
  circuit.setBranches(ohms);
  let carried = carry(circuit, false);
  let ohmsResidual = 0;
  if (carried.kind === "carried" && condition.resistanceAt) {
    const found = findResistances(circuit, condition.resistanceAt, ohms);
    if (found.kind === "faulty") {
      return { kind: "no-solution", reason: "invalid-input", problems: found.problems };
    }
    ohmsResidual = found.residual;
    if (found.kind === "refused") carried = found.carried;
  }

  switch (carried.kind) {
    case "voltage-collapse":
      return { kind: "no-solution", reason: carried.kind, load: carried.load, ratio: carried.ratio };
    case "overloaded":
      return { kind: "no-solution", reason: carried.kind, sources: carried.sources };
    case "unsettled":
    case "carried": {
      const answer = readAnswer(condition, circuit, ohms, ohmsResidual);
      if (carried.kind === "carried" && isBalanced(answer)) return answer;
      const { iterations, residual } = answer;
      return { kind: "no-solution", reason: "did-not-converge", iterations, residual };
    }
  }
}

/** The last word: whatever was iterated, currents that don't add up are no answer. */
function isBalanced({ branchAmps, branchOhms, loadAmps, residual }: Solved): boolean {
  let largest = leastAmps;
  for (let branch = 0; branch < branchAmps.length; branch++) {
    const amps = branchAmps[branch]!;
    // Only a rigid connection may leave its current undetermined.
    if (branchOhms[branch] !== 0 || !Number.isNaN(amps)) largest = Math.max(largest, Math.abs(amps));
  }
  for (const amps of loadAmps) largest = Math.max(largest, Math.abs(amps));
  return Number.isFinite(largest) && residual.amps <= mostImbalance * largest;
}

/** Of the largest current. */
const mostImbalance = 1e-6;
/** Where next to nothing flows, a microampere of noise is no imbalance. */
const leastAmps = 1;
