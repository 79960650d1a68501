import type { Assessment } from "../../findings/finding";
import { holds } from "../../findings/finding";
import { weightsOf } from "../../graph/derivations";
import { formatApart, type UnitSymbol } from "../../quantities";
import { defineRule } from "../rule";
import { everyLoadingExample } from "./every-loading-example";
import { ballastPlaces } from "./sources";

export const ballastAboveLimit = defineRule<{
  station: string;
  weight: number;
  limit: number;
  unit: UnitSymbol<"mass">;
}>({
  id: "ballast-above-limit",
  severity: "error",
  area: "weights",
  title: "More ballast stands at a station than its structure is good for",
  why:
    "Ballast is bolted to primary structure, whose strength under the design loads limits its weight. It counts in the " +
    "empty weight, is painted red and marked as permanent.",
  sources: [ballastPlaces],
  say: ({ station, weight, limit, unit }) => {
    const [there, allowed] = formatApart(weight, limit);
    return {
      what: `${there} ${unit} of ballast stand at ${station}, above its limit of ${allowed} ${unit}.`,
      todo: "Carry less there: use another ballast station as well, or change what the ballast has to balance.",
    };
  },
  *check(project): Iterable<Assessment> {
    const { stationLimits, units } = weightsOf(project);
    for (const { id, before: limit, ballast, ballastWeight: weight } of stationLimits.values()) {
      const last = ballast.at(-1);
      if (!limit || !weight || !last) continue;
      yield {
        rule: "ballast-above-limit",
        subject: { kind: "station", id },
        place: (last.weight ?? last).place,
        value: weight,
        limit,
        sense: "at-most",
        holds: holds(weight.value, "at-most", limit.value),
        facts: { station: id, weight: weight.value, limit: limit.value, unit: units.weight },
        related: [],
      };
    }
  },
  examples: () => [
    {
      title: "Forty pounds where thirty may stand",
      text: everyLoadingExample({
        sections: "ballast: [{ id: BALLAST-1, station: nose-ballast, weight: 40 lb }]",
      }),
      finds: ["^40 lb of ballast stand at nose-ballast, above its limit of 30 lb"],
    },
    {
      title: "Within the limit",
      text: everyLoadingExample({
        sections: "ballast: [{ id: BALLAST-1, station: nose-ballast, weight: 12 lb }]",
      }),
      finds: [],
    },
  ],
});
