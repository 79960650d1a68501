import type { Circuit } from "./circuit";
import { type Condition, type Load, type Residual, reference, type Solved, type SourceState } from "./model";
import { giveRigidAmps } from "./rigid-amps";
import { shares } from "./ties";

/** Reads the answer off a circuit that was solved. */
export function readAnswer(
  condition: Condition,
  circuit: Circuit,
  ohms: Float64Array,
  ohmsResidual: number,
): Solved {
  const { nodal, plan, reach } = circuit;
  const { branchCount, fed } = plan.elements;

  // Those of rigid branches are found last, from what flows into them.
  const branchAmps = new Float64Array(branchCount);
  for (const branch of plan.resistive) branchAmps[branch] = nodal.voltsAlong(branch) / ohms[branch]!;
  const loadAmps = loadCurrents(condition.loads, circuit);
  const sources = sourceCurrents(condition, circuit);

  const inflow = inflows(circuit, branchAmps, loadAmps);
  for (const [source, node] of fed.entries()) {
    const amps = sources.amps[source]!;
    if (node !== reference && !Number.isNaN(amps)) inflow[node]! += amps;
  }
  const residual = { amps: imbalance(circuit, inflow, sources.shared), ohms: ohmsResidual };
  for (const [source, node] of fed.entries()) {
    if (node !== reference && Number.isNaN(sources.amps[source])) inflow[node] = Number.NaN;
  }
  for (let branch = 0; branch < branchCount; branch++) {
    if (ohms[branch] === 0) branchAmps[branch] = Number.NaN;
  }
  giveRigidAmps(plan.rigid, inflow, branchAmps);

  return {
    kind: "solved",
    potentials: potentials(circuit),
    branchAmps,
    branchOhms: ohms,
    loadAmps,
    loadVolts: loadVoltages(circuit),
    sourceAmps: sources.amps,
    sourceStates: sources.states,
    islands: reach.islands,
    iterations: nodal.factorisations,
    residual,
  };
}

/** Of an unknown; NaN where nothing ties it to the reference. */
function tiedVolts({ nodal, reach }: Circuit, unknown: number): number {
  return unknown !== reference && reach.floating[unknown] ? Number.NaN : nodal.voltsAt(unknown);
}

function potentials(circuit: Circuit): Float64Array {
  const { nodeUnknown } = circuit.plan;
  const volts = new Float64Array(nodeUnknown.length);
  for (let node = 0; node < volts.length; node++) volts[node] = tiedVolts(circuit, nodeUnknown[node]!);
  return volts;
}

function loadVoltages(circuit: Circuit): Float64Array {
  const { from, to, elements } = circuit.plan;
  const volts = new Float64Array(elements.loadCount);
  for (let load = 0; load < volts.length; load++) {
    const element = elements.branchCount + load;
    volts[load] = tiedVolts(circuit, from[element]!) - tiedVolts(circuit, to[element]!);
  }
  return volts;
}

function loadCurrents(loads: Condition["loads"], circuit: Circuit): Float64Array {
  const amps = new Float64Array(loads.length);
  for (let index = 0; index < loads.length; index++) {
    const load = loads[index];
    if (load && circuit.reach.alive[index]) amps[index] = loadCurrent(load, circuit.voltsAlong(index));
  }
  return amps;
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
  /** NaN where they are undetermined. */
  readonly amps: Float64Array;
  readonly states: SourceState[];
  /** What sources give together whose shares are undetermined, and where. */
  readonly shared: readonly { readonly at: number; readonly amps: number }[];
}

function sourceCurrents({ sources }: Condition, { nodal, ties, positions }: Circuit): SourceCurrents {
  const amps = new Float64Array(sources.length);
  const states: SourceState[] = sources.map(() => "off");
  const given = nodal.tieAmps(ties, positions).amps;
  const shared: { at: number; amps: number }[] = [];
  ties.forEach((tie, index) => {
    const each = shares(tie, positions[index]!, given[index]!);
    for (const share of each) {
      amps[share.source] = share.amps ?? Number.NaN;
      states[share.source] = share.state;
    }
    if (each.some((share) => share.amps === undefined)) {
      const known = each.reduce((sum, share) => sum + (share.amps ?? 0), 0);
      shared.push({ at: tie.at, amps: given[index]! - known });
    }
  });
  return { amps, states, shared };
}

/** By node, what branches and loads bring there. */
function inflows({ plan }: Circuit, branchAmps: Float64Array, loadAmps: Float64Array): Float64Array {
  const { nodeCount, branchCount, from, to } = plan.elements;
  const inflow = new Float64Array(nodeCount);
  for (let element = 0; element < from.length; element++) {
    const amps = element < branchCount ? branchAmps[element]! : loadAmps[element - branchCount]!;
    if (amps === 0) continue;
    const start = from[element]!;
    const end = to[element]!;
    if (start !== reference) inflow[start]! -= amps;
    if (end !== reference) inflow[end]! += amps;
  }
  return inflow;
}

/** The largest sum of currents at an unknown, from the currents as they are answered. */
function imbalance(
  { plan, nodal }: Circuit,
  inflow: Float64Array,
  shared: SourceCurrents["shared"],
): Residual["amps"] {
  const { nodeUnknown } = plan;
  const sums = new Float64Array(nodal.volts.length);
  for (const { at, amps } of shared) if (at !== reference) sums[at]! += amps;
  for (let node = 0; node < inflow.length; node++) {
    const unknown = nodeUnknown[node]!;
    if (unknown !== reference) sums[unknown]! += inflow[node]!;
  }
  let largest = 0;
  for (const sum of sums) largest = Math.max(largest, Math.abs(sum));
  return largest;
}
