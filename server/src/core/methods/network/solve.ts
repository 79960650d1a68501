import { readAnswer } from "./answer";
import { type Carried, carry } from "./carry";
import { Circuit } from "./circuit";
import { type Condition, type InputProblem, type NetworkAnswer, reference, type Topology } from "./model";
import type { Plan } from "./plan";
import { conditionProblems, isResistance } from "./problems";
import { findReach } from "./reach";
import { makeTies } from "./ties";

/**
 * Solves one condition, and finds the resistances that depend on their own current: each is asked for at the
 * current found with the ones before, until none changes. Where the changes grow, or the loads can't be
 * carried on the way, the steps are halved.
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

  const plan = planFor(Uint8Array.from(condition.ohms, (ohms) => (ohms === 0 ? 1 : 0)));
  const unknownOf = (node: number) => (node === reference ? reference : plan.nodeUnknown[node]!);
  const tied = makeTies(condition.sources, (source) => unknownOf(topology.sources[source]!.node));
  if (tied.kind === "unlimited-current") return { ...tied, kind: "no-solution", reason: tied.kind };
  const reach = findReach(topology, condition, plan, tied.ties);
  const circuit = new Circuit(topology, condition, plan, tied.ties, reach);

  const ohms = Float64Array.from(condition.ohms);
  circuit.setBranches(ohms);
  let carried = carry(circuit, false);
  let ohmsResidual = 0;
  if (condition.resistanceAt && carried.kind === "carried") {
    const found = settleResistances(circuit, condition.ohms, condition.resistanceAt, ohms);
    if ("problems" in found) return { kind: "no-solution", reason: "invalid-input", ...found };
    carried = found.carried;
    ohmsResidual = found.residual;
  }
  return answerOf(carried, () => readAnswer(topology, condition, circuit, ohms, ohmsResidual));
}
