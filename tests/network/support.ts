/** Networks written by hand, and the checks that any answer must stand. */
import { expect } from "vitest";
import {
  type Condition,
  type Load,
  type NetworkAnswer,
  type NoSolution,
  prepare,
  reference,
  type Solved as SolverSolved,
  type Source,
  type Topology,
} from "../../server/src/core/methods/network";

/** A topology with one condition of it. */
export interface Network {
  readonly nodeCount: number;
  readonly branches: readonly { readonly from: number; readonly to: number; readonly ohms: number }[];
  readonly loads: readonly { readonly from: number; readonly to: number; readonly load: Load | undefined }[];
  readonly sources: readonly { readonly node: number; readonly source: Source | undefined }[];
}

export const ground = reference;
export const wire = (from: number, to: number, ohms: number) => ({ from, to, ohms });
export const current = (from: number, to: number, amps: number) => {
  return { from, to, load: { kind: "current", amps } } as const;
};
export const resistance = (from: number, to: number, ohms: number) => {
  return { from, to, load: { kind: "resistance", ohms } } as const;
};
export const power = (from: number, to: number, watts: number) => {
  return { from, to, load: { kind: "power", watts } } as const;
};
export const stiff = (node: number, volts: number, more: Partial<Source> = {}) => {
  return { node, source: { volts, ohms: 0, oneWay: false, ...more } };
};

export function network(parts: Partial<Network>): Network {
  const branches = parts.branches ?? [];
  const loads = parts.loads ?? [];
  const sources = parts.sources ?? [];
  const nodes = [...branches, ...loads].flatMap(({ from, to }) => [from, to]);
  const last = Math.max(-1, ...nodes, ...sources.map(({ node }) => node));
  return { nodeCount: parts.nodeCount ?? last + 1, branches, loads, sources };
}

export function topologyOf({ nodeCount, branches, loads, sources }: Network): Topology {
  return { nodeCount, branches, loads, sources };
}

export function conditionOf({ branches, loads, sources }: Network) {
  return {
    ohms: branches.map(({ ohms }) => ohms),
    loads: loads.map(({ load }) => load),
    sources: sources.map(({ source }) => source),
  } satisfies Condition;
}

/** An answer as tests write it: in plain lists, with undefined for what is undetermined. */
export type Solved = {
  readonly [Key in keyof SolverSolved]: SolverSolved[Key] extends Float64Array
    ? readonly (number | undefined)[]
    : SolverSolved[Key];
};

export function listed(answer: NetworkAnswer): Solved | NoSolution {
  if (answer.kind !== "solved") return answer;
  const list = (numbers: Float64Array) => [...numbers].map((one) => (Number.isNaN(one) ? undefined : one));
  return {
    ...answer,
    potentials: list(answer.potentials),
    branchAmps: list(answer.branchAmps),
    branchOhms: list(answer.branchOhms),
    loadAmps: list(answer.loadAmps),
    loadVolts: list(answer.loadVolts),
    sourceAmps: list(answer.sourceAmps),
  };
}

export function solve(of: Network, resistanceAt?: Condition["resistanceAt"]): Solved | NoSolution {
  return listed(prepare(topologyOf(of)).solve({ ...conditionOf(of), ...(resistanceAt && { resistanceAt }) }));
}

export function solved(of: Network, resistanceAt?: Condition["resistanceAt"]): Solved {
  const answer = solve(of, resistanceAt);
  if (answer.kind !== "solved") throw new Error(`no solution: ${JSON.stringify(answer)}`);
  return answer;
}

const wanted = (value: number | undefined): number => {
  if (value === undefined) throw new Error("undetermined");
  return value;
};

/**
 * What holds in any answer, computed from the network as it is written: Kirchhoff at each node, Ohm along each
 * branch, every load's and every source's own law, and the balance of power.
 * Only for networks without undetermined currents.
 */
export function expectLawful(of: Network, answer: Solved, slack = 1e-8): void {
  const volts = (node: number) => (node === ground ? 0 : wanted(answer.potentials[node]));
  const along = ({ from, to }: { from: number; to: number }) => volts(from) - volts(to);
  const sums = new Array<number>(of.nodeCount).fill(0);
  const into = (node: number, amps: number) => {
    if (node !== ground) sums[node]! += amps;
  };
  let lost = 0;
  let largest = 1;
  of.branches.forEach((branch, index) => {
    const amps = wanted(answer.branchAmps[index]);
    if (branch.ohms !== Number.POSITIVE_INFINITY) {
      const drop = amps * branch.ohms;
      expect(Math.abs(along(branch) - drop)).toBeLessThan(slack);
      lost += drop * amps;
    } else expect(amps).toBe(0);
    largest = Math.max(largest, Math.abs(amps));
    into(branch.from, -amps);
    into(branch.to, amps);
  });
  let used = 0;
  of.loads.forEach(({ from, to, load }, index) => {
    const amps = answer.loadAmps[index]!;
    const drop = wanted(answer.loadVolts[index]);
    expect(drop).toBeCloseTo(along({ from, to }), 9);
    if (load?.kind === "current") expect(amps).toBe(load.amps);
    else if (load?.kind === "resistance") expect(Math.abs(amps * load.ohms - drop)).toBeLessThan(slack);
    else if (load) expect(Math.abs(amps * drop - load.watts)).toBeLessThan(slack * (1 + load.watts));
    if (load && load.kind !== "resistance") expect(drop).toBeGreaterThan(0);
    used += amps * drop;
    into(from, -amps);
    into(to, amps);
  });
  let given = 0;
  of.sources.forEach(({ node, source }, index) => {
    const amps = wanted(answer.sourceAmps[index]);
    const state = answer.sourceStates[index];
    into(node, amps);
    given += amps * volts(node);
    if (!source) {
      expect(state).toBe("off");
      expect(amps).toBe(0);
      return;
    }
    const short = source.volts - source.ohms * amps - volts(node);
    const most = source.mostAmps ?? Number.POSITIVE_INFINITY;
    if (source.oneWay) expect(amps).toBeGreaterThan(-slack);
    expect(amps).toBeLessThan(most + slack);
    if (state === "holding") expect(Math.abs(short)).toBeLessThan(slack);
    else if (state === "off") {
      expect(amps).toBe(0);
      expect(short).toBeLessThan(slack);
    } else {
      expect(amps).toBe(most);
      expect(short).toBeGreaterThan(-slack);
    }
  });
  for (const sum of sums) expect(Math.abs(sum)).toBeLessThan(slack * largest);
  expect(Math.abs(given - lost - used)).toBeLessThan(slack * 100 * largest);
}
