/** What the empty weight statement should say: the weighing, with the changes that the record knows of since. */
import { balanceSources } from "../../methods/balance";
import type { Project } from "../../project";
import { isWholeList } from "../entries";
import { derive, derived, type Keep, type Operand, sumOf, type Value, written } from "../value";
import type { BalanceUnits } from "./balance-units";
import type { WeighingSheet } from "./weighing";

export interface StatementDue {
  readonly weight: Value | undefined;
  readonly cg: Value | undefined;
}

/** Undefined where the airframe record has no weighing, or no statement beside it. Pure; values go to `keep`. */
export function deriveStatementDue(
  { airframe }: Project,
  weighing: WeighingSheet | undefined,
  units: BalanceUnits,
  keep: Keep,
): StatementDue | undefined {
  if (!airframe?.empty || !weighing) return undefined;
  const { history } = airframe;
  const changes = history?.changes ?? [];
  const isWhole = history === undefined || isWholeList(history, "changes", history.changes);
  const unknown: readonly Operand[] = isWhole ? [] : [undefined];
  const W_s = derived("weight as weighed", weighing.emptyWeight);
  const w = [...unknown, ...changes.map((one) => written("past change", one.weight, units.weight))];
  const x = changes.map((one) => written("arm of a past change", one.arm, units.arm));
  const subject = { kind: "aircraft", id: airframe.aircraft?.serial?.value ?? "" } as const;
  const weight = keep(
    derive({
      subject,
      quantity: "statement-due-weight",
      unit: units.weight,
      formula: w.length > 0 ? "W_s + sum(w)" : "W_s",
      operands: { W_s, w },
      compute: (numbers) => numbers.W_s + sumOf(numbers.w),
      sources: [balanceSources.weighing],
    }),
  );
  const cg = keep(
    derive({
      subject,
      quantity: "statement-due-cg",
      unit: units.arm,
      method: "moments of the weighing and of the changes since, added up, over the weight of all of it",
      operands: {
        W: derived("weight of all of it", weight),
        W_s,
        x_s: derived("CG as weighed", weighing.emptyCg),
        w,
        x,
      },
      compute: (numbers) =>
        (numbers.W_s * numbers.x_s + sumOf(numbers.w.map((one, index) => one * numbers.x[index]!))) /
        numbers.W,
      sources: [balanceSources.centreOfGravity],
    }),
  );
  return { weight, cg };
}
