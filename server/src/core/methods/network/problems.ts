import {
  type Condition,
  type InputProblem,
  type Load,
  type Part,
  reference,
  type Source,
  type Topology,
} from "./model";

/** Least resistance that is not a rigid connection. Below it a current is lost in the noise of the voltages. */
export const leastOhms = 1e-7;

/** Most nodes of a network, far beyond any aircraft. */
export const mostNodes = 100_000;

/** Everything that keeps a topology from being one. */
export function topologyProblems({ nodeCount, branches, loads, sources }: Topology): readonly InputProblem[] {
  if (!Number.isSafeInteger(nodeCount) || nodeCount < 0 || nodeCount > mostNodes) {
    return [{ kind: "node-count-impossible", value: nodeCount }];
  }
  const unknown = (of: Part, index: number, nodes: readonly number[]): InputProblem[] =>
    nodes
      .filter((node) => !Number.isInteger(node) || node < reference || node >= nodeCount)
      .map((node) => ({ kind: "node-unknown", of, index, node }));
  return [
    ...branches.flatMap(({ from, to }, index) => unknown("branch", index, [from, to])),
    ...loads.flatMap(({ from, to }, index) => unknown("load", index, [from, to])),
    ...sources.flatMap(({ node }, index) => unknown("source", index, [node])),
  ];
}

/** Everything that keeps a condition from being one of this topology. */
export function conditionProblems(topology: Topology, condition: Condition): readonly InputProblem[] {
  const lengths = [
    ["branch", topology.branches.length, condition.ohms.length],
    ["load", topology.loads.length, condition.loads.length],
    ["source", topology.sources.length, condition.sources.length],
  ] as const;
  const counts = lengths.flatMap(([of, expected, given]): InputProblem[] =>
    expected === given ? [] : [{ kind: "count-differs", of, expected, given }],
  );
  if (counts.length > 0) return counts;

  const problems: InputProblem[] = [];
  condition.ohms.forEach((value, index) => {
    if (value === 0 || value === Number.POSITIVE_INFINITY || isResistance(value)) return;
    problems.push({ kind: "figure-impossible", of: "branch", index, figure: "ohms", value });
  });
  condition.loads.forEach((load, index) => {
    if (load) problems.push(...loadProblems(load, index));
  });
  condition.sources.forEach((source, index) => {
    if (source) problems.push(...sourceProblems(source, index));
  });
  return problems;
}

/** A resistance that the solver can work with: finite and not below `leastOhms`. */
export const isResistance = (ohms: number): boolean => Number.isFinite(ohms) && ohms >= leastOhms;

const isAmount = (value: number): boolean => Number.isFinite(value) && value >= 0;

function loadProblems(load: Load, index: number): InputProblem[] {
  const fault = (figure: "ohms" | "amps" | "watts", value: number): InputProblem[] => [
    { kind: "figure-impossible", of: "load", index, figure, value },
  ];
  switch (load.kind) {
    case "current":
      return isAmount(load.amps) ? [] : fault("amps", load.amps);
    case "resistance":
      return isResistance(load.ohms) ? [] : fault("ohms", load.ohms);
    case "power":
      return isAmount(load.watts) ? [] : fault("watts", load.watts);
  }
}

function sourceProblems({ volts, ohms, mostAmps }: Source, index: number): InputProblem[] {
  const fault = (figure: "volts" | "ohms" | "mostAmps", value: number): InputProblem => ({
    kind: "figure-impossible",
    of: "source",
    index,
    figure,
    value,
  });
  const problems: InputProblem[] = [];
  if (!isAmount(volts)) problems.push(fault("volts", volts));
  if (ohms !== 0 && !isResistance(ohms)) problems.push(fault("ohms", ohms));
  if (mostAmps !== undefined && !isAmount(mostAmps)) problems.push(fault("mostAmps", mostAmps));
  return problems;
}
