import { wireMethods } from "../../methods/wires";
import { none } from "../../none";
import type { Bundle, Condition, Wire } from "../../records/types";
import { groupBy } from "../group-by";
import { derive, derived, type KeepOne, sumOf, type Value } from "../value";
import type { ElectricalBasis } from "./basis";
import { RecurringStates, type StatesOf } from "./recurring-states";
import type { WireResult } from "./wires";

export interface BundleResult {
  readonly bundle: Bundle;
  readonly id: string;
  /** Wires of this record that run in it. */
  readonly wires: readonly WireResult[];
  /** Computed where every wire of the bundle is in this record. */
  readonly states: readonly { readonly condition: Condition; readonly loading: Value }[];
}

/** How far each bundle is loaded, in every condition in which its wires carry something. */
export function deriveBundles(
  basis: ElectricalBasis,
  wires: ReadonlyMap<Wire, WireResult>,
): readonly BundleResult[] {
  const { project, conditions, keep } = basis;
  const inBundle = groupBy(wires.values(), ({ wire }) => wire.bundle?.value);
  const laid = (project.install.bundles ?? []).flatMap((bundle): Laid[] => {
    if (!bundle.id) return [];
    const inside = inBundle.get(bundle.id.value) ?? none;
    const isComplete = bundle.wires?.value === inside.length;
    return [{ bundle, id: bundle.id.value, wires: inside, isComplete }];
  });
  const how: StatesOf<Laid, BundleState | undefined, BundleResult> = {
    things: laid,
    entryOf: ({ bundle }) => bundle,
    conditions,
    grounds: basis.grounds,
    rests: ({ isComplete, wires: inside }) => [isComplete, ...inside],
    restsIn: ({ isComplete, wires: inside }, index) => [
      isComplete,
      ...inside.map(({ states }) => states[index]),
    ],
    stateIn: ({ id, isComplete, wires: inside }, index, own) =>
      isComplete ? loadingOf(id, inside, conditions[index]!, index, own) : undefined,
    whole: ({ bundle, id, wires: inside }, states) => ({
      bundle,
      id,
      wires: inside,
      states: states.filter((state) => state !== undefined),
    }),
  };
  return results.recall(how, keep);
}

type BundleState = BundleResult["states"][number];

/** A bundle as it is laid; complete where every wire of it is in this record. */
interface Laid extends Omit<BundleResult, "states"> {
  readonly isComplete: boolean;
}

const results = new RecurringStates<BundleState | undefined, BundleResult>();

function loadingOf(
  id: string,
  inside: readonly WireResult[],
  condition: Condition,
  index: number,
  keep: KeepOne,
): BundleState | undefined {
  const states = inside.map(({ id: wire, states }) => ({ wire, state: states[index]! }));
  const carrying = states.filter(({ state }) => state.current !== undefined);
  if (carrying.length === 0) return undefined;
  const loading = keep(
    derive({
      subject: { kind: "bundle", id },
      quantity: "bundle-loading",
      condition: condition.id?.value,
      unit: "%",
      formula: "100 * sum(I) / sum(I_max)",
      operands: {
        I: carrying.map(({ wire, state }) => derived(`current of ${wire}`, state.current)),
        I_max: states.map(({ wire, state }) => derived(`allowed current of ${wire}`, state.allowed)),
      },
      compute: ({ I, I_max }) => (100 * sumOf(I)) / sumOf(I_max),
      sources: [wireMethods.bundleLoading.source],
    }),
  );
  return loading && { condition, loading };
}
