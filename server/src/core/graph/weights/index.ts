/**
 * Weight and balance: what the modification adds and removes, the empty weight and centre of gravity that come
 * of it, and every loading of the airframe before and after it.
 */
import { balanceSources, usefulLoad } from "../../methods/balance";
import type { Project } from "../../project";
import { derive, derived, type Keep, type Value, written } from "../value";
import { type AdverseResults, deriveAdverseSheets } from "./adverse-sheets";
import { type BalanceUnits, balanceUnits } from "./balance-units";
import { type ChangeHistory, deriveHistory } from "./change-history";
import type { FoundItems } from "./changed-items";
import { harnessItems } from "./changed-items";
import { deriveEmptyBefore } from "./empty-before";
import { deriveLoadingConditions, type LoadingConditions } from "./loading-conditions";
import { deriveLoadingPhases, type LoadingPhases } from "./loading-phases";
import { deriveLoadings, type LoadingResult } from "./loadings";
import { derivePermittedLoadings, type PermittedLoadings } from "./permitted-loadings";
import { deriveStatementDue, type StatementDue } from "./statement-due";
import { deriveStationLimits, type StationLimit } from "./station-limits";
import { aircraftOf, deriveWeightChange, type WeightChange } from "./weight-change";

export interface Weights {
  /** Units of every value here, those of the airframe's own empty weight statement. */
  readonly units: BalanceUnits;
  readonly change: WeightChange;
  /** Maximum take-off weight. */
  readonly takeoffLimit: Value | undefined;
  readonly usefulLoad: Value | undefined;
  readonly usefulLoadChange: Value | undefined;
  readonly stationLimits: ReadonlyMap<string, StationLimit>;
  readonly loadings: readonly LoadingResult[];
  readonly phases: readonly LoadingPhases[];
  /** Every loading that is permitted, one result for each envelope. */
  readonly permitted: readonly PermittedLoadings[];
  readonly adverse: AdverseResults;
  readonly conditions: readonly LoadingConditions[];
  readonly history: ChangeHistory | undefined;
  /** What the weighing and the changes since come to, beside the statement. */
  readonly statementDue: StatementDue | undefined;
}

/**
 * All weight-and-balance values of a project; `harnessWeight` is asked for only where it counts, `computed` are the
 * items that other sections hand in (see `changedItems`). Pure; what can't be computed from the whole record is left out.
 */
export function deriveWeights(
  project: Project,
  harnessWeight: () => Value | undefined,
  computed: readonly FoundItems[],
  keep: Keep,
): Weights {
  const units = balanceUnits(project.airframe);
  const before = deriveEmptyBefore(project.airframe, units, keep);
  const items = [harnessItems(project, units, harnessWeight), ...computed];
  const change = deriveWeightChange(project, units, before, items, keep);
  const loads = deriveUsefulLoad(project, units, change, keep);
  const stationLimits = deriveStationLimits(project, units, keep);
  const loadings = deriveLoadings(project, units, change, stationLimits, keep);
  const phases = deriveLoadingPhases(project, units, change, loadings, keep);
  const permitted = derivePermittedLoadings(project, units, change, stationLimits, keep);
  const adverse = deriveAdverseSheets(project, units, change, stationLimits, keep);
  const conditions = deriveLoadingConditions(project, units, change, stationLimits, keep);
  const history = deriveHistory(project, units, change, keep);
  const statementDue = deriveStatementDue(project, before.weighing, units, keep);
  return {
    units,
    change,
    ...loads,
    stationLimits,
    loadings,
    phases,
    permitted,
    adverse,
    conditions,
    history,
    statementDue,
  };
}

function deriveUsefulLoad(
  project: Project,
  units: BalanceUnits,
  change: WeightChange,
  keep: Keep,
): Pick<Weights, "takeoffLimit" | "usefulLoad" | "usefulLoadChange"> {
  const { airframe } = project;
  const subject = aircraftOf(project);
  const takeoffLimit = keep(
    derive({
      subject,
      quantity: "weight-limit",
      unit: units.weight,
      formula: "W_max",
      operands: { W_max: written("maximum take-off weight", airframe?.limits?.takeoff, units.weight) },
      compute: ({ W_max }) => W_max,
      sources: [{ document: "airframe record", at: "limits", standing: "record" }],
    }),
  );
  const W_max = derived("maximum take-off weight", takeoffLimit);
  const load = keep(
    derive({
      subject,
      quantity: "useful-load",
      unit: units.weight,
      formula: "W_max - W",
      operands: { W_max, W: derived("empty weight", change.emptyWeight) },
      compute: (numbers) => usefulLoad(numbers.W_max, numbers.W),
      sources: [balanceSources.usefulLoad],
    }),
  );
  const loadChange = keep(
    derive({
      subject,
      quantity: "useful-load-change",
      unit: units.weight,
      formula: "U - (W_max - W_0)",
      operands: {
        U: derived("useful load", load),
        W_max,
        W_0: change.before.weight,
      },
      compute: (numbers) => numbers.U - usefulLoad(numbers.W_max, numbers.W_0),
      sources: [balanceSources.usefulLoad],
    }),
  );
  return { takeoffLimit, usefulLoad: load, usefulLoadChange: loadChange };
}
