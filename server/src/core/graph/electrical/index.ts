/**
 * Everything electrical that is derived from a project: the network solved in each condition, and the values
 * of loads, wires, devices, bundles and sources that follow from it. Each part is derived by itself, so that
 * what an edit does not touch stays as it is.
 */
import type { Project } from "../../project";
import type { Condition } from "../../records/types";
import { together, valuesOfParts } from "../part";
import { recalled } from "../recall";
import type { Value } from "../value";
import { circuitOf, networkOf, outputsOf, ratingsOf, statesOf } from "./basis";
import type { BundleResult } from "./bundles";
import type { Circuit } from "./circuit";
import type { DeviceResult } from "./devices";
import type { ChartResult, GuardResult } from "./guards";
import type { LoadResult } from "./loads";
import type { Network, NetworkState } from "./network";
import {
  bundlesOf,
  busVoltagesOf,
  chartsOf,
  currentsOf,
  devicesOf,
  guardsOf,
  loadsOf,
  ratedOf,
  voltagesOf,
  wiresOf,
} from "./parts";
import { type ProtectionResults, protectionOf, protectionParts } from "./protection";
import { type Sources, sourceParts, sourcesOf } from "./sources";
import { type Trace, traceOf } from "./trace";
import type { WireResult } from "./wires";

export interface Electrical {
  readonly trace: Trace;
  readonly circuit: Circuit;
  readonly network: Network;
  readonly states: ReadonlyMap<Condition, NetworkState>;
  readonly loads: readonly LoadResult[];
  readonly wires: readonly WireResult[];
  readonly devices: readonly DeviceResult[];
  readonly guards: readonly GuardResult[];
  readonly charts: readonly ChartResult[];
  readonly protection: ProtectionResults;
  readonly bundles: readonly BundleResult[];
  readonly sources: Sources;
  readonly values: readonly Value[];
}

const wireListOf = recalled((project) => [...wiresOf(project).values()]);

/** In the order in which a worksheet shows their values. */
export const electricalParts = [
  ratingsOf,
  outputsOf,
  busVoltagesOf,
  voltagesOf,
  currentsOf,
  wiresOf,
  ratedOf,
  devicesOf,
  chartsOf,
  loadsOf,
  ...protectionParts,
  bundlesOf,
  ...sourceParts,
];

/** Pure; what is missing in the record is left out of the result, and nothing is derived before it is asked for. */
export const electricalOf: (project: Project) => Electrical = together({
  trace: traceOf,
  circuit: circuitOf,
  network: networkOf,
  states: statesOf,
  loads: loadsOf,
  wires: wireListOf,
  devices: devicesOf,
  guards: guardsOf,
  charts: chartsOf,
  protection: protectionOf,
  bundles: bundlesOf,
  sources: sourcesOf,
  values: (project) => valuesOfParts(electricalParts, project),
});
