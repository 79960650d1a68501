import type { Condition } from "../../records/types";
import type { Source } from "../../source";
import type { Value } from "../value";
import type { BalancedLoad, SourceBalance } from "./source-balance";

/** The load analysis in the standard's own form: conditions across, loads down, totals below. */
export interface LoadAnalysis {
  readonly columns: readonly AnalysisColumn[];
  readonly rows: readonly AnalysisRow[];
}

/** One condition with its totals, in A; the margin in per cent of the capacity. */
export interface AnalysisColumn {
  readonly condition: Condition;
  /** The standard's condition that its phase belongs to; undefined while it has no phase. */
  readonly standard: string | undefined;
  readonly demand: Value | undefined;
  readonly capacity: Value | undefined;
  readonly margin: Value | undefined;
}

/** One load with its current in each column; undefined where it does not run, or its current is not known. */
export interface AnalysisRow {
  readonly kind: BalancedLoad["kind"];
  readonly id: string;
  readonly buses: readonly string[];
  readonly currents: readonly (Value | undefined)[];
}

/** Operating conditions of the standard, by phase of the record. */
const standardConditions: Readonly<Record<NonNullable<Condition["phase"]>["value"], string>> = {
  "ground-power": "G1 ground maintenance",
  start: "G4 start and warm-up",
  taxi: "G5 taxi",
  "take-off": "G6 take-off and climb",
  cruise: "G7 cruise",
  landing: "G9 landing",
  "source-failed": "G10 emergency",
};

/** Where the conditions come from. Which of them a phase on ground power is, is our reading. */
export const loadAnalysisSource: Source = {
  document: "MIL-E-7016F",
  edition: "20 July 1976",
  at: "par. 3.5.3",
  standing: "published",
};

/** The table of a project's balances: values of the graph only, in the order of the record. */
export function analyseLoads(balances: readonly SourceBalance[]): LoadAnalysis {
  const loads = new Map<string, BalancedLoad>();
  for (const load of balances.flatMap((balance) => balance.loads)) loads.set(keyOf(load), load);
  const currents = balances.map(
    (balance) => new Map(balance.loads.map((load) => [keyOf(load), load.current])),
  );
  return {
    columns: balances.map(({ condition, demand, capacity, isCapacityKnown, margin }) => ({
      condition,
      standard: condition.phase && standardConditions[condition.phase.value],
      demand,
      capacity: isCapacityKnown ? capacity : undefined,
      margin,
    })),
    rows: [...loads].map(([key, { kind, id, buses }]) => ({
      kind,
      id,
      buses,
      currents: currents.map((ofCondition) => ofCondition.get(key)),
    })),
  };
}

function keyOf({ kind, id }: BalancedLoad): string {
  return `${kind} ${id}`;
}
