import type { Problem } from "../../findings/finding";
import { weightsOf } from "../../graph/derivations";
import { defineRule } from "../rule";
import { everyLoadingExample } from "./every-loading-example";
import { ballastPlaces } from "./sources";

export const ballastPlaceUnknown = defineRule<{ ballast: string; station: string }>({
  id: "ballast-place-unknown",
  severity: "error",
  area: "weights",
  title: "Permanent ballast stands where the aircraft's data name no place for it",
  why:
    "Ballast bolted where nothing was substantiated for it is a major alteration with an investigation of its own. The " +
    "airframe record names the places that the aircraft's data give, as stations of kind 'ballast'.",
  sources: [ballastPlaces],
  say: ({ ballast, station }) => ({
    what: `Ballast ${ballast} stands at ${station}, which is no ballast station of the airframe record.`,
    todo: "Put it at a ballast station, or add the place, its arm and its limit to the airframe record from its data.",
  }),
  *check(project): Iterable<Problem> {
    const { stationLimits } = weightsOf(project);
    for (const { id, station } of project.install.ballast ?? []) {
      const found = station && stationLimits.get(station.value)?.station;
      if (!id || !station || !found || found.kind?.value === "ballast") continue;
      yield {
        rule: "ballast-place-unknown",
        subject: { kind: "ballast", id: id.value },
        place: station.place,
        facts: { ballast: id.value, station: station.value },
      };
    }
  },
  examples: () => [
    {
      title: "Lead in the baggage compartment",
      text: everyLoadingExample({
        sections: "ballast: [{ id: BALLAST-1, station: aft-baggage, weight: 10 lb }]",
      }),
      finds: ["^Ballast BALLAST-1 stands at aft-baggage, which is no ballast station"],
    },
    {
      title: "Lead at the place for it",
      text: everyLoadingExample({
        sections: "ballast: [{ id: BALLAST-1, station: nose-ballast, weight: 10 lb }]",
      }),
      finds: [],
    },
  ],
});
