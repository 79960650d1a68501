/** What all parts of the electrical derivation work from. */
import { none } from "../../none";
import type { Project } from "../../project";
import type { Condition } from "../../records/types";
import { type Part, part } from "../part";
import { recalled } from "../recall";
import type { Keep } from "../value";
import { type Circuit, drawCircuit, type FedLoad, fedLoads } from "./circuit";
import { layOutNetwork, type Network, type NetworkState, wireNetwork } from "./network";
import { SourceOutputs } from "./source-outputs";
import { resistancesOf, solveConditions } from "./states";
import { rateWires, type WireRating } from "./wire-ratings";

export interface ElectricalBasis {
  readonly project: Project;
  readonly keep: Keep;
  /** The same list while each of them is the same. */
  readonly conditions: readonly Condition[];
  readonly circuit: Circuit;
  /** In the order of the circuit's paths. */
  readonly fed: readonly FedLoad[];
  readonly network: Network;
  /** By the position of the wire in the record. */
  readonly ratings: readonly WireRating[];
  readonly outputs: SourceOutputs;
  readonly states: ReadonlyMap<Condition, NetworkState>;
  /**
   * By the position of the condition, all that anything derived in it can rest on: the condition, its solution,
   * and what is the same in all. An edit of another condition shows at once that nothing in this one has changed.
   */
  readonly grounds: readonly (readonly unknown[])[];
}

export const circuitOf = recalled(drawCircuit);
const fedOf = recalled(fedLoads);
export const networkOf = recalled(layOutNetwork);
const wiredOf = recalled((project) => wireNetwork(networkOf(project), project));
const unwarmedOf = recalled((project) => resistancesOf(project, networkOf(project)));
export const ratingsOf = part((project, keep) => rateWires(project, conditionsOf(project), keep));
export const outputsOf = part((project, keep) => new SourceOutputs(project, conditionsOf(project), keep));
export const statesOf = recalled((project) =>
  solveConditions({
    project,
    conditions: conditionsOf(project),
    wired: wiredOf(project),
    unwarmedOhms: unwarmedOf(project),
    ratings: ratingsOf(project),
    outputs: outputsOf(project),
  }),
);

const groundsOf = recalled((project): ElectricalBasis["grounds"] => {
  const { install, kit, airframe } = project;
  const { wires, bundles, protection, contacts } = install;
  const inAll = [wires, bundles, protection, contacts, kit?.components, kit?.devices, airframe?.electrical];
  const circuit = circuitOf(project);
  const states = statesOf(project);
  return conditionsOf(project).map((condition) => [condition, states.get(condition), circuit, ...inAll]);
});

/** A part that is derived from this basis: it rests on no more of it than it takes. */
export function electricalPart<R>(derive: (basis: ElectricalBasis) => R): Part<R> {
  return part((project, keep) => derive(new Basis(project, keep)));
}

/** Each thing of it is taken when somebody asks for it, once. */
class Basis implements ElectricalBasis {
  private readonly taken = new Map<(project: Project) => unknown, unknown>();

  constructor(
    readonly project: Project,
    readonly keep: Keep,
  ) {}

  get conditions() {
    return this.take(conditionsOf);
  }

  get circuit() {
    return this.take(circuitOf);
  }

  get fed() {
    return this.take(fedOf);
  }

  get network() {
    return this.take(networkOf);
  }

  get ratings() {
    return this.take(ratingsOf);
  }

  get outputs() {
    return this.take<SourceOutputs>(outputsOf);
  }

  get states() {
    return this.take(statesOf);
  }

  get grounds() {
    return this.take(groundsOf);
  }

  private take<T>(from: (project: Project) => T): T {
    if (!this.taken.has(from)) this.taken.set(from, from(this.project));
    return this.taken.get(from) as T;
  }
}

function conditionsOf({ install }: Project): readonly Condition[] {
  return install.conditions ?? none;
}
