import type { Assessment } from "../../findings/finding";
import { holds } from "../../findings/finding";
import { weightsOf } from "../../graph/derivations";
import { groupBy } from "../../graph/group-by";
import { derive, type Value, written } from "../../graph/value";
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
    const byStation = groupBy(project.install.ballast ?? [], ({ station }) => station?.value);
    for (const [id, entries] of byStation) {
      const limit = id === undefined ? undefined : stationLimits.get(id)?.before;
      const last = entries.at(-1)!;
      const weight: Value | undefined = derive({
        subject: { kind: "station", id: id ?? "" },
        quantity: "ballast-weight",
        unit: units.weight,
        formula: "sum(w)",
        operands: { w: entries.map((one) => written("weight of the ballast", one.weight, units.weight)) },
        compute: ({ w }) => w.reduce((sum, one) => sum + one, 0),
      });
      if (!limit || !weight || id === undefined) continue;
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
  examples: [
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
