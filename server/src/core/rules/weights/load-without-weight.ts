import type { Problem } from "../../findings/finding";
import { weightsOf } from "../../graph/derivations";
import { entryOf } from "../../graph/entries";
import { standardWeights } from "../../tables/standard-weights";
import { placeInAirframe } from "../link-places";
import { defineRule } from "../rule";
import { balanceExample } from "./balance-example";

export const loadWithoutWeight = defineRule<{ loading: string; station: string; hasVolume: boolean }>({
  id: "load-without-weight",
  severity: "error",
  area: "weights",
  title: "A load says neither its weight nor a volume that can be weighed",
  why: "The loading is not computed without it, so nothing is known of its weight and centre of gravity.",
  sources: [standardWeights.avgas.source],
  say: ({ loading, station, hasVolume }) => ({
    what: hasVolume
      ? `Loading ${loading} has a volume at ${station}, but the station gives no density to weigh it by.`
      : `Loading ${loading} says neither a weight nor a volume at ${station}.`,
    todo: hasVolume
      ? `Give the station the density of its fluid; the handbook's standard is ${standardWeights.avgas.value} lb/gal for ` +
        `avgas and ${standardWeights.turbineFuel.value} lb/gal for turbine fuel.`
      : `Write the weight, as in { station: ${station}, weight: 170 lb }.`,
  }),
  *check(project): Iterable<Problem> {
    for (const { id, stations } of weightsOf(project).loadings) {
      for (const { id: station, unweighed } of stations) {
        for (const load of unweighed) {
          yield {
            rule: "load-without-weight",
            subject: { kind: "loading", id },
            ...placeInAirframe(project, load.place, `the load at ${station}`),
            facts: { loading: id, station, hasVolume: entryOf(load, "volume") !== undefined },
          };
        }
      }
    }
  },
  examples: () => [
    {
      title: "Gallons, and no density",
      text: balanceExample({ density: "" }),
      finds: [
        "^Loading pilot-alone has a volume at main-tanks",
        "^Loading full-aft has a volume at main-tanks",
      ],
    },
    {
      title: "A seat without a weight",
      text: balanceExample({
        loadings: ["{ id: solo, envelope: normal, load: [{ station: front-seats }] }"],
      }),
      finds: ["^Loading solo says neither a weight nor a volume at front-seats"],
    },
    { title: "Gallons and a density", text: balanceExample(), finds: [] },
  ],
});
