import type { Circuit } from "./circuit";
import {
  type Condition,
  type Load,
  type Residual,
  reference,
  type Solved,
  type SourceState,
  type Topology,
} from "./model";
import { rigidAmps } from "./rigid-amps";
import { shares } from "./ties";

/** Reads the answer off a circuit that was solved. */
export function readAnswer(
  topology: Topology,
  condition: Condition,
  circuit: Circuit,
  ohms: Float64Array,
  ohmsResidual: number,
): Solved {
  const { nodal, plan, reach } = circuit;
  const firstLoad = topology.branches.length;
  const isFloating = (unknown: number) => unknown !== reference && reach.floating[unknown] === 1;

  // Those of rigid branches are found last, from what flows into them.
  const branchAmps: (number | undefined)[] = [];
  ohms.forEach((resistance, branch) => {
    const isCarrying = resistance !== 0 && resistance !== Number.POSITIVE_INFINITY;
    branchAmps.push(isCarrying ? nodal.voltsAlong(branch) / resistance : 0);
  });
  const loadAmps = loadCurrents(condition, circuit, firstLoad);
  const sources = sourceCurrents(condition, circuit);

  const inflow = new Float64Array(topology.nodeCount);
  const move = (from: number, to: number, amps: number) => {
    if (from !== reference) inflow[from]! -= amps;
    if (to !== reference) inflow[to]! += amps;
  };
  topology.branches.forEach(({ from, to }, branch) => {
    move(from, to, branchAmps[branch]!);
  });
  topology.loads.forEach(({ from, to }, load) => {
    move(from, to, loadAmps[load]!);
  });
  topology.sources.forEach(({ node }, source) => {
    move(reference, node, sources.amps[source] ?? 0);
  });
  const residual = { amps: imbalance(circuit, inflow, sources.shared), ohms: ohmsResidual };

  topology.sources.forEach(({ node }, source) => {
    if (sources.amps[source] === undefined) move(reference, node, Number.NaN);
  });
  ohms.forEach((resistance, branch) => {
    if (resistance === 0) branchAmps[branch] = undefined;
  });
  rigidAmps(plan.rigid, inflow, (branch, amps) => {
    branchAmps[branch] = amps;
  });
  const potentials: (number | undefined)[] = [];
  plan.nodeUnknown.forEach((unknown) => {
    potentials.push(isFloating(unknown) ? undefined : nodal.voltsAt(unknown));
  });
  return {
    kind: "solved",
    potentials,
    branchAmps,
    branchOhms: Array.from(ohms),
    loadAmps,
    loadVolts: loadAmps.map((_, load) => {
      const element = firstLoad + load;
      const undefinedEnd = isFloating(plan.from[element]!) || isFloating(plan.to[element]!);
      return undefinedEnd ? undefined : nodal.voltsAlong(element);
    }),
    sourceAmps: sources.amps,
    sourceStates: sources.states,
    islands: reach.islands,
    iterations: nodal.factorisations,
    residual,
  };
}

function loadCurrents(condition: Condition, { nodal, reach }: Circuit, firstLoad: number): number[] {
  return condition.loads.map((load, index) =>
    load && reach.alive[index] ? loadCurrent(load, nodal.voltsAlong(firstLoad + index)) : 0,
  );
}

function loadCurrent(load: Load, volts: number): number {
  switch (load.kind) {
    case "current":
      return load.amps;
    case "resistance":
      return volts / load.ohms;
    case "power":
      return load.watts === 0 ? 0 : load.watts / volts;
  }
}

interface SourceCurrents {
  readonly amps: (number | undefined)[];
  readonly states: SourceState[];
  /** What sources give together whose shares are undetermined, and where. */
  readonly shared: readonly { readonly at: number; readonly amps: number }[];
}

function sourceCurrents(condition: Condition, { nodal, ties, positions }: Circuit): SourceCurrents {
  const amps: (number | undefined)[] = condition.sources.map(() => 0);
  const states: SourceState[] = condition.sources.map(() => "off");
  const given = nodal.tieAmps(ties, positions).amps;
  const shared: { at: number; amps: number }[] = [];
  ties.forEach((tie, index) => {
    const each = shares(tie, positions[index]!, given[index]!);
    for (const share of each) {
      amps[share.source] = share.amps;
      states[share.source] = share.state;
    }
    if (each.some((share) => share.amps === undefined)) {
      const known = each.reduce((sum, share) => sum + (share.amps ?? 0), 0);
      shared.push({ at: tie.at, amps: given[index]! - known });
    }
  });
  return { amps, states, shared };
}

/** The largest sum of currents at an unknown, from the currents as they are answered. */
function imbalance(
  { plan, nodal }: Circuit,
  inflow: Float64Array,
  shared: SourceCurrents["shared"],
): Residual["amps"] {
  const sums = new Float64Array(nodal.volts.length);
  for (const { at, amps } of shared) if (at !== reference) sums[at]! += amps;
  plan.nodeUnknown.forEach((unknown, node) => {
    if (unknown !== reference) sums[unknown]! += inflow[node]!;
  });
  return sums.reduce((largest, sum) => Math.max(largest, Math.abs(sum)), 0);
}
