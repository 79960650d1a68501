import type { Problem } from "../../findings/finding";
import { formatMeasure, type UnitSymbol } from "../../quantities";
import { keyPlace, linkPlace } from "../link-places";
import { defineRule } from "../rule";
import { balanceExample } from "./balance-example";

export const componentNotPlaced = defineRule<{ component: string; weight: number; unit: UnitSymbol<"mass"> }>(
  {
    id: "component-not-placed",
    severity: "error",
    area: "weights",
    title: "A component of the kit weighs something, and the record does not say where it goes",
    why:
      "Without its arm the new empty weight and centre of gravity can't be computed, and neither can any loading: they " +
      "are left open rather than computed without it.",
    sources: [],
    say: ({ component, weight, unit }) => ({
      what: `${component} weighs ${formatMeasure(weight, unit)}, but it is not placed in the aircraft.`,
      todo: `Add its arm under 'placement', as in { component: ${component}, arm: 142.0 in }.`,
    }),
    *check(project): Iterable<Problem> {
      const { install, kit } = project;
      const placed = new Set(install.placement?.map((placement) => placement.component?.value));
      for (const { id, weight } of kit?.components ?? []) {
        if (!id || !weight || weight.value.si === 0 || placed.has(id.value)) continue;
        yield {
          rule: "component-not-placed",
          subject: { kind: "component", id: id.value },
          place: keyPlace(install, "placement") ?? linkPlace(project, "kit"),
          facts: { component: id.value, weight: weight.value.written, unit: weight.value.unit },
          related: [{ place: id.place, words: `component ${id.value} of the kit` }],
        };
      }
    },
    examples: () => [
      {
        title: "A rack that is placed nowhere",
        text: balanceExample({ placement: [] }),
        finds: ["^RACK weighs 31.2 lb, but it is not placed"],
      },
      {
        title: "A part without weight needs no place",
        text: balanceExample({ rack: "0 lb", placement: [] }),
        finds: [],
      },
      { title: "A rack with its arm", text: balanceExample(), finds: [] },
    ],
  },
);
