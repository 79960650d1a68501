import { wireMethods } from "../../methods/wires";
import type { Bundle, Condition, Wire } from "../../records/types";
import { groupBy } from "../group-by";
import { Recurring } from "../remember";
import { derive, derived, type Keep, sumOf, type Value } from "../value";
import type { ElectricalBasis } from "./basis";
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
export function deriveBundles(basis: ElectricalBasis, wires: ReadonlyMap<Wire, WireResult>): BundleResult[] {
  const inBundle = groupBy([...wires.values()], ({ wire }) => wire.bundle?.value);
  const { project, conditions, keep: keepAll } = basis;
  return (project.install.bundles ?? []).flatMap((bundle) => {
    if (!bundle.id) return [];
    const id = bundle.id.value;
    const inside = inBundle.get(id) ?? [];
    const isComplete = bundle.wires?.value === inside.length;
    return [
      results.recall(bundle, [conditions, ...inside], keepAll, (keep) => ({
        bundle,
        id,
        wires: inside,
        states: isComplete ? loadings(id, inside, conditions, keep) : [],
      })),
    ];
  });
}

const results = new Recurring<Bundle, BundleResult>();

function loadings(
  id: string,
  inside: readonly WireResult[],
  conditions: readonly Condition[],
  keep: Keep,
): BundleResult["states"] {
  return conditions.flatMap((condition, index) => {
    const states = inside.map(({ id: wire, states }) => ({ wire, state: states[index]! }));
    const carrying = states.filter(({ state }) => state.current !== undefined);
    if (carrying.length === 0) return [];
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
    return loading ? [{ condition, loading }] : [];
  });
}
