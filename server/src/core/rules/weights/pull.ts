/** Which item of the change matters most for a finding, so that it can point there. */
import type { ChangedItem } from "../../graph/weights/changed-items";
import type { Uncertain } from "../../graph/weights/empty-before";
import { isLateral, type Side } from "../../graph/weights/permitted-loadings";
import { moment } from "../../methods/balance";

/** The items that bring the CG to one side of an arm, or of a butt line, the strongest first. */
export function pullsTo(items: readonly ChangedItem[], about: number, side: Side): ChangedItem[] {
  const direction = side === "aft" || side === "right" ? 1 : -1;
  return items
    .flatMap((item) => {
      const at = isLateral(side) ? item.buttLine : item.arm;
      if (!item.weight || !at) return [];
      const weight = item.sense === "added" ? item.weight.value : -item.weight.value;
      const pull = direction * moment({ weight, arm: at.value - about });
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

/** What leaves most open by its tolerances: of the weight, or of the moment about an arm where one is given. */
export function leastCertain<T extends Uncertain>(all: readonly T[], about?: number): T | undefined {
  return greatest(all, ({ weight, arm, weightTolerance, armTolerance }) => {
    const off = weightTolerance?.value ?? 0;
    if (about === undefined) return off;
    return off * Math.abs((arm?.value ?? about) - about) + (weight?.value ?? 0) * (armTolerance?.value ?? 0);
  });
}

/** Undefined where none is above zero; of two the first. */
function greatest<T>(items: readonly T[], sizeOf: (item: T) => number): T | undefined {
  let most: { readonly item: T; readonly size: number } | undefined;
  for (const item of items) {
    const size = sizeOf(item);
    if (size > (most?.size ?? 0)) most = { item, size };
  }
  return most?.item;
}
