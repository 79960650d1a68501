import { readAnswer } from "./answer";
import { carry } from "./carry";
import { Circuit } from "./circuit";
import { type Condition, type NetworkAnswer, reference, type Solved, type Topology } from "./model";
import type { Plan } from "./plan";
import { conditionProblems } from "./problems";
import { findReach } from "./reach";
import { findResistances } from "./resistances";
import { makeTies } from "./ties";

/**
 * Solves one condition.
 *
 * @param planFor the plan for a set of rigid branches
 */
export function solveCondition(
  topology: Topology,
  condition: Condition,
  planFor: (rigid: Uint8Array) => Plan,
): NetworkAnswer {
  const problems = conditionProblems(topology, condition);
  if (problems.length > 0) return { kind: "no-solution", reason: "invalid-input", problems };

  const rigid = new Uint8Array(condition.ohms.length);
  condition.ohms.forEach((ohms, branch) => {
    if (ohms === 0) rigid[branch] = 1;
  });
  const plan = planFor(rigid);
  const tied = makeTies(condition.sources, (source) => {
    const { node } = topology.sources[source]!;
    return node === reference ? reference : plan.nodeUnknown[node]!;
  });
  if (tied.kind === "unlimited-current") {
    return { kind: "no-solution", reason: tied.kind, sources: tied.sources };
  }
  const reach = findReach(topology, condition, plan, tied.ties);
  const circuit = new Circuit(topology, condition, plan, tied.ties, reach);

  const ohms = Float64Array.from(condition.ohms);
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
      const answer = readAnswer(topology, condition, circuit, ohms, ohmsResidual);
      if (carried.kind === "carried" && isBalanced(answer)) return answer;
      const { iterations, residual } = answer;
      return { kind: "no-solution", reason: "did-not-converge", iterations, residual };
    }
  }
}

/** The last word: whatever was iterated, currents that don't add up are no answer. */
function isBalanced({ branchAmps, loadAmps, residual }: Solved): boolean {
  const largest = [...branchAmps, ...loadAmps].reduce<number>(
    (most, amps) => Math.max(most, Math.abs(amps ?? 0)),
    leastAmps,
  );
  return Number.isFinite(largest) && residual.amps <= mostImbalance * largest;
}

/** Of the largest current. */
const mostImbalance = 1e-6;
/** Where next to nothing flows, a microampere of noise is no imbalance. */
const leastAmps = 1;
