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
  const { ohms, loads, sources } = condition;
  const problems: InputProblem[] = [];
  const compare = (of: Part, expected: number, given: number) => {
    if (expected !== given) problems.push({ kind: "count-differs", of, expected, given });
  };
  compare("branch", topology.branches.length, ohms.length);
  compare("load", topology.loads.length, loads.length);
  compare("source", topology.sources.length, sources.length);
  if (problems.length > 0) return problems;

  for (let index = 0; index < ohms.length; index++) {
    const value = ohms[index]!;
    if (value === 0 || value === Number.POSITIVE_INFINITY || isResistance(value)) continue;
    problems.push({ kind: "figure-impossible", of: "branch", index, figure: "ohms", value });
  }
  for (let index = 0; index < loads.length; index++) addLoadProblem(loads[index], index, problems);
  for (let index = 0; index < sources.length; index++) addSourceProblems(sources[index], index, problems);
  return problems;
}

/** A resistance that the solver can work with: finite and not below `leastOhms`. */
export const isResistance = (ohms: number): boolean => Number.isFinite(ohms) && ohms >= leastOhms;

const isAmount = (value: number): boolean => Number.isFinite(value) && value >= 0;

function addLoadProblem(load: Load | undefined, index: number, problems: InputProblem[]): void {
  const add = (figure: "ohms" | "amps" | "watts", value: number) => {
    problems.push({ kind: "figure-impossible", of: "load", index, figure, value });
  };
  switch (load?.kind) {
    case "current":
      if (!isAmount(load.amps)) add("amps", load.amps);
      break;
    case "resistance":
      if (!isResistance(load.ohms)) add("ohms", load.ohms);
      break;
    case "power":
      if (!isAmount(load.watts)) add("watts", load.watts);
      break;
  }
}

function addSourceProblems(source: Source | undefined, index: number, problems: InputProblem[]): void {
  if (!source) return;
  const { volts, ohms, mostAmps } = source;
  const add = (figure: "volts" | "ohms" | "mostAmps", value: number) => {
    problems.push({ kind: "figure-impossible", of: "source", index, figure, value });
  };
  if (!isAmount(volts)) add("volts", volts);
  if (ohms !== 0 && !isResistance(ohms)) add("ohms", ohms);
  if (mostAmps !== undefined && !isAmount(mostAmps)) add("mostAmps", mostAmps);
}
