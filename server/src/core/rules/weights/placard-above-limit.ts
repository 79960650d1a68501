import type { Problem } from "../../findings/finding";
import { holds } from "../../findings/finding";
import { weightsOf } from "../../graph/derivations";
import { formatMeasure, inUnit, type UnitSymbol } from "../../quantities";
import { defineRule } from "../rule";
import { everyLoadingExample } from "./every-loading-example";
import { adverseLoading } from "./sources";

export const placardAboveLimit = defineRule<{
  placard: string;
  station: string;
  placarded: number;
  limit: number;
  unit: UnitSymbol<"mass">;
}>({
  id: "placard-above-limit",
  severity: "error",
  area: "weights",
  title: "A placard permits more than the station",
  why:
    "A placard of the modification can lower what a station may carry. It can't raise it: the limit is that of the floor, " +
    "the restraint and the structure around it, and a higher number on the wall would be believed.",
  sources: [adverseLoading],
  say: ({ placard, station, placarded, limit, unit }) => ({
    what: `Placard ${placard} says ${formatMeasure(placarded, unit)} at ${station}, whose limit is ${formatMeasure(limit, unit)}.`,
    todo: `Write a limit below ${formatMeasure(limit, unit)}, or take the placard out.`,
  }),
  *check(project): Iterable<Problem> {
    const { stationLimits, units } = weightsOf(project);
    for (const { id, before, placards } of stationLimits.values()) {
      for (const placard of placards) {
        if (!before || !placard.limit || !placard.id) continue;
        const placarded = inUnit(placard.limit.value, units.weight);
        if (holds(placarded, "at-most", before.value)) continue;
        yield {
          rule: "placard-above-limit",
          subject: { kind: "placard", id: placard.id.value },
          place: placard.limit.place,
          facts: {
            placard: placard.id.value,
            station: id,
            placarded,
            limit: before.value,
            unit: units.weight,
          },
        };
      }
    }
  },
  examples: () => [
    {
      title: "150 lb on the wall of a compartment for 120 lb",
      text: everyLoadingExample({
        sections: "placards: [{ id: PLACARD-1, station: aft-baggage, limit: 150 lb }]",
      }),
      finds: ["^Placard PLACARD-1 says 150 lb at aft-baggage, whose limit is 120 lb"],
    },
    {
      title: "A lower limit",
      text: everyLoadingExample({
        sections: "placards: [{ id: PLACARD-1, station: aft-baggage, limit: 90 lb }]",
      }),
      finds: [],
    },
  ],
});
