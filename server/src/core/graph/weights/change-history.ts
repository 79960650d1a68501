/** This change and those before it, since the aircraft was last weighed. */
import { balanceSources } from "../../methods/balance";
import type { Project } from "../../project";
import type { PastChange } from "../../records/types";
import { cumulativeChange } from "../../tables/cumulative-change";
import { isWholeList } from "../entries";
import { assumed, derive, derived, type Keep, type Operand, sumOf, type Value, written } from "../value";
import type { BalanceUnits } from "./balance-units";
import { aircraftOf, type WeightChange } from "./weight-change";

export interface ChangeHistory {
  readonly weighed: string | undefined;
  readonly changes: readonly PastChange[];
  /** How much weight and CG have changed, either way. */
  readonly weight: Value | undefined;
  readonly weightLimit: Value | undefined;
  /** In per cent of the chord. */
  readonly cg: Value | undefined;
  readonly cgLimit: Value | undefined;
  /** Whether the threshold is that of the aircraft's own data, being the lower one. */
  readonly hasOwn: { readonly weight: boolean; readonly cg: boolean };
}

/** Undefined where the airframe record has no history. Pure; values go to `keep`. */
export function deriveHistory(
  project: Project,
  units: BalanceUnits,
  change: WeightChange,
  keep: Keep,
): ChangeHistory | undefined {
  const { airframe } = project;
  const history = airframe?.history;
  if (!airframe || !history) return undefined;
  const subject = aircraftOf(project);
  const changes = history.changes ?? [];
  const unknown: readonly Operand[] = isWholeList(history, "changes", history.changes) ? [] : [undefined];
  const past = [...unknown, ...changes.map((one) => written("past change", one.weight, units.weight))];
  const arms = changes.map((one) => written("arm of a past change", one.arm, units.arm));
  const hasPast = past.length > 0;
  const weight = keep(
    derive({
      subject,
      quantity: "cumulative-weight-change",
      unit: units.weight,
      formula: hasPast ? "abs(dW + sum(w))" : "abs(dW)",
      operands: { dW: derived("weight change", change.weightChange), w: past },
      compute: ({ dW, w }) => Math.abs(dW + sumOf(w)),
      sources: [cumulativeChange.source],
    }),
  );
  const own = written("threshold of the aircraft's data", history.weightThreshold, units.weight);
  const landing = written(
    "maximum landing weight",
    airframe.limits?.landing ?? airframe.limits?.takeoff,
    units.weight,
  );
  const share = assumed(
    "published share",
    cumulativeChange.weightPercent,
    "%",
    "of the maximum landing weight",
  );
  const weightLimit = keep(
    derive({
      subject,
      quantity: "cumulative-weight-limit",
      unit: units.weight,
      formula: own ? "min(W_own, k * W_L / 100)" : "k * W_L / 100",
      operands: { ...(own && { W_own: own }), k: share, W_L: landing },
      compute: ({ W_own = Number.POSITIVE_INFINITY, k, W_L }: { W_own?: number; k: number; W_L: number }) =>
        Math.min(W_own, (k * W_L) / 100),
      sources: [cumulativeChange.source],
    }),
  );
  const isAeroplane = airframe.aircraft?.kind?.value === "aeroplane";
  const cg = isAeroplane
    ? keep(
        derive({
          subject,
          quantity: "cumulative-cg-change",
          unit: "%",
          method:
            "size of CG now, less the CG that the statement without its past changes has, in per cent of the mean aerodynamic chord",
          operands: {
            x: derived("empty CG", change.emptyCg),
            W_0: change.before.weight,
            M_0: derived("empty moment before", change.emptyMomentBefore),
            w: past,
            x_i: arms,
            c: written("mean aerodynamic chord", airframe.mac?.length, units.arm),
          },
          compute: ({ x, W_0, M_0, w, x_i, c }) => {
            const moment = sumOf(w.map((one, index) => one * (x_i[index] ?? Number.NaN)));
            return Math.abs((100 * (x - (M_0 - moment) / (W_0 - sumOf(w)))) / c);
          },
          sources: [balanceSources.centreOfGravity, balanceSources.percentOfChord],
        }),
      )
    : undefined;
  const ownCg = written("threshold of the aircraft's data", history.cgThreshold, "%");
  const cgLimit = keep(
    derive({
      subject,
      quantity: "cumulative-cg-limit",
      unit: "%",
      formula: ownCg ? "min(k_own, k)" : "k",
      operands: {
        ...(ownCg && { k_own: ownCg }),
        k: assumed("published limit", cumulativeChange.cgPercent, "%", "of the mean aerodynamic chord"),
      },
      compute: ({ k_own = Number.POSITIVE_INFINITY, k }: { k_own?: number; k: number }) => Math.min(k_own, k),
      sources: [cumulativeChange.source],
    }),
  );
  return {
    weighed: history.weighed?.value,
    changes,
    weight,
    weightLimit,
    cg,
    cgLimit,
    hasOwn: {
      weight: own !== undefined && own.value === weightLimit?.value,
      cg: ownCg !== undefined && ownCg.value === cgLimit?.value,
    },
  };
}
