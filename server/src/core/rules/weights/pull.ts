import type { ChangedItem } from "../../graph/changed-items";
import { moment } from "../../methods/balance";
import type { LimitSide } from "../../methods/envelope";

/** The items that bring the CG to one side of an arm, the strongest first. */
export function pullsTo(items: readonly ChangedItem[], arm: number, side: LimitSide): ChangedItem[] {
  const direction = side === "aft" ? 1 : -1;
  return items
    .flatMap((item) => {
      if (!item.weight || !item.arm) return [];
      const weight = item.sense === "added" ? item.weight.value : -item.weight.value;
      const pull = direction * moment({ weight, arm: item.arm.value - arm });
      return pull > 0 ? [{ item, pull }] : [];
    })
    .toSorted((a, b) => b.pull - a.pull)
    .map(({ item }) => item);
}
