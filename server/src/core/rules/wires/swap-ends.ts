import type { Wire } from "../../records/types";
import type { Remedy } from "../rule";

/** Turns a wire round. */
export function* swapEnds({ id, from, to }: Wire): Iterable<Remedy> {
  if (!from || !to) return;
  yield {
    title: `Swap 'from' and 'to' of wire ${id?.value ?? ""}`.trimEnd(),
    changes: [
      { place: from.place, text: to.value },
      { place: to.place, text: from.value },
    ],
    series: "ends",
  };
}
