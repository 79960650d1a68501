import { holds } from "../../findings/finding";
import { weightsOf } from "../../graph/derivations";
import { showMeasure, type ValueUnit } from "../../graph/value";
import { placeInAirframe } from "../link-places";
import { defineRule } from "../rule";
import { everyLoadingExample } from "./every-loading-example";

export const floorLoadAboveLimit = defineRule<{
  loading: string;
  station: string;
  kind: "floor" | "running";
  load: number;
  limit: number;
  unit: string;
}>({
  id: "floor-load-above-limit",
  severity: "error",
  area: "weights",
  title: "A load is too heavy for the floor that it stands on",
  why:
    "A compartment's limit is for the whole of it. The floor carries so much for each area, and its beams so much for " +
    "each length: a small heavy thing can be too much where its weight alone would not be.",
  sources: [{ document: "CAT.POL.MAB.100(i)", edition: "edition not recorded", standing: "published" }],
  say: ({ loading, station, kind, load, limit, unit }) => ({
    what:
      `Loading ${loading}: the load at ${station} is ${showMeasure(load, unit as ValueUnit)} ` +
      `${kind === "floor" ? "on its area" : "along its length"}, above the floor's ${showMeasure(limit, unit as ValueUnit)}.`,
    todo: `Spread it over ${kind === "floor" ? "more area" : "more length"} and write that at the load, or carry less.`,
  }),
  *check(project) {
    for (const { loading, floors } of weightsOf(project).phases) {
      for (const { kind, station, load, value, limit } of floors) {
        yield {
          rule: "floor-load-above-limit",
          subject: { kind: "station", id: station },
          ...placeInAirframe(project, load.place, `the load at ${station}`),
          value,
          limit,
          sense: "at-most",
          holds: holds(value.value, "at-most", limit.value),
          facts: {
            loading: loading.id,
            station,
            kind,
            load: value.value,
            limit: limit.value,
            unit: value.unit,
          },
        };
      }
    }
  },
  examples: () => [
    {
      title: "A battery box on a small foot",
      text: everyLoadingExample({
        baggage:
          "limit: 120 lb, floor-area: 6 ft2, floor-limit: 50 lb/ft2, floor-length: 36 in, running-limit: 45 lb/ft",
        load: "{ station: front-seats, weight: 340 lb }, { station: aft-baggage, weight: 90 lb, area: 1.5 ft2, length: 12 in }",
      }),
      finds: [
        "aft-baggage is 60 lb/ft2 on its area, above the floor's 50 lb/ft2",
        "is 90 lb/ft along its length",
      ],
    },
    {
      title: "The same box on a plate",
      text: everyLoadingExample({
        baggage:
          "limit: 120 lb, floor-area: 6 ft2, floor-limit: 50 lb/ft2, floor-length: 36 in, running-limit: 45 lb/ft",
        load: "{ station: front-seats, weight: 340 lb }, { station: aft-baggage, weight: 90 lb, area: 3 ft2, length: 24 in }",
      }),
      finds: [],
    },
  ],
});
