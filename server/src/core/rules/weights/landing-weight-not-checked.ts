import type { Problem } from "../../findings/finding";
import { weightsOf } from "../../graph/derivations";
import { formatApart, inUnit, type UnitSymbol } from "../../quantities";
import { isAtMost } from "../../rounding";
import { placeInAirframe } from "../link-places";
import { defineRule } from "../rule";
import { everyLoadingExample } from "./every-loading-example";

export const landingWeightNotChecked = defineRule<{
  loading: string;
  weight: number;
  limit: number;
  unit: UnitSymbol<"mass">;
}>({
  id: "landing-weight-not-checked",
  severity: "information",
  area: "weights",
  title: "A loading is heavier than the aircraft may land with, and does not say what fuel it burns",
  why:
    "The landing weight is the take-off weight less the fuel that is burned in between. Without that fuel it is not " +
    "known, and silence about it says nothing.",
  sources: [],
  say: ({ loading, weight, limit, unit }) => {
    const [there, allowed] = formatApart(weight, limit);
    return {
      what:
        `Not checked: the landing weight of loading ${loading}; it takes off with ${there} ${unit}, above the landing ` +
        `limit of ${allowed} ${unit}, and has no trip fuel.`,
      todo: `Add 'trip-fuel' to loading ${loading}: what it burns at least between take-off and landing.`,
    };
  },
  *check(project): Iterable<Problem> {
    const { phases, units } = weightsOf(project);
    const landing = project.airframe?.limits?.landing;
    if (!landing) return;
    const limit = inUnit(landing.value, units.weight);
    for (const { loading } of phases) {
      const weight = loading.after.weight?.value;
      if (loading.loading.tripFuel || weight === undefined || isAtMost(weight, limit)) continue;
      const own = (loading.loading.id ?? loading.loading).place;
      yield {
        rule: "landing-weight-not-checked",
        subject: { kind: "loading", id: loading.id },
        ...placeInAirframe(project, own, `loading ${loading.id}`),
        facts: { loading: loading.id, weight, limit, unit: units.weight },
      };
    }
  },
  examples: () => [
    {
      title: "3023 lb at take-off, and no trip fuel",
      text: everyLoadingExample({ limits: "takeoff: 3800 lb, landing: 3000 lb" }),
      finds: [
        "^Not checked: the landing weight of loading two-up; it takes off with 3023 lb, above the landing limit of 3000 lb",
      ],
    },
    {
      title: "The same with its trip fuel",
      text: everyLoadingExample({ limits: "takeoff: 3800 lb, landing: 3000 lb", trip: "60 lb" }),
      finds: [],
    },
    {
      title: "It may land as it took off",
      text: everyLoadingExample({ limits: "takeoff: 3800 lb, landing: 3600 lb" }),
      finds: [],
    },
  ],
});
