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
    problems.push(impossible({ of: "branch", index, figure: "ohms", value }));
  }
  for (let index = 0; index < loads.length; index++) {
    const problem = loadProblem(loads[index], index);
    if (problem) problems.push(problem);
  }
  for (let index = 0; index < sources.length; index++) {
    const source = sources[index];
    if (source) problems.push(...sourceProblems(source, index));
  }
  return problems;
}

/** A resistance that the solver can work with: finite and not below `leastOhms`. */
export const isResistance = (ohms: number): boolean => Number.isFinite(ohms) && ohms >= leastOhms;

const isAmount = (value: number): boolean => Number.isFinite(value) && value >= 0;

function loadProblem(load: Load | undefined, index: number): InputProblem | undefined {
  const of = "load";
  switch (load?.kind) {
    case "current":
      return isAmount(load.amps) ? undefined : impossible({ of, index, figure: "amps", value: load.amps });
    case "resistance":
      return isResistance(load.ohms)
        ? undefined
        : impossible({ of, index, figure: "ohms", value: load.ohms });
    case "power":
      return isAmount(load.watts) ? undefined : impossible({ of, index, figure: "watts", value: load.watts });
    default:
      return undefined;
  }
}

function sourceProblems({ volts, ohms, mostAmps }: Source, index: number): InputProblem[] {
  const of = "source";
  const problems: InputProblem[] = [];
  if (!isAmount(volts)) problems.push(impossible({ of, index, figure: "volts", value: volts }));
  if (ohms !== 0 && !isResistance(ohms))
    problems.push(impossible({ of, index, figure: "ohms", value: ohms }));
  if (mostAmps !== undefined && !isAmount(mostAmps)) {
    problems.push(impossible({ of, index, figure: "mostAmps", value: mostAmps }));
  }
  return problems;
}

function impossible(figure: Omit<Impossible, "kind">): InputProblem {
  return { kind: "figure-impossible", ...figure };
}

type Impossible = Extract<InputProblem, { kind: "figure-impossible" }>;
