/**
 * The same networks by other means: the whole system of equations (modified nodal analysis: potentials, and
 * currents of rigid connections and of sources) by mathjs, the sources' states by trying all, constant power
 * by repeated substitution. Slow, and with nothing in common with the solver.
 */
import { lusolve } from "mathjs";
import type { SourceState } from "../../server/src/core/methods/network";
import { ground, type Network } from "./support";

export interface Found {
  readonly potentials: readonly number[];
  readonly rigidAmps: readonly number[];
  readonly sourceAmps: readonly number[];
}

/** What is known of a network when its sources' states and its loads' constant currents are. */
function linearSystem(
  of: Network,
  states: readonly SourceState[],
  loadAmps: readonly number[],
): Found | undefined {
  const { nodeCount, branches, loads, sources } = of;
  const rigid = branches.flatMap((branch, index) => (branch.ohms === 0 ? [index] : []));
  const holding = states.flatMap((state, index) => (state === "holding" ? [index] : []));
  const size = nodeCount + rigid.length + holding.length;
  const rows = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  const right = new Array<number>(size).fill(0);
  const add = (row: number, column: number, value: number) => {
    if (row !== ground && column !== ground) rows[row]![column]! += value;
  };
  const resistor = (from: number, to: number, siemens: number) => {
    add(from, from, siemens);
    add(to, to, siemens);
    add(from, to, -siemens);
    add(to, from, -siemens);
  };
  const inject = (node: number, amps: number) => {
    if (node !== ground) right[node]! += amps;
  };
  for (const { from, to, ohms } of branches) if (ohms > 0) resistor(from, to, 1 / ohms);
  loads.forEach(({ from, to, load }, index) => {
    if (load?.kind === "resistance") resistor(from, to, 1 / load.ohms);
    inject(from, -loadAmps[index]!);
    inject(to, loadAmps[index]!);
  });
  rigid.forEach((branch, index) => {
    const { from, to } = branches[branch]!;
    const unknown = nodeCount + index;
    add(from, unknown, 1);
    add(to, unknown, -1);
    add(unknown, from, 1);
    add(unknown, to, -1);
  });
  holding.forEach((source, index) => {
    const unknown = nodeCount + rigid.length + index;
    const node = sources[source]!.node;
    const { volts, ohms } = sources[source]!.source!;
    add(node, unknown, -1);
    add(unknown, node, 1);
    add(unknown, unknown, ohms);
    right[unknown] = volts;
  });
  sources.forEach(({ node, source }, index) => {
    if (states[index] === "at-limit") inject(node, source!.mostAmps!);
  });

  const answer = lu(rows, right);
  // A singular matrix shows as a division by nothing, or by noise.
  if (!answer?.every((value) => Math.abs(value) < 1e9)) return undefined;
  return {
    potentials: answer.slice(0, nodeCount),
    rigidAmps: answer.slice(nodeCount, nodeCount + rigid.length),
    sourceAmps: states.map((state, index) => {
      if (state === "off") return 0;
      if (state === "at-limit") return sources[index]!.source!.mostAmps!;
      return answer[nodeCount + rigid.length + holding.indexOf(index)]!;
    }),
  };
}

function lu(rows: number[][], right: number[]): number[] | undefined {
  if (right.length === 0) return [];
  try {
    return (lusolve(rows, right) as number[][]).map(([value]) => value!);
  } catch {
    return undefined; // singular
  }
}

const slack = 1e-7;

/** Whether each source's state is the one that its voltage and current call for. */
function agrees(of: Network, states: readonly SourceState[], { potentials, sourceAmps }: Found): boolean {
  return of.sources.every(({ node, source }, index) => {
    if (!source) return true;
    const amps = sourceAmps[index]!;
    const short = source.volts - source.ohms * amps - (node === ground ? 0 : potentials[node]!);
    if (states[index] === "at-limit") return short > -slack;
    if (states[index] === "off") return short < slack;
    return (!source.oneWay || amps > -slack) && amps < (source.mostAmps ?? Number.POSITIVE_INFINITY) + slack;
  });
}

function everyStates(of: Network): readonly (readonly SourceState[])[] {
  let all: SourceState[][] = [[]];
  for (const { source } of of.sources) {
    const own: SourceState[] = source ? ["holding"] : ["off"];
    if (source?.oneWay) own.push("off");
    if (source?.mostAmps !== undefined) own.push("at-limit");
    all = all.flatMap((states) => own.map((state) => [...states, state]));
  }
  return all;
}

/** The answer for constant currents; undefined when no states of the sources agree with it. */
export function solveLinear(
  of: Network,
  loadAmps: readonly number[] = of.loads.map(({ load }) => (load?.kind === "current" ? load.amps : 0)),
): Found | undefined {
  for (const states of everyStates(of)) {
    const found = linearSystem(of, states, loadAmps);
    if (found && agrees(of, states, found)) return found;
  }
  return undefined;
}

export type Substituted = { kind: "found"; found: Found } | { kind: "none" } | { kind: "too-slow" };

/** The answer with constant-power loads, from nothing drawn upwards. */
export function substitute(of: Network): Substituted {
  let amps = of.loads.map(({ load }) => (load?.kind === "current" ? load.amps : 0));
  for (let round = 0; round < 300; round++) {
    const found = solveLinear(of, amps);
    if (!found) return { kind: "none" };
    const volts = of.loads.map(
      ({ from, to }) =>
        (from === ground ? 0 : found.potentials[from]!) - (to === ground ? 0 : found.potentials[to]!),
    );
    if (of.loads.some(({ load }, index) => load && load.kind !== "resistance" && !(volts[index]! > 0))) {
      return { kind: "none" };
    }
    const next = of.loads.map(({ load }, index) =>
      load?.kind === "power" ? load.watts / volts[index]! : amps[index]!,
    );
    if (next.every((value, index) => Math.abs(value - amps[index]!) < 1e-12 * (1 + value))) {
      return { kind: "found", found };
    }
    amps = next;
  }
  return { kind: "too-slow" };
}
