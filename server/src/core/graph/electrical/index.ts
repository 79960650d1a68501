/**
 * Everything electrical that is derived from a project: the network solved in each condition, and the values
 * of loads, wires, devices, bundles and sources that follow from it.
 */
import type { Project } from "../../project";
import type { Condition } from "../../records/types";
import { Memory } from "../remember";
import { type Keep, keeper, type Value } from "../value";
import { type BundleResult, deriveBundles } from "./bundles";
import { type Circuit, traceCircuit } from "./circuit";
import { type DeviceResult, deriveDevices } from "./devices";
import { deriveBusVoltages, deriveLoadCurrents, deriveLoadVoltages } from "./load-currents";
import { deriveLoads, type LoadResult } from "./loads";
import { buildNetwork, type Network, type NetworkState } from "./network";
import { deriveProtection, type ProtectionResults } from "./protection";
import { deriveSources, SourceOutputs, type Sources } from "./sources";
import { WireRatings } from "./wire-ratings";
import { deriveWires, type WireResult } from "./wires";

export interface Electrical {
  readonly circuit: Circuit;
  readonly network: Network;
  readonly states: ReadonlyMap<Condition, NetworkState>;
  readonly loads: readonly LoadResult[];
  readonly wires: readonly WireResult[];
  readonly devices: readonly DeviceResult[];
  readonly protection: ProtectionResults;
  readonly bundles: readonly BundleResult[];
  readonly sources: Sources;
  readonly values: readonly Value[];
}

/** What each part of the derivation works from. */
export interface ElectricalBasis {
  readonly project: Project;
  readonly conditions: readonly Condition[];
  readonly circuit: Circuit;
  readonly network: Network;
  readonly states: ReadonlyMap<Condition, NetworkState>;
  readonly ratings: WireRatings;
  readonly outputs: SourceOutputs;
  readonly keep: Keep;
}

/** Pure; what is missing in the record is left out of the result. */
export function deriveElectrical(project: Project): Electrical {
  const { keep, list } = keeper();
  const conditions = project.install.conditions ?? [];
  const circuit = traceCircuit(project);
  const network = buildNetwork(project);
  const ratings = new WireRatings(project, conditions, keep);
  const outputs = new SourceOutputs(project, keep);
  const states = new Map<Condition, NetworkState>();
  const rests = networkRests(project);
  for (const [index, condition] of conditions.entries()) {
    // Before the solution, which may be recalled: the same values in the same order, whatever was known before.
    const limits = new Map(outputs.sources.map((source) => [source, outputs.limitOf(source, condition)]));
    const solve = () =>
      network.solve(
        condition,
        (wire) => ratings.of(wire)?.states[index]?.numbers,
        (source) => limits.get(source),
      );
    states.set(condition, solved.recall(condition, condition, rests, keep, solve));
  }
  const basis: ElectricalBasis = { project, conditions, circuit, network, states, ratings, outputs, keep };
  const ofBuses = deriveBusVoltages(basis);
  const voltages = deriveLoadVoltages(basis, ofBuses);
  const currents = deriveLoadCurrents(basis, voltages);
  const wires = deriveWires(basis, currents);
  const devices = deriveDevices(basis, currents, wires);
  return {
    circuit,
    network,
    states,
    loads: deriveLoads(basis, { currents, voltages, ofBuses, wires, devices }),
    wires: [...wires.values()],
    devices,
    protection: deriveProtection(basis, currents, devices),
    bundles: deriveBundles(basis, wires),
    sources: deriveSources(basis, currents, outputs),
    get values() {
      return list();
    },
  };
}

const solved = new Memory<Condition, Condition, NetworkState>();

/** Everything but the condition that a solution rests on: an edit of one condition leaves the others solved. */
function networkRests({ airframe, kit, install }: Project): unknown[] {
  const { components = [], devices = [] } = kit ?? {};
  const { wires = [], protection = [], contacts = [], bundles = [], junctions = [] } = install;
  const ofKit = [kit !== undefined, ...components, ...devices];
  const ofInstall = [...wires, ...protection, ...contacts, ...bundles, ...junctions];
  return [airframe?.electrical, ...ofKit, ...ofInstall];
}
