import type { Condition, NetworkAnswer, Terminals, Topology } from "./model";
import { makePlan, type Plan } from "./plan";
import { topologyProblems } from "./problems";
import { solveCondition } from "./solve";

/** A topology made ready, to be solved for many conditions. */
export interface Network {
  /** Never throws, unless `resistanceAt` does. */
  solve(condition: Condition): NetworkAnswer;
}

/** Those made ready last: most edits of a record change a number, and not what is connected to what. */
const prepared: { readonly topology: Topology; readonly network: Network }[] = [];

/**
 * Makes a topology ready: which unknown is eliminated when, and what that ties together, is planned once for
 * each set of rigid branches (a contactor that opens changes it, a switched load doesn't) and kept.
 */
export function prepare(topology: Topology): Network {
  const known = prepared.find((one) => isSameTopology(one.topology, topology));
  if (known) return known.network;
  const network = prepareAnew(topology);
  prepared.push({ topology, network });
  if (prepared.length > topologiesKept) prepared.shift();
  return network;
}

function isSameTopology(a: Topology, b: Topology): boolean {
  return (
    a.nodeCount === b.nodeCount &&
    areSameTerminals(a.branches, b.branches) &&
    areSameTerminals(a.loads, b.loads) &&
    a.sources.length === b.sources.length &&
    a.sources.every(({ node }, index) => node === b.sources[index]!.node)
  );
}

function areSameTerminals(a: readonly Terminals[], b: readonly Terminals[]): boolean {
  return (
    a.length === b.length && a.every(({ from, to }, index) => from === b[index]!.from && to === b[index]!.to)
  );
}

function prepareAnew(topology: Topology): Network {
  const problems = topologyProblems(topology);
  if (problems.length > 0)
    return { solve: () => ({ kind: "no-solution", reason: "invalid-input", problems }) };

  const kept: { readonly rigid: Uint8Array; readonly plan: Plan }[] = [];
  const planFor = (rigid: Uint8Array): Plan => {
    const known = kept.find((one) => one.rigid.every((value, branch) => value === rigid[branch]));
    if (known) return known.plan;
    const plan = makePlan(topology, rigid);
    kept.push({ rigid, plan });
    if (kept.length > plansKept) kept.shift();
    return plan;
  };
  return { solve: (condition) => solveCondition(topology, condition, planFor) };
}

/** More than any aircraft has phases of flight with contactors of their own. */
const plansKept = 32;

/** As many as the install records that somebody works on at a time. */
const topologiesKept = 4;
