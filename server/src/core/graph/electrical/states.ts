import type { Project } from "../../project";
import type { Condition } from "../../records/types";
import { Memory } from "../remember";
import { noValues } from "../value";
import type { Network, NetworkState } from "./network";
import type { SourceOutputs } from "./source-outputs";
import type { WireRatings } from "./wire-ratings";

/** What the network is solved with. */
interface Given {
  readonly project: Project;
  readonly conditions: readonly Condition[];
  readonly network: Network;
  readonly ratings: WireRatings;
  readonly outputs: SourceOutputs;
}

/** The network's solution in each condition. An edit of one condition leaves the others solved. */
export function solveConditions(given: Given): ReadonlyMap<Condition, NetworkState> {
  const rests = restsOf(given.project);
  return new Map(
    given.conditions.map((condition, index) => [
      condition,
      solved.recall(condition, condition, rests, noValues, () => solve(condition, index, given)),
    ]),
  );
}

const solved = new Memory<Condition, Condition, NetworkState>();

function solve(condition: Condition, index: number, { network, ratings, outputs }: Given): NetworkState {
  return network.solve(
    condition,
    (wire) => ratings.of(wire)?.states[index]?.numbers,
    (source) => outputs.limitOf(source, condition),
  );
}

/** Everything but the condition that a solution rests on. */
function restsOf({ airframe, kit, install }: Project): unknown[] {
  const { components = [], devices = [] } = kit ?? {};
  const { wires = [], protection = [], contacts = [], bundles = [], junctions = [] } = install;
  const ofKit = [kit !== undefined, ...components, ...devices];
  const ofInstall = [...wires, ...protection, ...contacts, ...bundles, ...junctions];
  return [airframe?.electrical, ...ofKit, ...ofInstall];
}
