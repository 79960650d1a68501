import type { Circuit } from "./circuit";
import { type Condition, type Load, reference, type Solved, type SourceState } from "./model";
import type { Plan } from "./plan";
import { giveRigidAmps } from "./rigid-amps";
import { share } from "./ties";
import { zeros } from "./zeros";

/** Reads the answer off a circuit that was solved. */
export function readAnswer(
  condition: Condition,
  circuit: Circuit,
  ohms: Float64Array,
  ohmsResidual: number,
): Solved {
  const { nodal, plan, reach, ties, positions } = circuit;
  const { nodeCount, branchCount, loadCount, from, to, fed } = plan.elements;
  const { potentials, branchAmps, loadAmps, loadVolts, sourceAmps } = zeros({
    potentials: nodeCount,
    branchAmps: branchCount,
    loadAmps: loadCount,
    loadVolts: loadCount,
    sourceAmps: fed.length,
  });
  for (let node = 0; node < nodeCount; node++) potentials[node] = tiedVolts(circuit, plan.nodeUnknown[node]!);
  // Those of rigid branches are found last, from what flows into them.
  for (const branch of plan.resistive) branchAmps[branch] = nodal.voltsAlong(branch) / ohms[branch]!;
  for (let index = 0; index < loadCount; index++) {
    const element = branchCount + index;
    const volts = tiedVolts(circuit, plan.from[element]!) - tiedVolts(circuit, plan.to[element]!);
    const load = condition.loads[index];
    loadVolts[index] = volts;
    if (load && reach.alive[index]) loadAmps[index] = loadCurrent(load, volts);
  }
  const sourceStates = condition.sources.map((): SourceState => "off");

  const { inflow, sums } = zeros({ inflow: nodeCount, sums: nodal.volts.length });
  const move = (from: number, to: number, amps: number) => {
    if (from !== reference) inflow[from]! -= amps;
    if (to !== reference) inflow[to]! += amps;
  };
  for (let branch = 0; branch < branchCount; branch++) move(from[branch]!, to[branch]!, branchAmps[branch]!);
  for (let load = 0; load < loadCount; load++) {
    move(from[branchCount + load]!, to[branchCount + load]!, loadAmps[load]!);
  }
  const given = nodal.tieAmps(ties, positions).amps;
  for (let index = 0; index < ties.length; index++) {
    const { at } = ties[index]!;
    const open = share(ties[index]!, positions[index]!, given[index]!, {
      states: sourceStates,
      amps: sourceAmps,
    });
    if (at !== reference) sums[at]! += open;
  }
  for (let source = 0; source < fed.length; source++) {
    const amps = sourceAmps[source]!;
    if (!Number.isNaN(amps)) move(reference, fed[source]!, amps);
  }
  const residual = { amps: imbalance(plan, inflow, sums), ohms: ohmsResidual };

  for (let source = 0; source < fed.length; source++) {
    if (Number.isNaN(sourceAmps[source])) move(reference, fed[source]!, Number.NaN);
  }
  for (let branch = 0; branch < branchCount; branch++) {
    if (ohms[branch] === 0) branchAmps[branch] = Number.NaN;
  }
  giveRigidAmps(plan.rigid, inflow, branchAmps);

  return {
    kind: "solved",
    potentials,
    branchAmps,
    branchOhms: ohms,
    loadAmps,
    loadVolts,
    sourceAmps,
    sourceStates,
    islands: reach.islands,
    iterations: nodal.factorisations,
    residual,
  };
}

/** Of an unknown; NaN where nothing ties it to the reference. */
function tiedVolts({ nodal, reach }: Circuit, unknown: number): number {
  return unknown !== reference && reach.floating[unknown] ? Number.NaN : nodal.voltsAt(unknown);
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

/**
 * The largest sum of currents at an unknown, from the currents as they are answered.
 *
 * @param inflow by node, what is known to flow in
 * @param sums by unknown, what else does; left as the sums
 */
function imbalance({ nodeUnknown }: Plan, inflow: Float64Array, sums: Float64Array): number {
  for (let node = 0; node < inflow.length; node++) {
    const unknown = nodeUnknown[node]!;
    if (unknown !== reference) sums[unknown]! += inflow[node]!;
  }
  let largest = 0;
  for (let unknown = 0; unknown < sums.length; unknown++) {
    largest = Math.max(largest, Math.abs(sums[unknown]!));
  }
  return largest;
}
