/** Which item of the change matters most for a finding, so that it can point there. */
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

/** The heaviest item that the change adds. */
export function heaviestAdded(items: readonly ChangedItem[]): ChangedItem | undefined {
  return greatest(
    items.filter(({ sense }) => sense === "added"),
    ({ weight }) => weight?.value ?? 0,
  );
}

/** The item whose tolerances leave most open: of the weight, or of the moment about an arm where one is given. */
export function leastCertain(items: readonly ChangedItem[], about?: number): ChangedItem | undefined {
  return greatest(items, ({ weight, arm, weightTolerance, armTolerance }) => {
    const off = weightTolerance?.value ?? 0;
    if (about === undefined) return off;
    return off * Math.abs((arm?.value ?? about) - about) + (weight?.value ?? 0) * (armTolerance?.value ?? 0);
  });
}

/** Undefined where none is above zero; of two the first. */
function greatest(
  items: readonly ChangedItem[],
  sizeOf: (item: ChangedItem) => number,
): ChangedItem | undefined {
  let most: { readonly item: ChangedItem; readonly size: number } | undefined;
  for (const item of items) {
    const size = sizeOf(item);
    if (size > (most?.size ?? 0)) most = { item, size };
  }
  return most?.item;
}
