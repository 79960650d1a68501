import { elementsOf } from "./elements";
import { Kept } from "./kept";
import type { Condition, NetworkAnswer, Topology } from "./model";
import { makePlan, type Plan } from "./plan";
import { conditionProblems, topologyProblems } from "./problems";
import { findReach, type Reach } from "./reach";
import { shapeOf } from "./shape";
import { solveCondition } from "./solve";

/** A topology made ready, to be solved for many conditions. */
export interface Network {
  /** Never throws, unless `resistanceAt` does. */
  solve(condition: Condition): NetworkAnswer;
}

/**
 * Makes a topology ready. What rests on its connections alone is found once and kept: which unknown is eliminated
 * when, for each set of rigid and open branches, and how far current can flow, for each set of loads and sources
 * that are on. Whoever solves the same topology again keeps the network, and pays for its numbers only.
 */
export function prepare(topology: Topology): Network {
  const problems = topologyProblems(topology);
  if (problems.length > 0)
    return { solve: () => ({ kind: "no-solution", reason: "invalid-input", problems }) };

  const elements = elementsOf(topology);
  const plans = new Kept<{ readonly plan: Plan; readonly reaches: Kept<Reach> }>(plansKept);
  return {
    solve: (condition) => {
      const problems = conditionProblems(topology, condition);
      if (problems.length > 0) return { kind: "no-solution", reason: "invalid-input", problems };
      const shape = shapeOf(condition);
      const { plan, reaches } = plans.recall([shape.branches], () => ({
        plan: makePlan(elements, shape.branches),
        reaches: new Kept<Reach>(reachesKept),
      }));
      const reach = reaches.recall([shape.loads, shape.sources], () => findReach(shape, plan));
      return solveCondition(condition, plan, reach);
    },
  };
}

/** More than any aircraft has phases of flight with contactors of their own. */
const plansKept = 32;
/** More than any record has conditions. */
const reachesKept = 32;
