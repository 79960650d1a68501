import { holds } from "../../findings/finding";
import { weightsOf } from "../../graph/derivations";
import { formatApart, formatMeasure, type UnitSymbol } from "../../quantities";
import { placeInAirframe } from "../link-places";
import { defineRule } from "../rule";
import { balanceExample } from "./balance-example";
import { adverseLoading } from "./sources";

export const stationAboveLimit = defineRule<{
  loading: string;
  station: string;
  load: number;
  limit: number;
  unit: UnitSymbol<"mass">;
}>({
  id: "station-above-limit",
  severity: "error",
  area: "weights",
  title: "A loading puts more at a station than its limit",
  why:
    "The limit of a seat, a compartment or a tank is that of its floor, its restraint and the structure around it. A " +
    "loading that exceeds one is no loading that the aircraft may fly, so it shows nothing about the modification.",
  sources: [adverseLoading],
  say: ({ loading, station, load, limit, unit }) => {
    const [there, allowed] = formatApart(load, limit);
    return {
      what: `Loading ${loading} has ${there} ${unit} at ${station}, above its limit of ${allowed} ${unit}.`,
      todo: `Take at least ${formatMeasure(load - limit, unit)} off ${station}, or correct its limit from the aircraft's data.`,
    };
  },
  *check(project) {
    const { loadings, units } = weightsOf(project);
    for (const { id, stations } of loadings) {
      for (const { id: station, loads, weight, limit } of stations) {
        const entry = loads.at(-1);
        if (!weight || !limit || !entry) continue;
        yield {
          rule: "station-above-limit",
          subject: { kind: "station", id: station },
          ...placeInAirframe(
            project,
            (entry.weight ?? entry.volume ?? entry).place,
            `the load at ${station}`,
          ),
          value: weight,
          limit,
          sense: "at-most",
          holds: holds(weight.value, "at-most", limit.value),
          facts: { loading: id, station, load: weight.value, limit: limit.value, unit: units.weight },
        };
      }
    }
  },
  examples: () => [
    {
      title: "120 lb in a compartment for 100 lb",
      text: balanceExample({ baggage: "100 lb" }),
      finds: ["^Loading full-aft has 120 lb at baggage, above its limit of 100 lb"],
    },
    { title: "On the limit", text: balanceExample({ baggage: "120 lb" }), finds: [] },
  ],
});
